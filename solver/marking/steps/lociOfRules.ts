/**
 * A rule as a line or circle on the metal on which one of its points lies, from points that are already there.
 *
 * Radii and angles are read from the planted places: there every rule holds to 1e-9 mm, so the setting is the
 * rule's own length, whatever gave it (a calculated or measured depth, a gap between outlines).
 */

import { type Point, separation } from '../../geometry/index.ts';
import type { PointId } from '../../movement/ids.ts';
import type { Movement, Rule, RuleOf } from '../../movement/schema.ts';
import { ONE_PLACE } from '../../tolerances.ts';
import { type Metal, type MetalLocus, type MetalPoint, metalPointAt } from './metal.ts';

/** What the loci need to know of the movement. */
export interface RuleGround {
  readonly movement: Movement;
  readonly metal: Metal;
  /** Place of any point as seen on the face; undefined when it has none. */
  readonly placeOf: (id: PointId) => Point | undefined;
  readonly arborOfWheel: ReadonlyMap<string, PointId>;
}

/** The locus that a rule gives for the point at `at`; undefined where the metal does not yet hold what it needs. */
export function locusOfRule(ground: RuleGround, rule: Rule, at: Point): MetalLocus | undefined {
  switch (rule.kind) {
    case 'distance':
      return arcBetween(ground, rule.id, rule.points, at);
    case 'radius':
      return arcBetween(ground, rule.id, [rule.point, rule.centre], at);
    case 'depth':
      return arcBetween(
        ground,
        rule.id,
        rule.wheels.map((wheel) => ground.arborOfWheel.get(wheel)),
        at,
      );
    case 'clearBy':
      return arcBetween(
        ground,
        rule.id,
        rule.parts.map((part) => centreOf(ground, part)),
        at,
      );
    case 'bearing':
      return rayOfBearing(ground, rule, at);
    case 'inLine':
      return lineThrough(ground, rule.id, [rule.point, ...rule.through], at);
    case 'opposite':
      return lineThrough(ground, rule.id, [rule.point, rule.centre, rule.of], at);
    case 'sameRadius':
    case 'evenSpacing':
      return circleAbout(ground, rule.id, rule.centre, at);
    case 'held':
    case 'samePlace':
      return undefined;
  }
}

/** An arc about a point on the metal through `at`. */
export function arcFrom(from: MetalPoint, at: Point, rule?: string): MetalLocus | undefined {
  const radius = separation(from.at, at);
  if (radius < ONE_PLACE) return undefined;
  return {
    kind: 'circle',
    centre: from.at,
    radius,
    told: { kind: 'arc', from: from.id, radius, ...(rule === undefined ? {} : { rule }) },
  };
}

function centreOf(ground: RuleGround, part: string): PointId | undefined {
  const arbor = ground.arborOfWheel.get(part);
  if (arbor !== undefined) return arbor;
  const id = part as PointId; // a part that is no wheel may be a point; one that is not has no place below
  return ground.placeOf(id) ? id : undefined;
}

/** The points of a rule other than the one at `at`; undefined when any of them is not on the metal. */
function othersOnMetal(
  ground: RuleGround,
  points: readonly (PointId | undefined)[],
  at: Point,
): MetalPoint[] | undefined {
  const others: MetalPoint[] = [];
  let isMember = false;
  for (const id of points) {
    const place = id === undefined ? undefined : ground.placeOf(id);
    if (!place) return undefined;
    if (separation(place, at) < ONE_PLACE) {
      isMember = true;
      continue;
    }
    const found = metalPointAt(ground.metal, place);
    if (!found) return undefined;
    others.push(found);
  }
  return isMember ? others : undefined;
}

function arcBetween(
  ground: RuleGround,
  rule: string,
  points: readonly (PointId | undefined)[],
  at: Point,
): MetalLocus | undefined {
  const [from] = othersOnMetal(ground, points, at) ?? [];
  return from ? arcFrom(from, at, rule) : undefined;
}

function lineThrough(ground: RuleGround, rule: string, points: readonly PointId[], at: Point): MetalLocus | undefined {
  const [first, second] = othersOnMetal(ground, points, at) ?? [];
  if (!first || !second) return undefined;
  const length = separation(first.at, second.at);
  if (length < ONE_PLACE) return undefined;
  return {
    kind: 'line',
    through: first.at,
    along: { x: (second.at.x - first.at.x) / length, y: (second.at.y - first.at.y) / length },
    told: { kind: 'line', through: first.id, to: second.id, rule },
  };
}

function circleAbout(ground: RuleGround, rule: string, centre: PointId, at: Point): MetalLocus | undefined {
  const place = ground.placeOf(centre);
  const from = place && metalPointAt(ground.metal, place);
  return from ? arcFrom(from, at, rule) : undefined;
}

/** A bearing seen from its centre; where the point is the centre itself, dividers serve better and no ray is given. */
function rayOfBearing(ground: RuleGround, rule: RuleOf<'bearing'>, at: Point): MetalLocus | undefined {
  const centre = ground.placeOf(rule.centre);
  const from = centre && metalPointAt(ground.metal, centre);
  if (!from) return undefined;
  if (rule.reference === undefined) return rayFrom(ground.metal, from, undefined, at, rule.id);
  const target = ground.placeOf(rule.reference);
  const reference = target && metalPointAt(ground.metal, target);
  return reference ? rayFrom(ground.metal, from, reference, at, rule.id) : undefined;
}

/** The ray from a point on the metal through `at`, told by its angle from the base line or from another point. */
export function rayFrom(
  metal: Metal,
  from: MetalPoint,
  reference: MetalPoint | undefined,
  at: Point,
  rule?: string,
): MetalLocus | undefined {
  const length = separation(from.at, at);
  if (length < ONE_PLACE || (reference && separation(reference.at, from.at) < ONE_PLACE)) return undefined;
  const angle = Math.atan2(at.y - from.at.y, at.x - from.at.x);
  const zero = reference ? Math.atan2(reference.at.y - from.at.y, reference.at.x - from.at.x) : metal.base;
  const turned = ((angle - zero) * 180) / Math.PI;
  return {
    kind: 'ray',
    through: from.at,
    along: { x: (at.x - from.at.x) / length, y: (at.y - from.at.y) / length },
    told: {
      kind: 'ray',
      from: from.id,
      reference: reference?.id,
      angleDeg: ((turned % 360) + 360) % 360,
      ...(rule === undefined ? {} : { rule }),
    },
  };
}
