/** Where X0 Y0 is on a plate's face: a corner of two straight edges, the centre of a round plate, or a settled point. */
import { needsOfPlate } from '../clearance/bodies/index.ts';
import type { Drilling } from '../movement/schema.ts';
import type { PlacedMovement } from '../planting/placed.ts';
import { holesOf } from './holes.ts';
import { namer } from './names.ts';
import { datumEdgesOf, type PlateView, seenOutline } from './plateView.ts';

export type Corner = Drilling['corner'];

/** The origin of the coordinates of a face. */
export interface Zero {
  /** As seen on the face, mm. */
  readonly at: readonly [number, number];
  /** Where that is, in words. */
  readonly says: string;
  /** On which side of the plate an edge finder stands at this zero: left or lower +1, right or upper −1, 0 at no edge. */
  readonly side: readonly [1 | -1 | 0, 1 | -1 | 0];
}

const CORNERS: readonly Corner[] = ['lower left', 'lower right', 'upper left', 'upper right'];

/** The corners whose two edges are straight, lower left first. */
export function cornersOf(view: PlateView): readonly Corner[] {
  return CORNERS.filter((corner) => cornerZero(view, corner) !== undefined);
}

/** A corner as zero; undefined where its edges are not straight. */
export function cornerZero(view: PlateView, corner: Corner): Zero | undefined {
  const edges = datumEdgesOf(view);
  const isRight = corner.endsWith('right');
  const isUpper = corner.startsWith('upper');
  const x = isRight ? edges.right : edges.left;
  const y = isUpper ? edges.upper : edges.lower;
  if (x === undefined || y === undefined) return undefined;
  const says = `the corner of the ${isRight ? 'right' : 'left'} and the ${isUpper ? 'upper' : 'lower'} edge`;
  return { at: [x, y], says, side: [isRight ? -1 : 1, isUpper ? -1 : 1] };
}

/** The centre of a round plate as zero. */
export function centreZero(view: PlateView): Zero | undefined {
  if (view.plate?.outline.kind !== 'circle') return undefined;
  const outline = seenOutline(view, view.plate.outline);
  return outline.kind === 'circle' ? { at: outline.centre, says: 'the centre of the plate', side: [0, 0] } : undefined;
}

/** A settled point of the plate as zero. */
export function pointZero(placed: PlacedMovement, view: PlateView, id: string): Zero | undefined {
  const need = needsOfPlate(placed, view.plate?.id).find((each) => each.id === id);
  const place = need && placed.places.get(need.id);
  if (place?.state !== 'planted') return undefined;
  // A hole that several points share is known by all their names.
  const hole = holesOf(placed, view.plate?.id).find(({ points }) => points.includes(id));
  const { x, y } = view.see(place);
  return { at: [x, y], says: hole?.label ?? namer(placed.movement)(id), side: [0, 0] };
}

/** The zero that the movement's choices for drilling give on a plate's face; undefined where the plate has none. */
export function drillZero(placed: PlacedMovement, view: PlateView): Zero | undefined {
  const { corner, zeroAt } = placed.movement.drilling;
  const point = zeroAt === undefined ? undefined : pointZero(placed, view, zeroAt);
  return point ?? cornerZero(view, corner) ?? firstCorner(view) ?? centreZero(view);
}

function firstCorner(view: PlateView): Zero | undefined {
  const [corner] = cornersOf(view);
  return corner && cornerZero(view, corner);
}
