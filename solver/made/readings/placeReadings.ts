/** Readings of where holes were drilled: brought together for each hole, with what is doubtful, and the edit that takes them over. */

import type { Point } from '../../geometry/index.ts';
import type { PointId, ReadingId } from '../../movement/ids.ts';
import type { Edit } from '../../movement/index.ts';
import { MM_PER_INCH } from '../../movement/measures.ts';
import type { Made, Movement, Reading } from '../../movement/schema.ts';
import type { PlacedMovement } from '../../planting/placed.ts';
import { type Combined, combineReadings } from './combine.ts';
import type { PlaceDoubt, PlaceSlip } from './doubt.ts';
import { USUAL_PLUS_MINUS } from './trueLength.ts';

type At = readonly [number, number];

/** The place behind a reading, mm, or why it cannot be. */
export type TruePlace =
  | { readonly kind: 'place'; readonly at: At; readonly plusMinus: number }
  /** Kept but not used until the maker answers; `meant` is the place if the suspicion is right. */
  | { readonly kind: 'doubt'; readonly doubt: PlaceDoubt; readonly at: At; readonly meant: At };

/** The place that several readings give: as `Combined`, along each axis; `off` is how far a reading lies from it, mm. */
export interface CombinedPlace extends Omit<Combined, 'length'> {
  readonly at: At;
}

/** All readings of where one hole is. */
export interface PlaceReadings {
  readonly point: PointId;
  readonly measured?: CombinedPlace;
  /** What is asked about doubtful readings; they are kept in the movement but not used. */
  readonly doubts: readonly PlaceDoubt[];
  /** What is noted as drilled, once it is. */
  readonly made?: Made;
  /** Is the hole taken as drilled where the readings put it? */
  readonly isUsed: boolean;
}

/** What may have happened to a place, and the place that was meant then. */
const SLIPS: readonly (readonly [(at: At) => At, PlaceSlip])[] = [
  [([x, y]) => [x / MM_PER_INCH, y / MM_PER_INCH], 'mmAsInches'],
  [([x, y]) => [x * MM_PER_INCH, y * MM_PER_INCH], 'inchesAsMm'],
  [([x, y]) => [x / 10, y / 10], 'pointTooFarRight'],
  [([x, y]) => [x * 10, y * 10], 'pointTooFarLeft'],
  [([x, y]) => [-x, y], 'otherFace'],
  [([x, y]) => [x, -y], 'yTurned'],
  [([x, y]) => [-x, -y], 'bothTurned'],
  [([x, y]) => [y, x], 'axesExchanged'],
];
/** A slip is only suspected where it brings the place this near to the planned one, as a share of its distance from the zero, and the reading itself is twice as far off. */
const SLIP_FIT = 0.03;
/** Places nearer than this are the same, mm: what `editOfPlace` rounds to. */
const SAME = 2e-6;
const NEAT = 1e6;

/**
 * The place behind a reading.
 *
 * @param expected where the hole is planned or noted, mm, against which slips are recognised; a reading that the maker
 *                 says is right as it stands is not doubted
 */
export function truePlace({ id, at, plusMinus, stands }: Reading, expected?: Point): TruePlace | undefined {
  if (!at) return undefined;
  const planned: At = [expected?.x ?? 0, expected?.y ?? 0];
  const found = expected && !stands ? slipOf(at, planned) : undefined;
  if (!found) return { kind: 'place', at, plusMinus: plusMinus ?? USUAL_PLUS_MINUS };
  const [meant, slip] = found;
  return { kind: 'doubt', at, meant, doubt: { kind: 'placeSlip', reading: id, at, planned, slip, meant } };
}

const apart = (a: At, b: At): number => Math.hypot(a[0] - b[0], a[1] - b[1]);

function slipOf(at: At, expected: At): readonly [At, PlaceSlip] | undefined {
  const near = SLIP_FIT * Math.hypot(...expected);
  if (apart(at, expected) <= 2 * near) return undefined;
  for (const [undo, slip] of SLIPS) {
    const meant = undo(at);
    if (apart(meant, expected) < near) return [meant, slip];
  }
  return undefined;
}

/** For every hole whose place was read, or that is noted as drilled: the combined place. `places` are where holes stand now. */
export function placeReadings(movement: Movement, places: PlacedMovement['places']): readonly PlaceReadings[] {
  return [...places.values()].flatMap(({ id, x, y }): PlaceReadings[] => {
    const doubts: PlaceDoubt[] = [];
    const good: { readonly id: ReadingId; readonly at: At; readonly plusMinus: number; readonly stands: boolean }[] =
      [];
    const made = movement.made.find(({ point, at }) => point === id && at !== undefined);
    for (const reading of movement.readings) {
      if (reading.kind !== 'place' || reading.setAside || reading.of[0] !== id) continue;
      const found = truePlace(reading, { x, y });
      if (found?.kind === 'place') good.push({ ...found, id: reading.id, stands: reading.stands !== undefined });
      else if (found) doubts.push(found.doubt);
    }
    if (good.length + doubts.length === 0 && !made) return [];
    const measured = combinePlaces(good);
    const isUsed = measured !== undefined && made?.at !== undefined && apart(measured.at, made.at) < SAME;
    return [{ point: id, doubts, isUsed, ...(measured ? { measured } : {}), ...(made ? { made } : {}) }];
  });
}

/** A reading that does not belong with the rest along one axis counts along neither. */
function combinePlaces(
  read: readonly { readonly id: ReadingId; readonly at: At; readonly plusMinus: number; readonly stands: boolean }[],
): CombinedPlace | undefined {
  const along = (axis: 0 | 1, among: typeof read) =>
    combineReadings(among.map((each) => ({ ...each, length: each.at[axis] })));
  const odd = new Set(([0, 1] as const).flatMap((axis) => (along(axis, read)?.outliers ?? []).map(({ id }) => id)));
  const rest = read.filter(({ id }) => !odd.has(id)).map((each) => ({ ...each, stands: true }));
  const [kept, left] = rest.length > 0 ? [rest, read.filter(({ id }) => odd.has(id))] : [read, []];
  const [x, y] = [along(0, kept), along(1, kept)];
  if (!x || !y) return undefined;
  const at: At = [x.length, y.length];
  const outliers = left.map((each) => ({ id: each.id, off: apart(each.at, at) }));
  return { at, plusMinus: Math.max(x.plusMinus, y.plusMinus), used: kept.map(({ id }) => id), outliers };
}

/** The edit by which the hole stands where the readings put it; undefined where none can be used. */
export function editOfPlace(movement: Movement, { point, measured, made }: PlaceReadings): Edit | undefined {
  if (!measured) return undefined;
  const used = new Set(measured.used);
  const dates = movement.readings.flatMap(({ id, date }) => (used.has(id) && date !== undefined ? [date] : []));
  const date = dates.sort().at(-1);
  const [x, y] = measured.at.map((each) => Math.round(each * NEAT) / NEAT);
  return {
    kind: 'setMade',
    made: {
      point,
      state: 'drilled',
      at: [x ?? 0, y ?? 0],
      plusMinus: measured.plusMinus,
      ...(made?.plate === undefined ? {} : { plate: made.plate }),
      ...(date === undefined ? {} : { date }),
    },
  };
}
