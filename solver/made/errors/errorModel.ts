/**
 * One movement with its errors: given how far everything is off, how every depth, gap, check and place comes out.
 *
 * The same function serves one error at a time (`errorEffects.ts`) and all at once (`errorTrials.ts`). What comes out is
 * a row of numbers, `Figure` after `Figure`, so that a trial makes no objects that outlive it.
 */

import {
  type GapNow,
  gapNow,
  type NearGap,
  nearGapsOf,
  type Shake,
  type Solid,
  shakeOf,
  sideMovementOver,
} from '../../clearance/index.ts';
import type { Point } from '../../geometry/index.ts';
import type { PointId, WheelId } from '../../movement/ids.ts';
import type { Movement, Rule } from '../../movement/schema.ts';
import { ruleMissAt } from '../../planting/index.ts';
import type { PlacedMovement } from '../../planting/placed.ts';
import type { Steps } from '../../steps.ts';
import { type DepthTried, depthsTried, endsWithTips } from './depthRoom.ts';
import { type ErrorPart, errorPartsOf, type StatedErrors } from './errorSources.ts';
import { TrialPlanting } from './trialPlanting.ts';

/** What one number of a trial tells. Lengths in mm. */
export type Figure =
  /** Distance of the two arbors. */
  | { readonly kind: 'distance'; readonly depth: number }
  /** What is left before the teeth bind or bottom, the bearings giving way as far as they can. */
  | { readonly kind: 'tightRoom'; readonly depth: number }
  /** The same without the bearings giving way. */
  | { readonly kind: 'bareRoom'; readonly depth: number }
  /** What is left before the teeth let go, the bearings at their farthest. */
  | { readonly kind: 'looseRoom'; readonly depth: number }
  /** A gap at its worst with shake. */
  | { readonly kind: 'gap'; readonly gap: number }
  /** The same less what the pair owes. */
  | { readonly kind: 'gapRoom'; readonly gap: number }
  /** How far a checking rule comes out from what it asks. */
  | { readonly kind: 'check'; readonly check: number }
  | { readonly kind: 'place'; readonly point: number; readonly axis: 0 | 1 };

/** Room told for teeth that cannot be judged: neither tight nor loose, and never changing. */
const NOT_JUDGED = 1e3;
/** Gaps with more than this to spare are not looked at, mm; errors that could use it up are looked at all the same. */
const ROOMY = 1;

/** Gives every figure of a movement for given errors. */
export class ErrorModel {
  readonly figures: readonly Figure[];
  readonly checks: readonly Rule[];
  readonly gaps: readonly NearGap[];
  readonly points: readonly PointId[];
  readonly parts: readonly ErrorPart[];
  private readonly places = new Map<PointId, Point>();
  private readonly wheels: ReadonlyMap<WheelId, Movement['wheels'][number]>;
  private readonly posts: ReadonlySet<string>;
  private readonly plannedShake: Shake;
  private readonly row: Float64Array;
  private readonly off: Offsets = { holes: new Map(), tips: new Map(), plays: [] };

  constructor(
    private readonly placed: PlacedMovement,
    readonly depths: readonly DepthTried[],
    private readonly stated: StatedErrors,
    private readonly planting = new TrialPlanting(placed),
  ) {
    const { movement, rules } = placed;
    this.wheels = new Map(movement.wheels.map((wheel) => [wheel.id, wheel]));
    this.posts = new Set(movement.posts.map(({ id }) => id));
    this.plannedShake = shakeOf(movement);
    this.parts = errorPartsOf(placed, planting.ground, stated, planting.isStruck);
    this.checks = movement.rules.filter(({ id, leaveOut }) => !leaveOut && rules.get(id)?.role === 'checks');
    this.points = planting.settled.flatMap((point) => planting.ground.pointIds[point] ?? []);
    const most = Math.max(0, ...this.parts.map(({ source }) => source.plusMinus));
    // Only what is clear as planned can foul by errors; what touches on purpose (a pipe on its arbor) owes nothing.
    this.gaps = nearGapsOf(placed, ROOMY + 4 * most).filter(
      ({ terms, planned }) => (terms.plan > 0 || terms.height > 0) && planned.withShake > 0,
    );
    this.figures = this.listFigures();
    this.row = new Float64Array(this.figures.length);
  }

  /** The figures with every part off by so many mm; undefined where the movement cannot be planted so. Kept until asked again. */
  read(errors: ArrayLike<number>): Float64Array | undefined {
    this.takeErrors(errors);
    const coords = this.planting.plant();
    if (!coords) return undefined;
    const { pointIds } = this.planting.ground;
    pointIds.forEach((id, point) => {
      if (id === undefined) return;
      const [dx, dy] = this.off.holes.get(id) ?? NOWHERE;
      this.places.set(id, { x: (coords[2 * point] ?? 0) + dx, y: (coords[2 * point + 1] ?? 0) + dy });
    });
    const shake = this.shakeNow();
    let at = 0;
    const put = (value: number): void => {
      this.row[at++] = value;
    };
    for (const depth of this.depths) for (const value of this.depthNow(depth, shake)) put(value);
    for (const gap of this.gaps) {
      const now = this.gapOf(gap, shake);
      put(now?.withShake ?? NOT_JUDGED);
      put(now ? now.withShake - now.wanted : NOT_JUDGED);
    }
    for (const rule of this.checks) put(this.checkOf(rule));
    for (const point of this.points) {
      const place = this.places.get(point);
      put(place?.x ?? 0);
      put(place?.y ?? 0);
    }
    return this.row;
  }

  /** Begins to count which points have no place. */
  countUnplaced(): void {
    this.planting.unplaced.clear();
  }

  /** Points that were the first without a place since the counting began, and how often, most first. */
  unplaced(): readonly { readonly id: PointId; readonly trials: number }[] {
    const { pointIds } = this.planting.ground;
    return [...this.planting.unplaced]
      .flatMap(([point, trials]) => {
        const id = pointIds[point];
        return id === undefined ? [] : [{ id, trials }];
      })
      .sort((a, b) => b.trials - a.trials);
  }

  private listFigures(): Figure[] {
    return [
      ...this.depths.flatMap((_, depth): Figure[] => [
        { kind: 'distance', depth },
        { kind: 'tightRoom', depth },
        { kind: 'bareRoom', depth },
        { kind: 'looseRoom', depth },
      ]),
      ...this.gaps.flatMap((_, gap): Figure[] => [
        { kind: 'gap', gap },
        { kind: 'gapRoom', gap },
      ]),
      ...this.checks.map((_, check): Figure => ({ kind: 'check', check })),
      ...this.points.flatMap((_, point): Figure[] => [
        { kind: 'place', point, axis: 0 },
        { kind: 'place', point, axis: 1 },
      ]),
    ];
  }

  private takeErrors(errors: ArrayLike<number>): void {
    const { holes, tips } = this.off;
    holes.clear();
    tips.clear();
    this.off.plays = [];
    this.planting.clear();
    this.parts.forEach(({ change }, index) => {
      const error = errors[index] ?? 0;
      if (error === 0) return;
      switch (change.to) {
        case 'value':
          this.planting.shiftValue(change.rule, change.slot, error * change.perMm);
          return;
        case 'held':
          for (const point of change.points) this.planting.shiftHeld(point, change.axis, error);
          return;
        case 'hole':
          for (const id of change.points) {
            const [dx, dy] = holes.get(id) ?? NOWHERE;
            holes.set(id, change.axis === 0 ? [dx + error, dy] : [dx, dy + error]);
          }
          return;
        case 'play':
          this.off.plays.push({ arbor: change.arbor, bearing: change.bearing, by: error });
          return;
        case 'tip':
          tips.set(change.wheel, error);
      }
    });
  }

  private shakeNow(): Shake {
    const { plays } = this.off;
    if (plays.length === 0) return this.plannedShake;
    const arbors = [...this.placed.movement.arbors];
    for (const { arbor: index, bearing: which, by } of plays) {
      const arbor = arbors[index];
      if (!arbor) continue;
      if (which === 'pipe') arbors[index] = { ...arbor, pipeBore: (arbor.pipeBore ?? 0) + by };
      else {
        const bearings = arbor.bearings.map((each, at) => (at === which ? { ...each, bore: each.bore + by } : each));
        arbors[index] = { ...arbor, bearings };
      }
    }
    return shakeOf({ ...this.placed.movement, arbors });
  }

  /** Distance and the three rooms of a depth. Run-out brings the teeth nearer and farther once in a turn. */
  private depthNow(depth: DepthTried, shake: Shake): readonly [number, number, number, number] {
    const [a, b] = depth.wheels;
    const [p, q] = [this.places.get(a.arbor), this.places.get(b.arbor)];
    const distance = p && q ? Math.hypot(q.x - p.x, q.y - p.y) : 0;
    const off = [this.off.tips.get(a.id) ?? 0, this.off.tips.get(b.id) ?? 0] as const;
    const ends = endsWithTips(depth, off, this.stated.tips);
    if (!ends) return [distance, NOT_JUDGED, NOT_JUDGED, NOT_JUDGED];
    const play = [a, b].reduce(
      (sum, { arbor, level, thickness }) =>
        sum + sideMovementOver(shake, arbor, { from: level, to: level + thickness }),
      0,
    );
    const runOut = (a.runOut + b.runOut) / 2;
    const bare = ends.open * (distance - ends.deepest) - runOut;
    return [distance, bare + play, bare, ends.open * (ends.lostAt - distance) - runOut - play];
  }

  private gapOf({ first, second, terms }: NearGap, shake: Shake): GapNow | undefined {
    const now = { first: this.solidNow(first), second: this.solidNow(second), terms };
    return gapNow(now, { shake, wheels: this.wheels });
  }

  private solidNow(solid: Solid): Solid {
    if (solid.shape === 'region') return solid;
    const id = solid.arbor ?? (this.posts.has(solid.part) ? (solid.part as PointId) : undefined); // the ids of posts are points
    const place = id === undefined ? undefined : this.places.get(id);
    const carried = solid.carried?.map((each) => {
      const arm = this.places.get(each.arm);
      return arm ? { ...each, about: { x: arm.x, y: arm.y } } : each;
    });
    const tip = solid.role === 'wheel' ? (this.off.tips.get(solid.part) ?? 0) / 2 : 0;
    // The tips of a wheel with teeth inside are the edge of its hole.
    const isInternal = tip !== 0 && this.wheels.get(solid.part as WheelId)?.internal === true; // a wheel's part is its id
    return {
      ...solid,
      ...(place ? { centre: { x: place.x, y: place.y } } : {}),
      ...(carried ? { carried } : {}),
      outer: solid.outer + (isInternal ? 0 : tip),
      inner: solid.inner + (isInternal ? tip : 0),
    };
  }

  private checkOf(rule: Rule): number {
    const { movement, rules } = this.placed;
    return ruleMissAt(movement, (id) => this.places.get(id), rule, rules.get(rule.id)?.length);
  }
}

/** How far things other than settings are off in the present trial. */
interface Offsets {
  readonly holes: Map<string, readonly [number, number]>;
  readonly tips: Map<string, number>;
  plays: { readonly arbor: number; readonly bearing: number | 'pipe'; readonly by: number }[];
}

const NOWHERE = [0, 0] as const;

/** Makes the model, a depth at a time: yields how many of the depths have been looked at. */
export function* errorModelSteps(
  placed: PlacedMovement,
  stated: StatedErrors,
): Steps<{ readonly done: number; readonly of: number }, ErrorModel> {
  const of = placed.movement.rules.filter(({ kind, leaveOut }) => kind === 'depth' && !leaveOut).length;
  const depths: DepthTried[] = [];
  for (const depth of depthsTried(placed, stated.tips)) {
    depths.push(depth);
    yield { done: depths.length, of };
  }
  return new ErrorModel(placed, depths, stated);
}
