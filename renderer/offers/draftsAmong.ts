/** Rules that three or more chosen points could keep, with each of them in each of its parts. */
import type { PointId } from '../../solver/movement/ids.ts';
import type { DraftRule } from '../../solver/planting/index.ts';
import type { PlacedMovement } from '../../solver/planting/placed.ts';

/** More points than this are not offered to be evened out: the list would say nothing any more. */
const MOST_POINTS = 60;

/** Drafts among three points or more; the point chosen first is tried first as the centre. */
export function draftsAmong(placed: PlacedMovement, points: readonly PointId[]): DraftRule[] {
  if (points.length < 3 || points.length > MOST_POINTS) return [];
  const centres = points.map((centre) => ({ centre, others: points.filter((point) => point !== centre) }));
  const [a, b, c] = points;
  const three =
    points.length === 3 && a && b && c ? centres.flatMap(({ centre, others }) => ofThree(centre, others)) : [];
  const many = centres.flatMap(({ centre, others }): DraftRule[] => [
    { kind: 'sameRadius', points: [...others], centre },
    { kind: 'evenSpacing', points: inTurn(placed, centre, others), centre },
  ]);
  return [...three, ...many];
}

function ofThree(one: PointId, [first, second]: readonly PointId[]): DraftRule[] {
  if (!first || !second) return [];
  return [
    { kind: 'inLine', point: one, through: [first, second] },
    { kind: 'opposite', point: second, centre: one, of: first },
    { kind: 'bearing', point: second, centre: one, reference: first, angle: 0 },
  ];
}

/** Points in the order in which they stand about a centre, anticlockwise, as even spacing lists them. */
function inTurn(placed: PlacedMovement, centre: PointId, points: readonly PointId[]): PointId[] {
  const middle = placed.places.get(centre);
  const angle = (id: PointId): number => {
    const place = placed.places.get(id);
    return place && middle ? Math.atan2(place.y - middle.y, place.x - middle.x) : 0;
  };
  return [...points].sort((a, b) => angle(a) - angle(b));
}
