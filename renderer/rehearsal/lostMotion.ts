/** Lost motion at every hand, with the backlash of the true forms at the planted distances and the play of the bearings. */

import type { PlacedMovement } from '../../solver/planting/placed.ts';
import { contactOfPair } from '../../solver/teeth/index.ts';
import { type LostMotion, lostMotionOf } from '../../solver/train/drive/index.ts';
import type { Turning } from '../../solver/train/index.ts';

/** The free movement of each hand at the planted distances; depths without contact count for nothing. */
export function lostMotionOfPlaced(placed: PlacedMovement, turning: Turning): readonly LostMotion[] {
  const { movement } = placed;
  const wheels = new Map(movement.wheels.map((wheel) => [wheel.id, wheel]));
  const backlash = new Map<string, number>();
  for (const rule of movement.rules) {
    if (rule.kind !== 'depth' || rule.leaveOut) continue;
    const [driver, driven] = [wheels.get(rule.wheels[0]), wheels.get(rule.wheels[1])];
    const distance = placed.rules.get(rule.id)?.length;
    if (!driver || !driven || distance === undefined) continue;
    const contact = contactOfPair(driver, driven, movement, distance, { steps: 12 });
    if (contact.kind === 'contact') backlash.set(rule.id, Math.max(0, contact.backlash.mean));
  }
  const arbors = new Map(movement.arbors.map((arbor) => [arbor.id, arbor]));
  const shake = (id: Parameters<Parameters<typeof lostMotionOf>[3] & {}>[0]): number =>
    Math.max(0, ...(arbors.get(id)?.bearings ?? []).map(({ bore, pivot }) => bore - pivot));
  return lostMotionOf(movement, turning, (depth) => backlash.get(depth) ?? 0, shake);
}
