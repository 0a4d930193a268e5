/** Holes as made: what the distances between them tell, where each should have been, and what to do about it. */
import { applyEdit, type Edit, type Movement, type PointId } from '../../solver/movement/index.ts';
import { type PlacedMovement, plantMovement } from '../../solver/planting/index.ts';
import {
  type Cure,
  curesFor,
  findWrongHoles,
  type HoleReport,
  holesOf,
  type MeasuredDistance,
  platesOf,
  plateViewOf,
  trueLength,
} from '../../solver/workshop/index.ts';

export interface DistancesTell {
  readonly distances: readonly MeasuredDistance[];
  readonly report: HoleReport;
  /** Readings that cannot be, or are doubtful. */
  readonly doubts: readonly string[];
}

/** Readings between two points, or between the arbors of two wheels, against the places as planted. */
export function distancesTell(placed: PlacedMovement): DistancesTell {
  const { movement, places } = placed;
  const arborOf = new Map<string, string>(movement.wheels.map((wheel) => [wheel.id, wheel.arbor]));
  const byName = new Map([...places.values()].map((place) => [place.id as string, place]));
  const doubts: string[] = [];
  const distances = movement.readings.flatMap((reading): MeasuredDistance[] => {
    if (reading.setAside || (reading.kind !== 'distance' && reading.kind !== 'depth') || reading.of.length !== 2)
      return [];
    const [a, b] = reading.of.map((id) => byName.get(arborOf.get(id) ?? id));
    if (!a || !b || a === b) return [];
    const found = trueLength(reading, Math.hypot(a.x - b.x, a.y - b.y));
    if (found.kind === 'length')
      return [{ from: a.id, to: b.id, length: found.length, plusMinus: Math.max(found.plusMinus, 1e-4) }];
    doubts.push(found.says);
    return [];
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

export interface OffPlace {
  readonly point: PointId;
  /** From where the hole is to where it should be, in the movement's coordinates, mm. */
  readonly dx: number;
  readonly dy: number;
  readonly cures: readonly Cure[];
}

/** Drilled points that stand off the place that the rules and the other points give them. */
export function offPlaces(movement: Movement): readonly OffPlace[] {
  const drilled = movement.made.filter(({ at }) => at !== undefined);
  return drilled.flatMap(({ point, plate, at }): OffPlace[] => {
    const clear: Edit = { kind: 'clearMade', point, ...(plate === undefined ? {} : { plate }) };
    const without = applyEdit(movement, clear);
    if (without.kind === 'refused' || !at) return [];
    const planned = plantMovement(without.movement);
    const place = planned.places.get(point);
    if (place?.state !== 'planted') return [];
    const [dx, dy] = [place.x - at[0], place.y - at[1]];
    const on =
      plate ?? platesOf(movement).find((id) => holesOf(planned, id).some((hole) => hole.points.includes(point)));
    const hole = holesOf(planned, on).find((each) => each.points.includes(point));
    if (!hole || Math.hypot(dx, dy) === 0) return [];
    const seen = plateViewOf(movement, on).see({ x: dx, y: dy });
    return [{ point, dx, dy, cures: curesFor(seen.x, seen.y, { diameter: hole.diameter }) }];
  });
}
