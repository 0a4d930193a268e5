/** The train as a list: arbors in order of drive, pipes under what they ride on, with what the list says of each. */
import type { Turning } from '../../solver/gearing/index.ts';
import type { Arbor, ArborId, Movement, Wheel } from '../../solver/movement/index.ts';

export interface TrainRow {
  readonly arbor: Arbor;
  readonly wheels: readonly Wheel[];
  /** 0 for an arbor between the plates, 1 for a pipe on it, 2 for a pipe on that. */
  readonly nesting: number;
}

/** How many links lie between the drive and an arbor; those that nothing drives come last. */
function stepsFromDrive(turning: Turning, id: ArborId): number {
  let steps = 0;
  let at = turning.arbors.get(id);
  const seen = new Set<ArborId>();
  while (at?.drivenBy && !seen.has(at.id)) {
    seen.add(at.id);
    at = turning.arbors.get(at.drivenBy.from);
    steps++;
  }
  if (turning.drive?.arbor === at?.id) return steps;
  return Number.POSITIVE_INFINITY;
}

/** Rows in order of drive; among equals as the movement lists them. */
export function trainRows(movement: Movement, turning: Turning): TrainRow[] {
  const wheels = new Map<ArborId, Wheel[]>();
  for (const wheel of movement.wheels) wheels.set(wheel.arbor, [...(wheels.get(wheel.arbor) ?? []), wheel]);
  const steps = new Map(movement.arbors.map(({ id }) => [id, stepsFromDrive(turning, id)]));
  const known = new Set(movement.arbors.map(({ id }) => id));
  const rows: TrainRow[] = [];
  const taken = new Set<ArborId>();
  const take = (arbor: Arbor, nesting: number): void => {
    if (taken.has(arbor.id)) return;
    taken.add(arbor.id);
    rows.push({ arbor, nesting, wheels: wheels.get(arbor.id) ?? [] });
    for (const pipe of movement.arbors) if (pipe.ridesOn === arbor.id) take(pipe, Math.min(nesting + 1, 2));
  };
  const order = [...movement.arbors].sort((a, b) => {
    const [sa, sb] = [steps.get(a.id) ?? Infinity, steps.get(b.id) ?? Infinity];
    return sa === sb ? 0 : sa - sb;
  });
  for (const arbor of order) if (!arbor.ridesOn || !known.has(arbor.ridesOn)) take(arbor, 0);
  // Pipes that ride on each other in a circle have no first one.
  for (const arbor of order) take(arbor, 0);
  return rows;
}
