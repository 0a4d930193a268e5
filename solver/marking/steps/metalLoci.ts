/**
 * Lines and circles on the metal on which a point of a rule lies, from points that are already there.
 *
 * Radii and angles are read from the planted places: there every rule holds to 1e-9 mm, so the setting is the
 * rule's own length, whatever gave it (a calculated or measured depth, a gap between outlines).
 */

import { type Point, separation } from '../../geometry/index.ts';
import type { PointId } from '../../movement/ids.ts';
import type { Movement } from '../../movement/schema.ts';
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

/** The arc through `at` about the other one of a rule's two points. */
export function arcBetween(
  ground: RuleGround,
  rule: string,
  points: readonly (PointId | undefined)[],
  at: Point,
): MetalLocus | undefined {
  const [from] = othersOnMetal(ground, points, at) ?? [];
  return from ? arcFrom(from, at, rule) : undefined;
}

/** The line through the two others of a rule's three points. */
export function lineThrough(
  ground: RuleGround,
  rule: string,
  points: readonly PointId[],
  at: Point,
): MetalLocus | undefined {
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

/** The circle through `at` about a rule's centre. */
export function circleAbout(ground: RuleGround, rule: string, centre: PointId, at: Point): MetalLocus | undefined {
  const place = ground.placeOf(centre);
  const from = place && metalPointAt(ground.metal, place);
  return from ? arcFrom(from, at, rule) : undefined;
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
