/**
 * Depths under shake: whether each pair still runs when its arbors stand as near and as far as their bearings let them.
 *
 * The contact engine gives the window of the pair's true teeth; the two distances are held against it. Bearings that
 * give way are no fault: a pair that is tight as planted runs if the play of its bearings lets it part. Windows are
 * kept for as long as the document's wheels and rules are the same.
 */

import type { Point } from '../../geometry/index.ts';
import type { Movement, RuleOf, Wheel } from '../../movement/schema.ts';
import type { PlacedMovement } from '../../planting/placed.ts';
import { windowOfDepth } from '../../teeth/index.ts';
import type { DepthUnderShakeWindow } from '../findings/cause.ts';
import { type Shake, shakeOf } from '../shake/shake.ts';

/** A depth as it is planted, with how far its arbors' shake takes it. */
export interface DepthUnderShake {
  readonly rule: RuleOf<'depth'>;
  readonly wheels: readonly [Wheel, Wheel];
  readonly distance: number;
  readonly window: DepthUnderShakeWindow;
}

/**
 * The window of every depth that is in use, at its planted distance, with the shake at the height of its teeth.
 *
 * @param isAsked which depths are asked; all where absent
 */
export function depthsUnderShake(
  placed: PlacedMovement,
  isAsked: (rule: RuleOf<'depth'>) => boolean = () => true,
): readonly DepthUnderShake[] {
  const { movement, places } = placed;
  const wheels = new Map(movement.wheels.map((wheel) => [wheel.id, wheel]));
  const shake = shakeOf(movement);
  return movement.rules.flatMap((rule): DepthUnderShake[] => {
    if (rule.kind !== 'depth' || rule.leaveOut || !isAsked(rule)) return [];
    const [first, second] = [wheels.get(rule.wheels[0]), wheels.get(rule.wheels[1])];
    const [a, b] = [first && places.get(first.arbor), second && places.get(second.arbor)];
    if (!first || !second || !a || !b) return [];
    const distance = distanceInMesh(first, second, a, b, shake);
    const sideShake = sideShakes(first, second, shake);
    return [
      { rule, wheels: [first, second], distance, window: keptWindow(first, second, movement, distance, sideShake) },
    ];
  });
}

/** Heights at which both wheels have teeth, or the two faces that look at each other. */
function meshHeights(first: Wheel, second: Wheel): readonly [number, number] {
  const from = Math.max(first.level, second.level);
  const to = Math.min(first.level + first.thickness, second.level + second.thickness);
  return [Math.min(from, to), Math.max(from, to)];
}

/** Distance of the two axes at the middle of the teeth that meet, as the holes make them stand, mm. */
function distanceInMesh(first: Wheel, second: Wheel, a: Point, b: Point, shake: Shake): number {
  const [from, to] = meshHeights(first, second);
  const [off, other] = [first, second].map(({ arbor }) => shake.standsOff(arbor, (from + to) / 2));
  return Math.hypot(b.x + (other?.x ?? 0) - a.x - (off?.x ?? 0), b.y + (other?.y ?? 0) - a.y - (off?.y ?? 0));
}

/** Side shake of the two where their teeth meet: it is convex in height, so an end has the most. */
function sideShakes(first: Wheel, second: Wheel, shake: Shake): readonly [number, number] {
  const [low, high] = meshHeights(first, second).map((z) => shake.playsApart(first.arbor, second.arbor, z));
  return [Math.max(low?.[0] ?? 0, high?.[0] ?? 0), Math.max(low?.[1] ?? 0, high?.[1] ?? 0)];
}

type Kept = Map<string, DepthUnderShake['window']>;
const kept = new WeakMap<Movement['wheels'], WeakMap<Movement['rules'], Kept>>();

function keptWindow(
  first: Wheel,
  second: Wheel,
  movement: Movement,
  distance: number,
  sideShake: readonly [number, number],
): DepthUnderShake['window'] {
  const ofWheels = kept.get(movement.wheels) ?? new WeakMap<Movement['rules'], Kept>();
  kept.set(movement.wheels, ofWheels);
  const ofRules: Kept = ofWheels.get(movement.rules) ?? new Map();
  ofWheels.set(movement.rules, ofRules);
  const key = [first.id, second.id, distance.toFixed(6), ...sideShake.map((side) => side.toFixed(6))].join(' ');
  const known = ofRules.get(key) ?? windowOfDepth(first, second, movement, { distance, sideShake });
  ofRules.set(key, known);
  return known;
}
