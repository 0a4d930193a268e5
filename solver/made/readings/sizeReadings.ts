/** Readings of sizes brought together: what each part measures, what is doubtful, and the edit that takes it over. */

import type { ReadingId } from '../../movement/ids.ts';
import type { Movement, Reading } from '../../movement/schema.ts';
import { cuttingDataOf } from '../../teeth/cutting/index.ts';
import { sizeOfWheel } from '../../teeth/index.ts';
import { type Combined, type CombinedReadings, combineReadings } from './combine.ts';
import type { LengthDoubt, ReadingDoubt } from './doubt.ts';
import { type PartSize, partSizes, sizeKeyOf, wheelAsDrawn } from './sizes.ts';
import { type TrueLength, trueLength } from './trueLength.ts';

/** All readings of one size together. */
export interface SizeReadings {
  readonly size: PartSize;
  readonly measured?: Combined;
  /** What is asked about readings that cannot be or are doubtful; they are kept in the movement but not used. */
  readonly doubts: readonly ReadingDoubt[];
  /** Is what was measured what everything reckons with? */
  readonly isUsed: boolean;
}

/** A measured size and the field that holds it are the same within this, mm: what `editOfSize` rounds to. */
const SAME = 2e-6;

/** For every size with readings that are not set aside: the combined value against the drawn one. */
export function sizeReadings(movement: Movement): readonly SizeReadings[] {
  const byKey = new Map<string, Reading[]>();
  for (const reading of movement.readings) {
    const key = reading.setAside ? undefined : sizeKeyOf(reading);
    if (key === undefined) continue;
    const known = byKey.get(key);
    if (known) known.push(reading);
    else byKey.set(key, [reading]);
  }
  if (byKey.size === 0) return [];
  return partSizes(movement).flatMap((size): SizeReadings[] => {
    const readings = byKey.get(size.key);
    if (!readings) return [];
    const doubts: ReadingDoubt[] = [];
    const good: CombinedReadings[] = [];
    for (const reading of readings) {
      const found = trueSize(reading, size, movement);
      if (found.kind === 'length') good.push({ ...found, id: reading.id, stands: reading.stands !== undefined });
      else doubts.push(found.doubt);
    }
    const measured = combineReadings(good);
    const isUsed = measured !== undefined && Math.abs(measured.length - size.inUse) < SAME;
    return [{ size, doubts, isUsed, ...(measured ? { measured } : {}) }];
  });
}

/** The size behind a reading; what cannot be, or is unlikely, is asked about. */
export function trueSize(reading: Reading, size: PartSize, movement: Movement): TrueLength {
  const small = size.field === 'runOut' || size.field === 'endShake';
  // Ten times as much end shake or run-out is a fact, not a slip: only what the part itself forbids is asked about.
  const found = trueLength(reading, small ? undefined : size.drawn, jawsFactor(reading, movement));
  if (found.kind !== 'length' || reading.stands) return found;
  const doubt = unlikely(reading.id, found.length, size, movement);
  return doubt ? { kind: 'doubt', length: found.length, doubt } : found;
}

/** Flat jaws bridge two tips where the count is odd: the tips stand further out than they read, by this factor. */
function jawsFactor({ taken, of }: Reading, movement: Movement): number {
  const wheel = taken?.how === 'jaws' ? movement.wheels.find(({ id }) => id === of[0]) : undefined;
  const over = wheel && cuttingDataOf(wheelAsDrawn(wheel), movement).overTips;
  return over && over.reads > 0 ? (over.reads + over.add) / over.reads : 1;
}

/** What speaks against a size, where its neighbours on the same part say so. */
function unlikely(
  reading: ReadingId,
  length: number,
  { field, part }: PartSize,
  movement: Movement,
): LengthDoubt | undefined {
  const wheel = movement.wheels.find(({ id }) => id === part);
  if (wheel && field === 'tipDiameter') {
    const root = 2 * sizeOfWheel(wheel, movement).rootRadius;
    const { internal } = wheel;
    const isCutAway = internal ? length >= root : length <= root;
    if (isCutAway) return { kind: 'noTeethLeft', reading, length, root, internal };
  }
  if (wheel && field === 'runOut') {
    const drawn = sizeOfWheel(wheel, movement);
    const depth = Math.abs(drawn.tipRadius - drawn.rootRadius);
    if (length > depth) return { kind: 'runOutBeyondTeeth', reading, length, depth };
  }
  if (field === 'endShake') {
    const heights = movement.plates.flatMap(({ levels }) => [levels.from, levels.to]);
    const frame = heights.length > 0 ? Math.max(...heights) - Math.min(...heights) : Number.POSITIVE_INFINITY;
    if (length > frame) return { kind: 'endShakeBeyondFrame', reading, length, frame };
  }
  return undefined;
}
