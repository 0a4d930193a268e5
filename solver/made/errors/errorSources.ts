/**
 * What can come out wrong when a movement is made: settings, held places, drilled holes, the play of pivots, tip
 * diameters. Each source has a ± (two standard deviations): its own where the movement states one, else that of its kind.
 */

import type { ArborId, PointId, PostId, RuleId, WheelId } from '../../movement/ids.ts';
import { type Arbor, isOfPins, type Movement, type Rule } from '../../movement/schema.ts';
import { type networkOf, RuleKind } from '../../planting/index.ts';
import type { PlacedMovement } from '../../planting/placed.ts';
import { ONE_PLACE } from '../../tolerances.ts';

/** ± of what states none, two standard deviations, mm. Nothing of a kind is tried where it is 0. */
export interface StatedErrors {
  /** Of a length that is set or scribed; of an angle, as the length of arc at its point. */
  readonly lengths: number;
  /** Of a hole's centre from its mark, across and up. */
  readonly holes: number;
  /** Of the play of a pivot in its hole: both diameters together. */
  readonly bores: number;
  /** Of a tip diameter. */
  readonly tips: number;
}

/** Working assumptions for careful hand work; settings, not facts. */
export const USUAL_ERRORS: StatedErrors = { lengths: 0.04, holes: 0.03, bores: 0.01, tips: 0.03 };

/** What is off, and the rule, point, arbor or wheel that it belongs to. */
export type ErrorOf =
  | { readonly kind: 'length'; readonly of: RuleId }
  /** The radius that a carried post slides on. */
  | { readonly kind: 'slide'; readonly of: PostId }
  /** A held or drilled place; `of` is its rule, or the point where only drilling holds it. */
  | { readonly kind: 'place'; readonly of: RuleId | PointId; readonly point: PointId }
  | { readonly kind: 'hole'; readonly of: PointId }
  /** The play of a pivot, by the number of its bearing, or of a pipe in its own bore. */
  | { readonly kind: 'bore'; readonly of: ArborId; readonly bearing: number | 'pipe' }
  | { readonly kind: 'tip'; readonly of: WheelId };

/** One thing that may be off, and by how much. */
export type ErrorSource = ErrorOf & {
  /** mm, two standard deviations; across and up each for places and holes. */
  readonly plusMinus: number;
  /** Does the movement state it? */
  readonly isStated: boolean;
};

/** What one component of a source changes in a trial. */
export type ErrorChange =
  /** Value `slot` of a network rule, `perMm` of its unit for each mm. */
  | { readonly to: 'value'; readonly rule: number; readonly slot: number; readonly perMm: number }
  | { readonly to: 'held'; readonly points: readonly number[]; readonly axis: 0 | 1 }
  | { readonly to: 'hole'; readonly points: readonly PointId[]; readonly axis: 0 | 1 }
  | { readonly to: 'play'; readonly arbor: number; readonly bearing: number | 'pipe' }
  | { readonly to: 'tip'; readonly wheel: string };

/** One independent number that may be off; places and holes have two. */
export interface ErrorPart {
  readonly source: ErrorSource;
  readonly change: ErrorChange;
}

type Ground = ReturnType<typeof networkOf>;

/**
 * Every error that is tried, part by part.
 *
 * @param isStruck does the network rule place anything? Checking rules set nothing, so their lengths cannot be set wrong
 */
export function errorPartsOf(
  placed: PlacedMovement,
  ground: Ground,
  stated: StatedErrors,
  isStruck: (networkRule: number) => boolean,
): readonly ErrorPart[] {
  const parts = [
    ...lengthParts(placed, ground, stated, isStruck),
    ...placeParts(ground),
    ...holeParts(placed, stated),
    ...playParts(placed.movement, stated),
    ...tipParts(placed.movement, stated),
  ];
  return parts.filter(({ source }) => source.plusMinus > 0);
}

function lengthParts(
  placed: PlacedMovement,
  ground: Ground,
  stated: StatedErrors,
  isStruck: (networkRule: number) => boolean,
): ErrorPart[] {
  const { movement } = placed;
  const rules = new Map<RuleId, Rule>(movement.rules.map((rule) => [rule.id, rule]));
  const { network, sources } = ground;
  return sources.flatMap((from, r): ErrorPart[] => {
    const change = isStruck(r) ? valueChange(placed, ground, r) : undefined;
    if (!change || !(change.perMm > 0)) return [];
    if (from.kind === 'slide') {
      const source = { kind: 'slide', of: from.post, plusMinus: stated.lengths, isStated: false } as const;
      return [{ source, change }];
    }
    const rule = from.kind === 'rule' ? rules.get(from.rule) : undefined;
    if (!rule || rule.kind === 'held') return [];
    const own = ownPlusMinus(rule);
    // The ± of an angle is degrees in the document and radians in the network; here it is the arc at its point.
    const arc = network.kinds[r] === RuleKind.ray ? (ground.plusMinus[r] ?? 0) / change.perMm : own;
    return [{ source: lengthSource(rule.id, own === undefined ? undefined : arc, stated), change }];
  });
}

function lengthSource(of: RuleId, own: number | undefined, { lengths }: StatedErrors): ErrorSource {
  return { kind: 'length', of, plusMinus: own ?? lengths, isStated: own !== undefined };
}

function ownPlusMinus(rule: Rule): number | undefined {
  const isMeasured = rule.kind === 'depth' && rule.use === 'measured' && rule.measured !== undefined;
  return isMeasured ? (rule.measured?.plusMinus ?? rule.plusMinus) : rule.plusMinus;
}

/** The value that a length is set by; undefined for rules without one (in line, opposite, same place…). */
function valueChange(
  placed: PlacedMovement,
  ground: Ground,
  r: number,
): Extract<ErrorChange, { to: 'value' }> | undefined {
  const { network, pointIds } = ground;
  const kind = network.kinds[r];
  if (kind === RuleKind.distance) return { to: 'value', rule: r, slot: 0, perMm: 1 };
  if (kind === RuleKind.onLine) return { to: 'value', rule: r, slot: 2, perMm: 1 };
  if (kind !== RuleKind.ray) return undefined;
  const [p, a] = [network.points[4 * r] ?? -1, network.points[4 * r + 1] ?? -1].map((index) => {
    const id = pointIds[index];
    return id === undefined ? undefined : placed.places.get(id);
  });
  const arm = p && a ? Math.hypot(p.x - a.x, p.y - a.y) : 0;
  return arm > 0 ? { to: 'value', rule: r, slot: 0, perMm: 1 / arm } : undefined;
}

/** Held and drilled places with a ± of their own: what nobody states is the datum, and exact. */
function placeParts({ heldBy, pointIds }: Ground): ErrorPart[] {
  return [...heldBy].flatMap(([point, held]) => {
    const id = pointIds[point];
    if (id === undefined) return [];
    const source = {
      kind: 'place',
      of: held.rule ?? id,
      point: id,
      plusMinus: held.plusMinus,
      isStated: true,
    } as const;
    return ([0, 1] as const).map((axis): ErrorPart => ({ source, change: { to: 'held', points: [point], axis } }));
  });
}

/** One hole for all points at one place, named by the first that rides on nothing; a drilled hole is a fact. */
function holeParts({ movement, places }: PlacedMovement, stated: StatedErrors): ErrorPart[] {
  const drilled = new Set<PointId>(movement.made.filter(({ state }) => state === 'drilled').map(({ point }) => point));
  const carried = new Set<PointId>(movement.arbors.filter(({ ridesOn }) => ridesOn !== undefined).map(({ id }) => id));
  const holes: { readonly x: number; readonly y: number; readonly points: PointId[] }[] = [];
  for (const { id, x, y } of places.values()) {
    const known = holes.find((hole) => Math.hypot(hole.x - x, hole.y - y) < ONE_PLACE);
    if (known) known.points.push(id);
    else holes.push({ x, y, points: [id] });
  }
  return holes.flatMap(({ points }) => {
    const named = points.find((id) => !carried.has(id)) ?? points[0];
    if (named === undefined || points.some((id) => drilled.has(id))) return [];
    const source = { kind: 'hole', of: named, plusMinus: stated.holes, isStated: false } as const;
    return ([0, 1] as const).map((axis): ErrorPart => ({ source, change: { to: 'hole', points, axis } }));
  });
}

function playParts(movement: Movement, stated: StatedErrors): ErrorPart[] {
  return movement.arbors.flatMap((arbor, index) =>
    playsOf(arbor).map((bearing): ErrorPart => {
      const source = { kind: 'bore', of: arbor.id, bearing, plusMinus: stated.bores, isStated: false } as const;
      return { source, change: { to: 'play', arbor: index, bearing } };
    }),
  );
}

/** Bearings by number; a pipe without bearings of its own runs in its bore. */
function playsOf(arbor: Arbor): readonly (number | 'pipe')[] {
  const own = arbor.bearings.map((_, index) => index);
  const runsOnInside = arbor.bearings.some(({ plate }) => plate === undefined);
  return arbor.pipeBore !== undefined && arbor.ridesOn !== undefined && !runsOnInside ? [...own, 'pipe'] : own;
}

function tipParts(movement: Movement, stated: StatedErrors): ErrorPart[] {
  // The trundles of a lantern pinion are set, not turned.
  const turned = movement.wheels.filter((wheel) => !isOfPins(wheel));
  return turned.map((wheel): ErrorPart => {
    const source = { kind: 'tip', of: wheel.id, plusMinus: stated.tips, isStated: false } as const;
    return { source, change: { to: 'tip', wheel: wheel.id } };
  });
}
