/** The value that a rule would have at the planted places: for measuring, for new rules, and for cures. */

import type { Point } from '../../geometry/index.ts';
import type { PointId, WheelId } from '../../movement/ids.ts';
import type { Movement, Rule } from '../../movement/schema.ts';
import type { PlacedMovement } from '../placed.ts';
import { bodiesOf } from './bodies.ts';
import { gapRule } from './gapRules.ts';

type WithoutId<R> = R extends Rule ? Omit<R, 'id' | 'leaveOut'> : never;
/** A rule that is not yet in the movement. */
export type DraftRule = WithoutId<Rule>;

/** A value by what it measures. */
export type RuleValue =
  /** A centre distance, mm. */
  | { readonly kind: 'length'; readonly value: number }
  /** The gap between two outlines, mm; negative where they overlap. */
  | { readonly kind: 'gap'; readonly value: number }
  /** Degrees in [0, 360). */
  | { readonly kind: 'angle'; readonly value: number }
  /** Rules without a number: how far the places are from what they ask, mm. */
  | { readonly kind: 'off'; readonly value: number };

const DEGREES = 180 / Math.PI;

/**
 * What a rule measures at given places.
 *
 * @param placeOf the place of a point, undefined for one that is not there
 * @returns undefined where a part is missing, or an angle is asked about one and the same place
 */
export function ruleValueAt(
  movement: Movement,
  placeOf: (id: PointId) => Point | undefined,
  rule: DraftRule,
): RuleValue | undefined {
  const between = (a: Point | undefined, b: Point | undefined): number | undefined =>
    a && b && Math.hypot(b.x - a.x, b.y - a.y);
  const length = (value: number | undefined): RuleValue | undefined =>
    value === undefined ? undefined : { kind: 'length', value };
  const off = (value: number | undefined): RuleValue | undefined =>
    value === undefined ? undefined : { kind: 'off', value };
  switch (rule.kind) {
    case 'distance':
      return length(between(placeOf(rule.points[0]), placeOf(rule.points[1])));
    case 'radius':
      return length(between(placeOf(rule.centre), placeOf(rule.point)));
    case 'depth':
      return length(between(...arborsOf(movement, rule.wheels, placeOf)));
    case 'bearing':
      return bearingNow(placeOf(rule.centre), placeOf(rule.point), rule.reference && placeOf(rule.reference), rule);
    case 'clearBy':
      return gapNow(movement, placeOf, rule);
    case 'held':
      return off(between({ x: rule.at[0], y: rule.at[1] }, placeOf(rule.point)));
    case 'samePlace':
      return off(between(placeOf(rule.points[0]), placeOf(rule.points[1])));
    case 'opposite':
      return off(between(placeOf(rule.point), turned(placeOf(rule.of), placeOf(rule.centre), Math.PI)));
    case 'inLine':
      return off(lineOffset(placeOf(rule.point), placeOf(rule.through[0]), placeOf(rule.through[1])));
    case 'sameRadius': {
      const radii = rule.points.map((id) => between(placeOf(rule.centre), placeOf(id)) ?? Number.NaN);
      const spread = Math.max(...radii) - Math.min(...radii);
      return off(Number.isFinite(spread) ? spread : undefined);
    }
    case 'evenSpacing': {
      const [first] = rule.points;
      const from = first && placeOf(first);
      const misses = rule.points.map(
        (id, index) =>
          between(placeOf(id), turned(from, placeOf(rule.centre), (2 * Math.PI * index) / rule.points.length)) ??
          Number.NaN,
      );
      const most = Math.max(...misses);
      return off(Number.isFinite(most) ? most : undefined);
    }
  }
}

/**
 * What a rule, in the movement or not yet, measures in a planted movement.
 *
 * @param movement the movement whose wheels and outlines count; usually `placed.movement`
 */
export function ruleValueNow(movement: Movement, placed: PlacedMovement, rule: DraftRule): RuleValue | undefined {
  return ruleValueAt(movement, (id) => placed.places.get(id), rule);
}

function arborsOf(
  movement: Movement,
  wheels: readonly [WheelId, WheelId],
  placeOf: (id: PointId) => Point | undefined,
): [Point | undefined, Point | undefined] {
  const at = (id: WheelId): Point | undefined => {
    const wheel = movement.wheels.find((each) => each.id === id);
    return wheel && placeOf(wheel.arbor);
  };
  return [at(wheels[0]), at(wheels[1])];
}

function bearingNow(
  centre: Point | undefined,
  point: Point | undefined,
  reference: Point | undefined,
  rule: { readonly reference?: PointId },
): RuleValue | undefined {
  if (!centre || !point || (rule.reference !== undefined && !reference)) return undefined;
  const angle = directionOf(centre, point);
  const zero = reference ? directionOf(centre, reference) : 0;
  if (angle === undefined || zero === undefined) return undefined;
  const value = (angle - zero) * DEGREES;
  return { kind: 'angle', value: ((value % 360) + 360) % 360 };
}

function directionOf(from: Point, to: Point): number | undefined {
  if (from.x === to.x && from.y === to.y) return undefined;
  return Math.atan2(to.y - from.y, to.x - from.x);
}

function turned(point: Point | undefined, centre: Point | undefined, angle: number): Point | undefined {
  if (!point || !centre) return undefined;
  const dx = point.x - centre.x;
  const dy = point.y - centre.y;
  const c = Math.cos(angle);
  const s = Math.sin(angle);
  return { x: centre.x + c * dx - s * dy, y: centre.y + s * dx + c * dy };
}

function lineOffset(point: Point | undefined, a: Point | undefined, b: Point | undefined): number | undefined {
  if (!point || !a || !b) return undefined;
  const length = Math.hypot(b.x - a.x, b.y - a.y);
  if (length === 0) return Math.hypot(point.x - a.x, point.y - a.y);
  return Math.abs((b.x - a.x) * (point.y - a.y) - (b.y - a.y) * (point.x - a.x)) / length;
}

/** The gap that is there: by the same side and the same radii as the rule would use. */
function gapNow(
  movement: Movement,
  placeOf: (id: PointId) => Point | undefined,
  rule: Extract<DraftRule, { kind: 'clearBy' }>,
): RuleValue | undefined {
  const bodyOf = bodiesOf(movement);
  const a = bodyOf(rule.parts[0]);
  const b = bodyOf(rule.parts[1]);
  if (!a || !b) return undefined;
  const sketchOf = (id: PointId): Point => {
    const at = placeOf(id);
    return at ? { x: at.x, y: at.y } : { x: 0, y: 0 };
  };
  const touching = gapRule([a, b], 0, rule.edge, sketchOf);
  if (touching.kind === 'cannot') {
    return touching.why === 'noRoom' ? { kind: 'gap', value: -touching.lacking } : undefined;
  }
  const at = placeOf(touching.point);
  if (!at) return undefined;
  if (touching.kind === 'edge') {
    return { kind: 'gap', value: touching.normal.x * at.x + touching.normal.y * at.y - touching.offset };
  }
  const from = typeof touching.from === 'string' ? placeOf(touching.from) : { x: touching.from.x, y: touching.from.y };
  if (!from) return undefined;
  const apart = Math.hypot(at.x - from.x, at.y - from.y) - touching.length;
  return { kind: 'gap', value: touching.inside ? -apart : apart };
}
