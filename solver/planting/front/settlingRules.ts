/** Rules that would settle a loose point, with the value that each would have now: what the bench offers. */

import { separation } from '../../geometry/index.ts';
import type { PointId } from '../../movement/ids.ts';
import { MIN_LENGTH, withRuleNumber } from '../../movement/index.ts';
import type { Movement } from '../../movement/schema.ts';
import type { Place, PlacedMovement } from '../placed.ts';
import type { DraftRule, RuleValue, SettlingCandidate, SettlingGround } from './ruleKinds/kind.ts';
import { RULE_KINDS_IN_PLANTING } from './ruleKinds/ruleKinds.ts';
import { ruleValueAt } from './ruleValue.ts';

/** A rule that is offered for a loose point. */
export interface SettlingRule {
  readonly rule: DraftRule;
  /** What it measures now. */
  readonly value: RuleValue;
  /** Free motions of the point that it would take away. */
  readonly takes: number;
  /** Would nothing of the point's own freedom remain? */
  readonly settles: boolean;
  /** Sine of the angle between the rule's locus and the way the point can move: 1 is best. */
  readonly sharpness: number;
  /** For a depth: the distance that it would set, mm. */
  readonly calculated?: number;
}

/** Nearest planted points that are offered as ground for a new rule; farther ones are seldom meant. */
const NEAREST_OFFERED = 8;
/** A locus flatter than this to the free direction settles nothing in practice, sine (about 1°). */
const TOO_FLAT = 0.0175;

/**
 * Rules between a loose point and planted ground that would take freedom from it, the likeliest kinds first.
 *
 * @returns none for a point that is not loose, or moves only with others (settle one of those)
 */
export function settlingRules(placed: PlacedMovement, pointId: PointId): readonly SettlingRule[] {
  const point = placed.places.get(pointId);
  if (point?.state !== 'loose' || point.free.length === 0) return [];
  const ground: SettlingGround = {
    placed,
    point,
    near: groundNear(placed, point),
    isCentre: isCentreIn(placed.movement),
  };
  const candidates = RULE_KINDS_IN_PLANTING.flatMap(({ settles }) => settles?.(ground) ?? []);
  return candidates.flatMap((candidate) => offer(placed, point, candidate) ?? []);
}

function offer(placed: PlacedMovement, point: Place, candidate: SettlingCandidate): SettlingRule | undefined {
  const { rule, across, calculated } = candidate;
  const value = ruleValueAt(placed.movement, (id) => placed.places.get(id), rule);
  if (!value) return undefined;
  const freedoms = point.free.length;
  const sharpness = across
    ? Math.min(1, Math.hypot(...point.free.map((way) => way.x * across.x + way.y * across.y)))
    : 1;
  if (sharpness < TOO_FLAT) return undefined;
  const takes = across ? 1 : freedoms;
  return {
    rule: withRuleNumber(rule, value.value),
    value,
    takes,
    settles: takes === freedoms,
    sharpness,
    ...(calculated === undefined ? {} : { calculated }),
  };
}

/** Planted points apart from the point itself, one for each place, the nearest first. */
function groundNear(placed: PlacedMovement, point: Place): Place[] {
  const carriers = new Map(placed.movement.arbors.map(({ id, ridesOn }) => [id as PointId, ridesOn]));
  return [...placed.places.values()]
    .filter(
      (place) =>
        place.state === 'planted' && carriers.get(place.id) === undefined && separation(place, point) > MIN_LENGTH,
    )
    .sort((a, b) => separation(a, point) - separation(b, point))
    .slice(0, NEAREST_OFFERED);
}

/** Points that other rules use as centres, or that posts slide about. */
function isCentreIn(movement: Movement): (id: PointId) => boolean {
  const centres = new Set<PointId>(movement.rules.flatMap((rule) => ('centre' in rule ? [rule.centre] : [])));
  for (const { slidesAbout } of movement.posts) if (slidesAbout !== undefined) centres.add(slidesAbout);
  return (id) => centres.has(id);
}
