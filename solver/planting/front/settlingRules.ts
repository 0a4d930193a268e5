/** Rules that would settle a loose point, with the value that each would have now: what the bench offers. */

import type { Point } from '../../geometry/index.ts';
import type { PartId, PointId } from '../../movement/ids.ts';
import { MIN_LENGTH } from '../../movement/index.ts';
import type { Movement, Wheel } from '../../movement/schema.ts';
import { calculatedDepth, sizeOfWheel } from '../../teeth/index.ts';
import type { Place, PlacedMovement } from '../placed.ts';
import { type DraftRule, type RuleValue, ruleValueAt } from './ruleValue.ts';

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
/** Lines through pairs of these are offered, the nearest ones. */
const LINES_OFFERED = 3;
/** A locus flatter than this to the free direction settles nothing in practice, sine (about 1°). */
const TOO_FLAT = 0.0175;

/** A rule that might settle a point, with the direction it holds. */
interface Candidate {
  readonly rule: DraftRule;
  /** Unit direction in which the rule holds the point; undefined for a rule that fixes the whole place. */
  readonly across: Point | undefined;
  readonly calculated?: number;
}

/**
 * Rules between a loose point and planted ground that would take freedom from it, the likeliest kinds first.
 *
 * @returns none for a point that is not loose, or moves only with others (settle one of those)
 */
export function settlingRules(placed: PlacedMovement, pointId: PointId): readonly SettlingRule[] {
  const point = placed.places.get(pointId);
  if (point?.state !== 'loose' || point.free.length === 0) return [];
  const ground = groundNear(placed, point);
  const { movement } = placed;
  const candidates: Candidate[] = [
    ...depthCandidates(movement, placed, point),
    ...lengthCandidates(movement, point, ground),
    ...ground.map((from): Candidate => {
      const away = towards(from, point);
      const rule = { kind: 'bearing', point: pointId, centre: from.id, angle: 0 } as const;
      return { rule, across: { x: -away.y, y: away.x } };
    }),
    ...lineCandidates(point, ground),
    ...gapCandidates(movement, point, ground),
    { rule: { kind: 'held', point: pointId, at: [point.x, point.y] }, across: undefined },
  ];
  return candidates.flatMap((candidate) => offer(placed, point, candidate) ?? []);
}

function offer(placed: PlacedMovement, point: Place, candidate: Candidate): SettlingRule | undefined {
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
    rule: withValue(rule, value),
    value,
    takes,
    settles: takes === freedoms,
    sharpness,
    ...(calculated === undefined ? {} : { calculated }),
  };
}

/** The rule with the number that holds now. */
function withValue(rule: DraftRule, { value }: RuleValue): DraftRule {
  if (rule.kind === 'distance' || rule.kind === 'radius') return { ...rule, length: Math.max(MIN_LENGTH, value) };
  if (rule.kind === 'bearing') return { ...rule, angle: value };
  if (rule.kind === 'clearBy') return { ...rule, gap: Math.max(0, value) };
  return rule;
}

/** Planted points apart from the point itself, one for each place, the nearest first. */
function groundNear(placed: PlacedMovement, point: Place): Place[] {
  const carriers = new Map(placed.movement.arbors.map(({ id, ridesOn }) => [id as PointId, ridesOn]));
  return [...placed.places.values()]
    .filter(
      (place) => place.state === 'planted' && carriers.get(place.id) === undefined && apart(place, point) > MIN_LENGTH,
    )
    .sort((a, b) => apart(a, point) - apart(b, point))
    .slice(0, NEAREST_OFFERED);
}

const apart = (a: Point, b: Point): number => Math.hypot(b.x - a.x, b.y - a.y);

function towards(from: Point, to: Point): Point {
  const length = apart(from, to);
  return { x: (to.x - from.x) / length, y: (to.y - from.y) / length };
}

/** Depths of the point's wheels with wheels of the same size at the same height on planted arbors. */
function depthCandidates(movement: Movement, placed: PlacedMovement, point: Place): Candidate[] {
  const own = movement.wheels.filter(({ arbor }) => arbor === point.id);
  const meshed = new Set(movement.rules.flatMap((rule) => (rule.kind === 'depth' ? [pairKey(...rule.wheels)] : [])));
  return own.flatMap((wheel) =>
    movement.wheels.flatMap((other): Candidate[] => {
      const place = placed.places.get(other.arbor);
      if (place?.state !== 'planted' || meshed.has(pairKey(wheel.id, other.id)) || !meetInHeight(wheel, other)) {
        return [];
      }
      if (apart(place, point) < MIN_LENGTH) return [];
      const depth = calculatedDepth(other, wheel, movement);
      if (depth.kind !== 'depth') return [];
      const rule = { kind: 'depth', wheels: [other.id, wheel.id], use: 'calculated', allowance: 0 } as const;
      return [{ rule, across: towards(place, point), calculated: depth.distance }];
    }),
  );
}

const pairKey = (a: string, b: string): string => (a < b ? `${a} ${b}` : `${b} ${a}`);

const meetInHeight = (a: Wheel, b: Wheel): boolean =>
  Math.max(a.level, b.level) < Math.min(a.level + a.thickness, b.level + b.thickness);

/** A radius from points that other rules use as centres, a distance from the rest. */
function lengthCandidates(movement: Movement, point: Place, ground: readonly Place[]): Candidate[] {
  const centres = new Set<PointId>(movement.rules.flatMap((rule) => ('centre' in rule ? [rule.centre] : [])));
  for (const { slidesAbout } of movement.posts) if (slidesAbout !== undefined) centres.add(slidesAbout);
  const candidates = ground.map((from): Candidate => {
    const across = towards(from, point);
    return centres.has(from.id)
      ? { rule: { kind: 'radius', point: point.id, centre: from.id, length: MIN_LENGTH }, across }
      : { rule: { kind: 'distance', points: [from.id, point.id], length: MIN_LENGTH }, across };
  });
  return candidates.sort((a, b) => Number(b.rule.kind === 'radius') - Number(a.rule.kind === 'radius'));
}

/** Lines through two planted points, those that pass nearest to the point. */
function lineCandidates(point: Place, ground: readonly Place[]): Candidate[] {
  const lines: { readonly off: number; readonly candidate: Candidate }[] = [];
  ground.forEach((a, index) => {
    for (const b of ground.slice(index + 1)) {
      if (apart(a, b) < MIN_LENGTH) continue;
      const along = towards(a, b);
      const across = { x: -along.y, y: along.x };
      const off = Math.abs((point.x - a.x) * across.x + (point.y - a.y) * across.y);
      lines.push({ off, candidate: { rule: { kind: 'inLine', point: point.id, through: [a.id, b.id] }, across } });
    }
  });
  return lines
    .sort((a, b) => a.off - b.off)
    .slice(0, LINES_OFFERED)
    .map(({ candidate }) => candidate);
}

/** Gaps from the widest body on the point's arbor to the widest ones of its nearest neighbours. */
function gapCandidates(movement: Movement, point: Place, ground: readonly Place[]): Candidate[] {
  const own = widestPart(movement, point.id);
  return ground.map((from) => {
    const rule = { kind: 'clearBy', parts: [own, widestPart(movement, from.id)], gap: 0 } as const;
    return { rule, across: towards(from, point) };
  });
}

function widestPart(movement: Movement, id: PointId): PartId {
  let widest: Wheel | undefined;
  let most = 0;
  for (const wheel of movement.wheels) {
    if (wheel.arbor !== id || wheel.internal) continue;
    const { tipRadius } = sizeOfWheel(wheel, movement);
    if (tipRadius <= most) continue;
    most = tipRadius;
    widest = wheel;
  }
  return widest?.id ?? id;
}
