/**
 * How errors of the settings reach the points: each point's sensitivity to every setting before it, carried along the
 * steps. From these come the spread of the points for dividers of a stated accuracy, and the worst that rounding to the
 * printed figures can do.
 *
 * A point p on two loci with unit normals n₁, n₂ moves by δp with nᵢ·δp = δsᵢ + nᵢ·δcᵢ, where δsᵢ is the error of the
 * setting and δcᵢ how the locus itself is carried by the points it was struck from.
 */

import type { LengthDisplay } from '../../movement/decimal.ts';
import { lengthPlaces, printedHalf } from '../../movement/decimal.ts';
import type { MarkingLocus, MarkingStep } from '../marks.ts';

/** Errors of one kind of hand: standard deviations of a divider setting or a distance, mm, and of an angle, degrees. */
export interface HandErrors {
  readonly length: number;
  readonly angleDeg: number;
}

/** How far a struck point may lie from its place. */
export interface StruckSpread {
  readonly point: string;
  /** Covariance, mm²: [xx, xy, yy]. */
  readonly covariance: readonly [number, number, number];
}

/** A point with what each setting does to it. */
interface Struck {
  readonly at: readonly [number, number];
  /** Sensitivity to setting k: [dx, dy] per mm, or per degree for an angle. */
  readonly bySetting: ReadonlyMap<number, readonly [number, number]>;
}

/** A setting of dividers or protractor, as errors see it. */
interface Setting {
  readonly isAngle: boolean;
}

/** Covariance of every struck point for independent errors of the settings. */
export function spreadOfSteps(steps: readonly MarkingStep[], errors: HandErrors): readonly StruckSpread[] {
  const { struck, settings } = carried(steps);
  return [...struck].map(([point, { bySetting }]) => {
    let [xx, xy, yy] = [0, 0, 0];
    for (const [index, [dx, dy]] of bySetting) {
      const sigma = settings[index]?.isAngle ? errors.angleDeg : errors.length;
      xx += dx * dx * sigma * sigma;
      xy += dx * dy * sigma * sigma;
      yy += dy * dy * sigma * sigma;
    }
    return { point, covariance: [xx, xy, yy] };
  });
}

/** The farthest each point can lie from its place when every setting is off by half its last printed figure, mm. */
export function printedReach(steps: readonly MarkingStep[], display: LengthDisplay): ReadonlyMap<string, number> {
  const { struck, settings } = carried(steps);
  const reach = new Map<string, number>();
  const angleHalf = 0.5 * 10 ** -(lengthPlaces(display) + 1);
  for (const [point, { bySetting }] of struck) {
    let sum = 0;
    for (const [index, [dx, dy]] of bySetting) {
      sum += Math.hypot(dx, dy) * (settings[index]?.isAngle ? angleHalf : printedHalf(display));
    }
    reach.set(point, sum);
  }
  return reach;
}

function carried(steps: readonly MarkingStep[]): { struck: Map<string, Struck>; settings: Setting[] } {
  const struck = new Map<string, Struck>();
  const settings: Setting[] = [];
  for (const step of steps) {
    if (step.kind === 'unsettled') continue;
    const [first, second] = step.loci;
    const fixedPoint: Struck = { at: step.place, bySetting: new Map() };
    if (step.kind === 'same') {
      const shared = first?.kind === 'line' ? struck.get(first.through) : undefined;
      struck.set(step.point, shared ?? fixedPoint);
    } else if (step.kind === 'datum' && first?.kind === 'arc') {
      struck.set(step.point, alongBase(step, first, struck, settings));
    } else if (!first || !second || step.kind === 'datum') {
      struck.set(step.point, fixedPoint);
    } else struck.set(step.point, crossed(step, [first, second], struck, settings));
  }
  return { struck, settings };
}

/** The second datum point stands on the base line, which is drawn through it: it only moves along. */
function alongBase(
  step: MarkingStep,
  arc: Extract<MarkingLocus, { kind: 'arc' }>,
  struck: Map<string, Struck>,
  settings: Setting[],
): Struck {
  const from = struck.get(arc.from)?.at ?? [0, 0];
  const along = unit(step.place[0] - from[0], step.place[1] - from[1]);
  return { at: step.place, bySetting: new Map([[settings.push({ isAngle: false }) - 1, along]]) };
}

/** One locus, linearised at the place: normal, and the right-hand side's sensitivity to every setting. */
interface Row {
  readonly normal: readonly [number, number];
  readonly side: Map<number, number>;
}

function crossed(
  step: MarkingStep,
  loci: readonly MarkingLocus[],
  struck: Map<string, Struck>,
  settings: Setting[],
): Struck {
  const rows = loci.map((locus) => rowOf(locus, step.place, struck, settings));
  const [a, b] = rows;
  const bySetting = new Map<number, readonly [number, number]>();
  if (!a || !b) return { at: step.place, bySetting };
  const det = a.normal[0] * b.normal[1] - a.normal[1] * b.normal[0];
  for (const index of new Set([...a.side.keys(), ...b.side.keys()])) {
    const p = a.side.get(index) ?? 0;
    const q = b.side.get(index) ?? 0;
    bySetting.set(index, [(p * b.normal[1] - q * a.normal[1]) / det, (a.normal[0] * q - b.normal[0] * p) / det]);
  }
  return { at: step.place, bySetting };
}

function rowOf(
  locus: MarkingLocus,
  at: readonly [number, number],
  struck: Map<string, Struck>,
  settings: Setting[],
): Row {
  const side = new Map<number, number>();
  const add = (index: number, value: number) => side.set(index, (side.get(index) ?? 0) + value);
  const carry = (point: Struck | undefined, normal: readonly [number, number], weight: number) => {
    for (const [index, [dx, dy]] of point?.bySetting ?? []) add(index, weight * (normal[0] * dx + normal[1] * dy));
  };
  const setting = (isAngle: boolean): number => settings.push({ isAngle }) - 1;
  switch (locus.kind) {
    case 'arc': {
      const from = struck.get(locus.from);
      const normal = unit(at[0] - (from?.at[0] ?? 0), at[1] - (from?.at[1] ?? 0));
      add(setting(false), 1);
      carry(from, normal, 1);
      return { normal, side };
    }
    case 'line': {
      const [through, to] = [struck.get(locus.through), struck.get(locus.to)];
      const [dx, dy] = [(to?.at[0] ?? 0) - (through?.at[0] ?? 0), (to?.at[1] ?? 0) - (through?.at[1] ?? 0)];
      const normal = square(unit(dx, dy));
      // A point at part t of the way is carried by (1 − t) of one end and t of the other.
      const part = ((at[0] - (through?.at[0] ?? 0)) * dx + (at[1] - (through?.at[1] ?? 0)) * dy) / (dx * dx + dy * dy);
      carry(through, normal, 1 - part);
      carry(to, normal, part);
      return { normal, side };
    }
    case 'ray': {
      const from = struck.get(locus.from);
      const reference = locus.reference === undefined ? undefined : struck.get(locus.reference);
      const [dx, dy] = [at[0] - (from?.at[0] ?? 0), at[1] - (from?.at[1] ?? 0)];
      const length = Math.hypot(dx, dy);
      const normal = square(unit(dx, dy));
      add(setting(true), (length * Math.PI) / 180);
      carry(from, normal, 1);
      if (reference) {
        const [rx, ry] = [reference.at[0] - (from?.at[0] ?? 0), reference.at[1] - (from?.at[1] ?? 0)];
        const turn = square(unit(rx, ry));
        const share = length / Math.hypot(rx, ry);
        carry(reference, turn, share);
        carry(from, turn, -share);
      }
      return { normal, side };
    }
    case 'offset': {
      const normal = offsetNormal(locus);
      add(setting(false), 1);
      return { normal, side };
    }
  }
}

/** Normals of offsets along growing distance; the datum's own axes are taken as x and y (no datum pair gives offsets). */
function offsetNormal(locus: Extract<MarkingLocus, { kind: 'offset' }>): readonly [number, number] {
  if (locus.from === 'datum') return locus.along === 'x' ? [1, 0] : [0, 1];
  const normals = { 'left edge': [1, 0], 'right edge': [-1, 0], 'lower edge': [0, 1], 'upper edge': [0, -1] } as const;
  return normals[locus.from];
}

const unit = (x: number, y: number): readonly [number, number] => [x / Math.hypot(x, y), y / Math.hypot(x, y)];
const square = ([x, y]: readonly [number, number]): readonly [number, number] => [-y, x];
