/** Why a contested place is contested: by its own rules, or because it is placed from where rules disagree. */
import type { PointId } from '../../movement/ids.ts';
import type { PlacedMovement } from '../../planting/placed.ts';
import type { Speaker } from '../speaker.ts';

/** A whole sentence; for a place that is only placed from a disagreement it names where that is. */
export function contestedSays(
  { disagreements, places }: Pick<PlacedMovement, 'disagreements' | 'places'>,
  point: PointId,
  { name }: Pick<Speaker, 'name'>,
): string {
  if (disagreements.length === 0 || disagreements.some(({ points }) => points.includes(point))) {
    return 'Contested: its rules disagree.';
  }
  const at = disagreements.flatMap(({ points }) => points).find((id) => places.get(id)?.state === 'contested');
  const where = at === undefined ? '' : `, ${name(at)}`;
  return `Contested: its own rules hold, but it is placed from a contested place${where}.`;
}
