/** The other crossing of what is chosen. */

import type { PointId } from '../../solver/movement/ids.ts';
import type { Edit } from '../../solver/movement/index.ts';
import { type OtherCrossing, otherCrossing } from '../../solver/planting/index.ts';
import type { Bench } from '../state/bench.ts';
import { pointOf } from '../state/derive/parts.ts';

/** The other crossing of the one chosen point, if its place is a crossing. */
export function otherCrossingOf(bench: Bench): OtherCrossing | undefined {
  const [only, ...more] = bench.looking.chosen;
  if (only === undefined || more.length > 0) return undefined;
  const point = pointOf(bench.derived.settled, only);
  return point === undefined ? undefined : otherCrossing(bench.derived.settled, point);
}

/** Edits that put a point at its other crossing: the recorded side, and a sketch place beside it. */
export function crossingEdits({ point, at, crossing }: OtherCrossing): Edit[] {
  return [
    { kind: 'setCrossing', point, ...(crossing === undefined ? {} : { crossing }) },
    { kind: 'move', places: [{ id: point, at: [at.x, at.y] }] },
  ];
}

/** Puts the chosen point at its other crossing. */
export function chooseOtherCrossing(bench: Bench): void {
  const other = otherCrossingOf(bench);
  if (!other) return;
  bench.change(`other crossing of ${bench.nameOf(other.point satisfies PointId)}`, crossingEdits(other));
}
