/** Removal of one bearing of an arbor. */
import type { Movement } from '../schema.ts';
import type { EditOf } from './edit.ts';
import { nothingCalled, refused } from './items.ts';
import type { EditPlan } from './recipe.ts';
import { planWithout } from './removeItems.ts';

/** Takes a bearing off its arbor, with the readings of its pivot and its hole; those of the others stay theirs. */
export function planRemoveBearing(movement: Movement, { arbor: id, bearing }: EditOf<'removeBearing'>): EditPlan {
  const arbor = movement.arbors.find((each) => each.id === id);
  if (arbor === undefined) return nothingCalled(id);
  if (arbor.bearings[bearing] !== undefined) {
    return planWithout(movement, [], (of, index) => of === arbor && index === bearing);
  }
  return refused({ kind: 'noSuchBearing', arbor: id, bearings: arbor.bearings.length });
}
