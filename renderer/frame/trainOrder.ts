/** The train as a list: arbors in order of drive, pipes under what they ride on, with what the list says of each. */

import type { ArborId } from '../../solver/movement/ids.ts';
import type { Arbor, Movement, Wheel } from '../../solver/movement/schema.ts';
import type { Turning } from '../../solver/train/index.ts';

/** An arbor as it is listed. */
export interface TrainRow {
  readonly arbor: Arbor;
  readonly wheels: readonly Wheel[];
  /** 0 for an arbor between the plates, 1 for a pipe on it, 2 for a pipe on that. */
  readonly nesting: number;
}

/** How many links lie between the drive and every arbor; those that nothing drives come last. */
function stepsFromDrive(turning: Turning, ids: readonly ArborId[]): ReadonlyMap<ArborId, number> {
  const steps = new Map<ArborId, number>();
  for (const id of ids) {
    const way: ArborId[] = [];
    const seen = new Set<ArborId>();
    let at = turning.arbors.get(id);
    while (at?.drivenBy && !steps.has(at.id) && !seen.has(at.id)) {
      seen.add(at.id);
      way.push(at.id);
      at = turning.arbors.get(at.drivenBy.from);
    }
    const isDrive = at !== undefined && turning.drive?.arbor === at.id;
    let reached = (at && steps.get(at.id)) ?? (isDrive ? 0 : Number.POSITIVE_INFINITY);
    if (at && way.length === 0) steps.set(at.id, reached);
    for (const each of way.reverse()) steps.set(each, ++reached);
  }
  return steps;
}

/** Rows in order of drive; among equals as the movement lists them. */
export function trainRows(movement: Movement, turning: Turning): TrainRow[] {
  const wheels = new Map<ArborId, Wheel[]>();
  for (const wheel of movement.wheels) wheels.set(wheel.arbor, [...(wheels.get(wheel.arbor) ?? []), wheel]);
  const ids = movement.arbors.map(({ id }) => id);
  const steps = stepsFromDrive(turning, ids);
  const riders = new Map<ArborId, Arbor[]>();
  for (const pipe of movement.arbors) {
    if (pipe.ridesOn) riders.set(pipe.ridesOn, [...(riders.get(pipe.ridesOn) ?? []), pipe]);
  }
  const known = new Set(ids);
  const rows: TrainRow[] = [];
  const taken = new Set<ArborId>();
  const take = (arbor: Arbor, nesting: number): void => {
    if (taken.has(arbor.id)) return;
    taken.add(arbor.id);
    rows.push({ arbor, nesting, wheels: wheels.get(arbor.id) ?? [] });
    for (const pipe of riders.get(arbor.id) ?? []) take(pipe, Math.min(nesting + 1, 2));
  };
  const order = [...movement.arbors].sort((a, b) => {
    const [sa, sb] = [steps.get(a.id) ?? Number.POSITIVE_INFINITY, steps.get(b.id) ?? Number.POSITIVE_INFINITY];
    return sa === sb ? 0 : sa - sb;
  });
  for (const arbor of order) if (!arbor.ridesOn || !known.has(arbor.ridesOn)) take(arbor, 0);
  // Pipes that ride on each other in a circle have no first one.
  for (const arbor of order) take(arbor, 0);
  return rows;
}
