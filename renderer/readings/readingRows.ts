/** Every reading with the length behind it, against what was expected: what a row of the table says. */

import {
  partSizes,
  placeReadings,
  sizeKeyOf,
  sizeReadings,
  type TrueLength,
  type TruePlace,
  trueLength,
  truePlace,
  trueSize,
} from '../../solver/made/index.ts';
import type { PointId } from '../../solver/movement/ids.ts';
import type { Movement, Reading } from '../../solver/movement/schema.ts';
import type { PlacedMovement } from '../../solver/planting/placed.ts';
import type { Speaker } from '../../solver/words/index.ts';
import { partSizeSays } from '../../solver/words/shop/index.ts';
import type { DepthRow } from './depthRows.ts';

/** A reading as it is listed. */
export interface ReadingRow {
  readonly reading: Reading;
  /** What it is of: "Centre to Third", "Third 60, over the tips". */
  readonly of: string;
  /** Undefined where its part has no such size any more. */
  readonly found: TrueLength | undefined;
  /** For the place of a hole. */
  readonly place?: TruePlace;
  /** How far it lies off the rest, where it does not belong with them, mm. */
  readonly off: number | undefined;
}

/** Rows in the order in which the readings were kept, the latest first. */
export function readingRows(
  settled: PlacedMovement,
  depths: readonly DepthRow[],
  speaker: Speaker,
): readonly ReadingRow[] {
  const { movement } = settled;
  const sizes = new Map(partSizes(movement).map((size) => [size.key, size]));
  const off = new Map(
    [
      ...depths.map(({ measured }) => measured?.measured),
      ...sizeReadings(movement).map(({ measured }) => measured),
      ...placeReadings(movement, settled.places).map(({ measured }) => measured),
    ]
      .flatMap((combined) => combined?.outliers ?? [])
      .map((outlier) => [outlier.id, outlier.off]),
  );
  const arborOf = new Map<string, string>(movement.wheels.map(({ id, arbor }) => [id, arbor]));
  return movement.readings
    .map((reading): ReadingRow => {
      const size = sizes.get(sizeKeyOf(reading) ?? '');
      const found = size
        ? trueSize(reading, size, movement)
        : reading.of.length === 2
          ? trueLength(reading, expectedOf(reading, settled, depths))
          : undefined;
      const of = size
        ? partSizeSays(size, speaker)
        : reading.of.map((id) => speaker.name(arborOf.get(id) ?? id)).join(' to ');
      const row = { reading, of, found, off: off.get(reading.id) };
      const place =
        reading.kind === 'place' ? truePlace(reading, settled.places.get(reading.of[0] as PointId)) : undefined; // a wheel has no place: nothing is expected then
      return place ? { ...row, of: `${of}, its place`, place } : row;
    })
    .reverse();
}

/** The length that a reading between two parts should have: the calculated depth, else the distance as planted, mm. */
function expectedOf(reading: Reading, { movement, places }: PlacedMovement, depths: readonly DepthRow[]) {
  const of: readonly string[] = reading.of;
  const depth = depths.find((row) => row.of.every((id) => of.includes(id)));
  if (depth) return depth.calculated;
  // A wheel's arbor, or a point: what is no point has no place.
  const [a, b] = of.map((id) => places.get((arborOfWheel(movement, id) ?? id) as PointId));
  return a && b ? Math.hypot(a.x - b.x, a.y - b.y) : undefined;
}

const arborOfWheel = ({ wheels }: Movement, id: string): string | undefined =>
  wheels.find((wheel) => wheel.id === id)?.arbor;
