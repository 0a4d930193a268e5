/**
 * The room of every depth: how far its distance is from where the teeth would bind or bottom, and from where they would
 * let go, with the play of its pivots. The ends of the window come from the contact engine.
 */

import type { Movement, RuleOf, Wheel } from '../../movement/schema.ts';
import type { PlacedMovement } from '../../planting/placed.ts';
import { type DepthWindow, sizeOfWheel, windowOfDepth } from '../../teeth/index.ts';

/** Between what distances a pair runs. */
export interface WindowEnds {
  /** Nearest distance that is free of binding and bottoming, and farthest with contact, mm. */
  readonly deepest: number;
  readonly deepestBy: DepthWindow['deepestBy'];
  readonly lostAt: number;
  /** 1, or −1 where one wheel stands inside the other and play grows as the distance shrinks. */
  readonly open: 1 | -1;
}

/** A depth with what its trials need of its teeth. */
export interface DepthTried {
  readonly rule: RuleOf<'depth'>;
  readonly wheels: readonly [Wheel, Wheel];
  /** Undefined where the teeth cannot mesh at all. */
  readonly ends: WindowEnds | undefined;
  /** Ends for a tip diameter larger or smaller by its ±: driver and driven, [larger, smaller] each. */
  readonly tips: readonly (readonly [WindowEnds, WindowEnds] | undefined)[];
}

/** Every depth in use whose arbors have places, with the ends of its window; one after another, as each takes a while. */
export function* depthsTried({ movement, places }: PlacedMovement, tips: number): Generator<DepthTried> {
  const wheelOf = new Map(movement.wheels.map((wheel) => [wheel.id, wheel]));
  for (const rule of movement.rules) {
    if (rule.kind !== 'depth' || rule.leaveOut) continue;
    const [a, b] = [wheelOf.get(rule.wheels[0]), wheelOf.get(rule.wheels[1])];
    if (!a || !b || !places.has(a.arbor) || !places.has(b.arbor)) continue;
    const wheels = [a, b] as const;
    const ends = endsOf(wheels, movement);
    yield { rule, wheels, ends, tips: ends ? wheels.map((_, at) => tipEnds(wheels, at, tips, movement)) : [] };
  }
}

function endsOf([driver, driven]: readonly [Wheel, Wheel], movement: Movement): WindowEnds | undefined {
  const window = windowOfDepth(driver, driven, movement);
  if (window.kind === 'none') return undefined;
  const { deepest, deepestBy, lostAt, internal } = window;
  return { deepest, deepestBy, lostAt, open: internal ? -1 : 1 };
}

function tipEnds(
  wheels: readonly [Wheel, Wheel],
  at: number,
  tips: number,
  movement: Movement,
): readonly [WindowEnds, WindowEnds] | undefined {
  const wheel = wheels[at];
  if (!(tips > 0) || !wheel) return undefined;
  const [larger, smaller] = [tips, -tips].map((by) => {
    const turned = { ...wheel, tipDiameter: 2 * sizeOfWheel(wheel, movement).tipRadius + by };
    return endsOf(at === 0 ? [turned, wheels[1]] : [wheels[0], turned], movement);
  });
  return larger && smaller ? [larger, smaller] : undefined;
}

/** Ends of the window with both tip diameters off by so many mm: between the three that were found, straight. */
export function endsWithTips(depth: DepthTried, off: readonly [number, number], tips: number): WindowEnds | undefined {
  const { ends } = depth;
  if (!ends || (off[0] === 0 && off[1] === 0)) return ends;
  let { deepest, lostAt } = ends;
  off.forEach((by, at) => {
    const other = depth.tips[at]?.[by > 0 ? 0 : 1];
    if (!other || by === 0) return;
    const share = Math.abs(by) / tips;
    deepest += share * (other.deepest - ends.deepest);
    lostAt += share * (other.lostAt - ends.lostAt);
  });
  return { ...ends, deepest, lostAt };
}
