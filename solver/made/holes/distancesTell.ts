/** What measured distances between holes tell of the movement: which hole is wrong, and where it really is. */
import type { Edit } from '../../movement/index.ts';
import type { PlacedMovement } from '../../planting/placed.ts';
import { type CombinedReadings, combineReadings } from '../readings/combine.ts';
import type { ReadingDoubt } from '../readings/doubt.ts';
import { trueLength } from '../readings/trueLength.ts';
import { findWrongHoles, type HoleReport, type MeasuredDistance } from './wrongHole.ts';

/** The distances that could be used, and what they say. */
export interface DistancesTell {
  readonly distances: readonly MeasuredDistance[];
  readonly report: HoleReport;
  /** Readings that cannot be, or are doubtful. */
  readonly doubts: readonly ReadingDoubt[];
}

/** Smallest ± that a distance may weigh with, mm: no gauge of the trade is better. */
const LEAST_PLUS_MINUS = 1e-4;

/**
 * Distances read between two holes, or between the arbors of two wheels, against the places as planted. Several readings of
 * one distance are combined first, so that one which does not belong accuses no hole. What a depthing tool read tells how
 * a pair runs best, and nothing of holes.
 */
export function distancesTell(placed: PlacedMovement): DistancesTell {
  const { movement, places } = placed;
  const arborOf = new Map<string, string>(movement.wheels.map((wheel) => [wheel.id, wheel.arbor]));
  const byName = new Map([...places.values()].map((place) => [place.id as string, place]));
  const doubts: ReadingDoubt[] = [];
  const pairs = new Map<string, { readonly from: string; readonly to: string; readonly read: CombinedReadings[] }>();
  for (const reading of movement.readings) {
    if (reading.setAside || reading.kind !== 'distance' || reading.of.length !== 2) continue;
    const [a, b] = reading.of.map((id) => byName.get(arborOf.get(id) ?? id));
    if (!a || !b || a === b) continue;
    const found = trueLength(reading, Math.hypot(a.x - b.x, a.y - b.y));
    if (found.kind !== 'length') {
      doubts.push(found.doubt);
      continue;
    }
    const key = JSON.stringify([a.id, b.id].sort());
    const pair = pairs.get(key) ?? { from: a.id, to: b.id, read: [] };
    pair.read.push({ ...found, id: reading.id, stands: reading.stands !== undefined });
    pairs.set(key, pair);
  }
  const distances = [...pairs.values()].flatMap(({ from, to, read }): MeasuredDistance[] => {
    const combined = combineReadings(read);
    return combined
      ? [{ from, to, length: combined.length, plusMinus: Math.max(combined.plusMinus, LEAST_PLUS_MINUS) }]
      : [];
  });
  const named = new Set(distances.flatMap(({ from, to }) => [from, to]));
  const holes = [...places.values()].filter(({ id }) => named.has(id)).map(({ id, x, y }) => ({ id, x, y }));
  return { distances, report: findWrongHoles(holes, distances), doubts };
}

/** The edits that take the holes found wrong as drilled where the distances put them. */
export function editsOfWrongHoles(placed: PlacedMovement, { report }: DistancesTell, date: string): readonly Edit[] {
  return report.wrong.flatMap(({ id, dx, dy, plusMinus }): Edit[] => {
    const place = [...placed.places.values()].find((each) => each.id === id);
    if (!place) return [];
    const at: [number, number] = [place.x + dx, place.y + dy];
    return [{ kind: 'setMade', made: { point: place.id, state: 'drilled', at, plusMinus, date } }];
  });
}
