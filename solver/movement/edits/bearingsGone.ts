/** Readings name their bearing by its number: when one goes, those of later bearings are counted anew. */
import type { Arbor, Movement, Reading } from '../schema.ts';

/** Has a bearing of the arbor gone, by its number from 0? */
export type BearingGone = (arbor: Arbor, index: number) => boolean;

/** The arbor and the bearing that a reading is of, where it names one. */
export function bearingOf(movement: Movement, { of, bearing }: Reading): readonly [Arbor, number] | undefined {
  const arbor = bearing === undefined ? undefined : movement.arbors.find(({ id }) => id === of[0]);
  return arbor && bearing !== undefined ? [arbor, bearing] : undefined;
}

/** The reading as it names its bearing once those that are gone no longer count; itself where it stays the same. */
export function renumbered(movement: Movement, reading: Reading, isGone: BearingGone): Reading {
  const [arbor, bearing] = bearingOf(movement, reading) ?? [];
  if (arbor === undefined || bearing === undefined) return reading;
  const before = arbor.bearings.slice(0, bearing).filter((_, index) => isGone(arbor, index)).length;
  return before === 0 ? reading : { ...reading, bearing: bearing - before };
}
