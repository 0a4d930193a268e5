/** What was measured of one part, or typed as it was cut, beside what the drawing says. */

import { editOfSize, type PartSize, partSizes, sizeReadings } from '../../solver/made/index.ts';
import type { PartId } from '../../solver/movement/ids.ts';
import type { Edit } from '../../solver/movement/index.ts';
import type { Movement } from '../../solver/movement/schema.ts';

/** One value of a size: what the drawing says, what was measured, or another that was typed. */
export interface SizeWay {
  readonly way: 'drawn' | 'measured' | 'typed';
  /** mm */
  readonly value: number;
  readonly plusMinus?: number;
  readonly counts: boolean;
  /** Makes this value count; undefined where it does already, or cannot be chosen. */
  readonly edit: Edit | undefined;
}

/** A size with the ways in which it is known. */
export interface SizeWays {
  readonly size: PartSize;
  readonly ways: readonly SizeWay[];
}

/** The sizes of a part that are not only drawn, in the order of the table of all sizes. */
export function sizesOfPart(movement: Movement, part: PartId): readonly SizeWays[] {
  const read = new Map(sizeReadings(movement).map((each) => [each.size.key, each]));
  return partSizes(movement).flatMap((size): SizeWays[] => {
    if (size.part !== part) return [];
    const { measured, isUsed } = read.get(size.key) ?? { measured: undefined, isUsed: false };
    if (!measured && !size.isReplaced) return [];
    const { drawn, inUse, isReplaced } = size;
    const ways: SizeWay[] = [way('drawn', drawn, isReplaced ? editOfSize(movement, size) : undefined, !isReplaced)];
    const counts = isReplaced && isUsed;
    if (measured) {
      const edit = counts ? undefined : editOfSize(movement, size, measured.length);
      ways.push({ ...way('measured', measured.length, edit, counts), plusMinus: measured.plusMinus });
    }
    if (isReplaced && !counts) ways.push(way('typed', inUse, undefined, true));
    return [{ size, ways }];
  });
}

const way = (name: SizeWay['way'], value: number, edit: Edit | undefined, counts: boolean): SizeWay => ({
  way: name,
  value,
  edit,
  counts,
});
