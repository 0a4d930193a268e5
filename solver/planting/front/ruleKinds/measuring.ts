/** Measures and loci that several kinds of rules share. */
import { type Point, separation } from '../../../geometry/index.ts';
import type { PointId } from '../../../movement/ids.ts';
import { HOLDS } from '../../../tolerances.ts';
import type { Measured, RuleValue, StruckLocus } from './kind.ts';

/** mm between two places; undefined where one is not there. */
export const between = (a: Point | undefined, b: Point | undefined): number | undefined => a && b && separation(a, b);

/** A length as a value. */
export const lengthValue = (value: number | undefined): RuleValue | undefined =>
  value === undefined ? undefined : { kind: 'length', value };

/** How far a rule without a number is from holding, as a value; NaN is none. */
export const offValue = (value: number | undefined): RuleValue | undefined =>
  value === undefined || !Number.isFinite(value) ? undefined : { kind: 'off', value };

/** A place turned about a centre by radians. */
export function turnedAbout(point: Point | undefined, centre: Point | undefined, angle: number): Point | undefined {
  if (!point || !centre) return undefined;
  const dx = point.x - centre.x;
  const dy = point.y - centre.y;
  const c = Math.cos(angle);
  const s = Math.sin(angle);
  return { x: centre.x + c * dx - s * dy, y: centre.y + s * dx + c * dy };
}

/** Unit vector from one place to another that is elsewhere. */
export function towards(from: Point, to: Point): Point {
  const length = separation(from, to);
  return { x: (to.x - from.x) / length, y: (to.y - from.y) / length };
}

/** The one of two that is not the point. */
export const otherOf = (pair: readonly (PointId | undefined)[], point: PointId): PointId | undefined =>
  pair.find((each) => each !== point);

/** The arc about `from` on which a point lies. */
export function arcAbout(
  { placeOf }: Measured,
  from: PointId | undefined,
  point: PointId,
  length?: number,
): StruckLocus | undefined {
  const [centre, at] = [from && placeOf(from), placeOf(point)];
  if (from === undefined || !centre || !at) return undefined;
  const away = separation(centre, at);
  return away < HOLDS ? undefined : { from, locus: { kind: 'circle', centre, radius: length ?? away } };
}

/** The straight line from `from` through the point; a ray begins there. */
export function straightFrom(
  { placeOf }: Measured,
  from: PointId | undefined,
  point: PointId,
  kind: 'line' | 'ray',
): StruckLocus | undefined {
  const [through, at] = [from && placeOf(from), placeOf(point)];
  if (from === undefined || !through || !at || separation(through, at) < HOLDS) return undefined;
  return { from, locus: { kind, through, along: towards(through, at) } };
}
