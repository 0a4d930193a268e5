/**
 * The three readings of a gap: as planted, worst with the shake of the bearings and the run-out of the wheels,
 * and that less the ± of the planting.
 */

import type { PointId, WheelId } from '../../movement/ids.ts';
import type { Wheel } from '../../movement/schema.ts';
import type { PlacedMovement } from '../../planting/placed.ts';
import { TOUCH } from '../../tolerances.ts';
import { type Shake, shakeOf, sideMovementBetween, sideMovementOver } from '../shake/shake.ts';
import type { Heights, Solid } from '../solids/solid.ts';
import type { PairTerms } from './pairTerms.ts';
import type { PlanGap } from './planGap.ts';

export type GapValue = 'asPlanted' | 'withShake' | 'withPlusMinus';

/** A gap under one reading: in plan and in height, and the one that decides, mm. */
export interface GapReading {
  /** Negative: how far the two overlap, which is never more than the smaller of them is there. */
  readonly gap: number;
  /** For an overlap: the least movement that ends it, where that is more, mm. */
  readonly wayOut?: number;
  readonly wanted: number;
  readonly direction: 'plan' | 'height';
  /** For two that stand in each other and are parted sooner in height: what would clear them in plan, mm. */
  readonly sideways?: number;
}

/** What gaps are read with: made once for a placed movement. */
export interface GapContext {
  readonly placed: PlacedMovement;
  readonly shake: Shake;
  readonly wheels: ReadonlyMap<WheelId, Wheel>;
  readonly posts: ReadonlySet<string>;
  /** Largest amount that shake, run-out and ± could take from any gap, mm: the margin of the search for pairs. */
  readonly margin: number;
}

/** Gathers what the readings need. */
export function gapContextOf(placed: PlacedMovement, solids: readonly Solid[]): GapContext {
  const shake = shakeOf(placed.movement);
  const wheels = new Map(placed.movement.wheels.map((wheel) => [wheel.id, wheel]));
  let movement = 0;
  for (const solid of solids) {
    movement = Math.max(movement, asideOf(solid, solid.heights, shake) + runOutOf(solid, wheels));
  }
  const posts = new Set<string>(placed.movement.posts.map((post) => post.id));
  return { placed, shake, wheels, posts, margin: 2 * movement + 4 * largestSpread(placed) };
}

/** Largest standard deviation of any place, mm; asking for it costs, so it is asked only where a ± is stated. */
function largestSpread({ movement, places }: PlacedMovement): number {
  const stated = movement.rules.some(
    (rule) => (rule.plusMinus ?? 0) > 0 || (rule.kind === 'depth' && rule.measured !== undefined),
  );
  const drilled = movement.made.some((made) => (made.plusMinus ?? 0) > 0);
  if (!stated && !drilled) return 0;
  let spread = 0;
  for (const place of places.values()) spread = Math.max(spread, place.spread?.major ?? 0);
  return spread;
}

/** Height gap of two solids, mm; negative where they share heights. */
export function heightGapOf(first: Solid, second: Solid): number {
  return Math.max(second.heights.from - first.heights.to, first.heights.from - second.heights.to);
}

/**
 * The first reading that falls short of what the pair owes, with all three values; undefined where none does.
 */
export function shortfallOf(
  first: Solid,
  second: Solid,
  plan: PlanGap,
  terms: PairTerms,
  context: GapContext,
): { readonly value: GapValue; readonly reading: GapReading; readonly gaps: Record<GapValue, number> } | undefined {
  const plusMinus = plusMinusOf(first, second, context);
  const readings: Record<GapValue, GapReading> = {
    ...gapOfPair(first, second, plan, terms, context),
    withPlusMinus: gapOfPair(first, second, { ...plan, gap: plan.gap - plusMinus }, terms, context).withShake,
  };
  const value = VALUES.find((name) => readings[name].gap < readings[name].wanted - TOUCH);
  if (!value) return undefined;
  const gaps = {
    asPlanted: readings.asPlanted.gap,
    withShake: readings.withShake.gap,
    withPlusMinus: readings.withPlusMinus.gap,
  };
  return { value, reading: readings[value], gaps };
}

/** A pair's gap as planted, and at its worst with shake and run-out. */
export function gapOfPair(
  first: Solid,
  second: Solid,
  plan: PlanGap,
  terms: PairTerms,
  context: Pick<GapContext, 'shake' | 'wheels'>,
): Record<'asPlanted' | 'withShake', GapReading> {
  const height = heightGapOf(first, second);
  const aside = takenAside(first, second, context);
  const shaken = lengthwiseOfPair(first, second, context);
  // What may touch in height stops the other there: a shoulder on its collar, a hub on its plate.
  const lengthwise = terms.height === 0 ? Math.min(shaken, Math.max(height, 0)) : shaken;
  return {
    asPlanted: told(readingOf(plan.gap, height, terms), first, second),
    withShake: told(readingOf(plan.gap - aside, height - lengthwise, terms), first, second),
  };
}

const VALUES: readonly GapValue[] = ['asPlanted', 'withShake', 'withPlusMinus'];

/**
 * Side by side the plan decides, one above the other the height; corner to corner the slant between them,
 * held against the plan's limit. Two that stand in each other overlap by the least movement that parts them, aside or
 * along the arbor.
 */
function readingOf(plan: number, height: number, terms: PairTerms): GapReading {
  if (height < -TOUCH && plan < height) {
    return { gap: height, wanted: terms.height, direction: 'height', sideways: terms.plan - plan };
  }
  if (height < -TOUCH) return { gap: plan, wanted: terms.plan, direction: 'plan' };
  if (plan <= 0) return { gap: Math.max(height, 0), wanted: terms.height, direction: 'height' };
  if (height >= terms.height) return { gap: height, wanted: terms.height, direction: 'height' };
  return { gap: Math.hypot(plan, Math.max(height, 0)), wanted: terms.plan, direction: 'plan' };
}

/** An overlap told as the overlap: a thin wheel in a thick one overlaps by its own thickness, however far the way out is. */
function told(reading: GapReading, first: Solid, second: Solid): GapReading {
  const wayOut = -reading.gap;
  if (wayOut <= TOUCH) return reading;
  const overlap = Math.min(wayOut, sizeAlong(first, reading.direction), sizeAlong(second, reading.direction));
  if (overlap >= wayOut - TOUCH) return reading;
  // In plan the way out is what cures have to make.
  const sideways = reading.direction === 'plan' ? reading.wanted + wayOut : reading.sideways;
  return { ...reading, gap: -overlap, wayOut, ...(sideways === undefined ? {} : { sideways }) };
}

/** How thick a solid is in the direction, mm; an outline in plan has no end that matters. */
export function sizeAlong(solid: Solid, direction: GapReading['direction']): number {
  if (direction === 'height') return solid.heights.to - solid.heights.from;
  return solid.shape === 'ring' ? 2 * solid.outer : Number.POSITIVE_INFINITY;
}

/** What shake and run-out can take from a pair's gap in plan, mm. */
export function takenAside(
  first: Solid,
  second: Solid,
  { shake, wheels }: Pick<GapContext, 'shake' | 'wheels'>,
): number {
  if (first.arbor !== undefined && first.arbor === second.arbor) return 0;
  const shared = sharedHeights(first, second);
  const runOut = runOutOf(first, wheels) + runOutOf(second, wheels);
  if (first.arbor !== undefined && second.arbor !== undefined) {
    return runOut + sideMovementBetween(shake, first.arbor, second.arbor, shared);
  }
  return runOut + asideOf(first, shared, shake) + asideOf(second, shared, shake);
}

/** Heights that both solids have, or the two faces that look at each other. */
function sharedHeights(first: Solid, second: Solid): Heights {
  const a = Math.max(first.heights.from, second.heights.from);
  const b = Math.min(first.heights.to, second.heights.to);
  return { from: Math.min(a, b), to: Math.max(a, b) };
}

function asideOf(solid: Solid, heights: Heights, shake: Shake): number {
  return solid.arbor === undefined ? 0 : sideMovementOver(shake, solid.arbor, heights);
}

/** A wheel's tips reach out by half its total run-out. */
function runOutOf(solid: Solid, wheels: ReadonlyMap<WheelId, Wheel>): number {
  // Only wheel solids carry a wheel's id as their part.
  return solid.role === 'wheel' ? (wheels.get(solid.part as WheelId)?.runOut ?? 0) / 2 : 0;
}

/**
 * What end shake, lean and wobble can take from a pair's gap in height, mm: parts of one arbor go up and down together, and
 * so does what one arm carries. A rim sinks by its lean as far out as the other reaches over it.
 */
export function lengthwiseOfPair(
  first: Solid,
  second: Solid,
  { shake, wheels }: Pick<GapContext, 'shake' | 'wheels'>,
): number {
  const [a, b] = [first.arbor, second.arbor];
  if (a !== undefined && a === b) return 0;
  const wobble = wobbleOf(first, wheels) + wobbleOf(second, wheels);
  if (a !== undefined && b !== undefined) {
    const out = Math.max(metAt(first, second), metAt(second, first));
    return wobble + shake.lengthwiseBetween(a, b) + shake.tiltBetween(a, b) * out;
  }
  return (
    wobble +
    [first, second].reduce((sum, solid) => {
      const { arbor } = solid;
      if (arbor === undefined) return sum;
      return sum + shake.lengthwise(arbor) + shake.tilt(arbor) * metAt(solid, solid === first ? second : first);
    }, 0)
  );
}

/** How far from its axis a round part can stand over or under another, mm. */
function metAt(solid: Solid, other: Solid): number {
  if (solid.shape !== 'ring') return 0;
  if (other.shape !== 'ring') return solid.outer;
  const apart = Math.hypot(other.centre.x - solid.centre.x, other.centre.y - solid.centre.y);
  return Math.min(solid.outer, apart + other.outer);
}

/** Only wheel solids carry a wheel's id as their part. */
function wobbleOf({ role, part }: Solid, wheels: ReadonlyMap<WheelId, Wheel>): number {
  return role === 'wheel' ? (wheels.get(part as WheelId)?.wobble ?? 0) / 2 : 0;
}

/** ± of the distance between the two axes, or of one axis against the case, mm. */
function plusMinusOf(first: Solid, second: Solid, { placed, posts }: GapContext): number {
  const a = pointOf(first, posts);
  const b = pointOf(second, posts);
  const swept = sweptPlusMinus(first, second, [a, b], placed);
  if (swept !== undefined) return swept;
  return betweenPoints(a, b, placed);
}

/** ± of the distance of two points, or of one against the case, mm. */
function betweenPoints(a: PointId | undefined, b: PointId | undefined, placed: PlacedMovement): number {
  if (a !== undefined && b !== undefined) return a === b ? 0 : (placed.plusMinusBetween(a, b) ?? 0);
  const only = a ?? b;
  return only === undefined ? 0 : 2 * (placed.places.get(only)?.spread?.major ?? 0);
}

/**
 * ± of what arms carry round against something else, mm: of the arms' own distances and of the axis about which all goes.
 * The angle at which it happens to be drawn is no part of it.
 */
function sweptPlusMinus(
  first: Solid,
  second: Solid,
  points: readonly (PointId | undefined)[],
  placed: PlacedMovement,
): number | undefined {
  const chains = [first, second].map(({ carried = [] }, i): PointId[] => {
    const point = points[i];
    return [...(point === undefined ? [] : [point]), ...carried.map(({ arm }) => arm)];
  });
  const [a = [], b = []] = chains;
  if (a.length < 2 && b.length < 2) return undefined;
  const common = a.find((id) => b.includes(id));
  const upTo = (chain: readonly PointId[]): readonly PointId[] =>
    common === undefined ? chain : chain.slice(0, chain.indexOf(common) + 1);
  const [own, other] = [upTo(a), upTo(b)];
  const along = (chain: readonly PointId[]): number =>
    chain.slice(1).reduce((sum, arm, i) => sum + (placed.plusMinusBetween(chain[i] ?? arm, arm) ?? 0), 0);
  const [top, otherTop] = [own.at(-1), other.at(-1)];
  return along(own) + along(other) + betweenPoints(top, otherTop, placed);
}

function pointOf(solid: Solid, posts: ReadonlySet<string>): PointId | undefined {
  if (solid.arbor !== undefined) return solid.arbor;
  return posts.has(solid.part) ? (solid.part as PointId) : undefined; // the ids of posts are points
}
