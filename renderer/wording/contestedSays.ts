/** Why a contested place is contested: by its own rules, or because it hangs on a place whose rules disagree. */
import type { PointId } from '../../solver/movement/ids.ts';
import type { PlacedMovement } from '../../solver/planting/placed.ts';

/**
 * @returns a whole sentence; for a place that only hangs on a disagreement it names where that is
 */
export function contestedSays(placed: PlacedMovement, point: PointId, nameOf: (id: string) => string): string {
  const { disagreements, places } = placed;
  if (disagreements.length === 0 || disagreements.some(({ points }) => points.includes(point))) {
    return 'Contested: its rules disagree.';
  }
  const at = disagreements.flatMap(({ points }) => points).find((id) => places.get(id)?.state === 'contested');
  const where = at === undefined ? '' : ` at ${nameOf(at)}`;
  return `Contested: its own rules hold, but it hangs on a disagreement${where}.`;
}
