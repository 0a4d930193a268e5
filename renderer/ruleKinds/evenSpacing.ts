/** Even spacings on the bench. */
import type { PointId } from '../../solver/movement/ids.ts';
import type { PlacedMovement } from '../../solver/planting/placed.ts';
import type { RuleKindOnBench } from './kind.ts';

/** Three or more about each of them. */
export const evenSpacingOnBench: RuleKindOnBench = {
  aboutMany: (placed, centre, others) => ({ kind: 'evenSpacing', points: inTurn(placed, centre, others), centre }),
};

/** Points in the order in which they stand about a centre, anticlockwise, as even spacing lists them. */
function inTurn(placed: PlacedMovement, centre: PointId, points: readonly PointId[]): PointId[] {
  const middle = placed.places.get(centre);
  const angle = (id: PointId): number => {
    const place = placed.places.get(id);
    return place && middle ? Math.atan2(place.y - middle.y, place.x - middle.x) : 0;
  };
  return [...points].sort((a, b) => angle(a) - angle(b));
}
