/**
 * What every point asks of a plate: the one source of holes for the check, the drawings, the drill program and the tables.
 *
 * An arbor runs in the hole of its bearing; whatever else crosses a plate has a hole that it passes with room: a pipe,
 * an arbor or a collar on it with the gap that turning parts owe a plate, a post with a sliding fit. Nothing needs a
 * hole where the plate has an opening.
 */
import { containsPoint, type Point } from '../../geometry/index.ts';
import type { ArborId, PointId } from '../../movement/ids.ts';
import type { Arbor, Movement, Plate, Post } from '../../movement/schema.ts';
import type { PlacedMovement } from '../../planting/placed.ts';
import { TOUCH } from '../../tolerances.ts';
import { axisRoots } from '../gaps/pairTerms.ts';
import { armsOf, solidPartsOf } from '../solids/partsIndex.ts';
import { heightsOfArbor, heightsOfPost } from './heights.ts';

/** What one point asks of a plate. */
export interface PlateNeed {
  readonly id: PointId;
  /** Finished diameter, mm; 0 where the point is only pricked. */
  readonly diameter: number;
  readonly finish: 'drill' | 'ream';
  /** What the hole is for: a pivot or a bush, something that passes through, or what fixes a post or a mark. */
  readonly use: 'bearing' | 'passage' | 'fixing';
  readonly note?: string;
}

/** Clearance on the diameter of a post that goes through a plate, mm: a sliding fit, common practice. */
export const SLIDING_FIT = 0.1;

/**
 * Every point that belongs to a plate, in the order of the file.
 *
 * An arbor belongs where a bearing says so (by plate, or by a height within the plate) and where it crosses; one without
 * bearings belongs to the first plate, at its own diameter. Posts and marks belong to their plate, or to every plate
 * where none is named. A collar bearing stands on the plate and asks for the arbor's clearance only, so its bore counts.
 *
 * @param plateId may be left out for a movement without plates
 */
export function needsOfPlate({ movement, places }: PlacedMovement, plateId: string | undefined): readonly PlateNeed[] {
  const plate = movement.plates.find((each) => each.id === plateId);
  const { asked, crossing } = keptNeeds(movement, plateId, plate);
  if (!plate || crossing.length === 0) return asked;
  const passing = crossing.filter(({ id }) => {
    const at = places.get(id);
    return at !== undefined && isMetal(movement, plate, at);
  });
  return inOrder(movement, [...asked, ...passing]);
}

/** Is a place in the metal of a plate, and not in one of its openings? */
export function isMetal({ openings }: Movement, plate: Plate, at: Point): boolean {
  return (
    containsPoint(plate.outline, at) &&
    !openings.some((opening) => opening.plate === plate.id && containsPoint(opening.outline, at))
  );
}

/** Needs that hold wherever the points stand, and those of what crosses the plate's heights if it stands in its metal. */
interface KnownNeeds {
  readonly asked: readonly PlateNeed[];
  readonly crossing: readonly PlateNeed[];
}

const kept = new WeakMap<Movement, Map<string | undefined, KnownNeeds>>();

/** Movements are immutable, so each plate is gone through once. */
function keptNeeds(movement: Movement, plateId: string | undefined, plate: Plate | undefined): KnownNeeds {
  const ofMovement = kept.get(movement) ?? new Map<string | undefined, KnownNeeds>();
  kept.set(movement, ofMovement);
  const known = ofMovement.get(plateId) ?? findNeeds(movement, plateId, plate);
  ofMovement.set(plateId, known);
  return known;
}

function findNeeds(movement: Movement, plateId: string | undefined, plate: Plate | undefined): KnownNeeds {
  const isFirst = plateId === undefined || plateId === movement.plates[0]?.id;
  const asked: PlateNeed[] = movement.arbors.flatMap((arbor) => needOfArbor(arbor, plate, isFirst) ?? []);
  const elsewhere = (of: string | undefined) => of !== undefined && plateId !== undefined && of !== plateId;
  for (const { id, plate: of, hole } of [...movement.posts, ...movement.marks]) {
    if (!elsewhere(of)) asked.push({ id, diameter: hole, finish: 'drill', use: 'fixing' });
  }
  return { asked, crossing: plate ? [...arborsThrough(movement, plate, asked), ...postsThrough(movement, plate)] : [] };
}

function needOfArbor(arbor: Arbor, plate: Plate | undefined, isFirst: boolean): PlateNeed | undefined {
  const { id } = arbor;
  if (arbor.bearings.length === 0) {
    if (!isFirst || arbor.ridesOn !== undefined) return undefined;
    const note = 'no bearing stated: its own diameter';
    return { id, diameter: arbor.diameter, finish: 'drill', use: 'bearing', note };
  }
  let diameter = 0;
  for (const bearing of arbor.bearings) {
    if (!plate ? !isFirst : !standsIn(bearing, plate, isFirst)) continue;
    diameter = Math.max(diameter, seatOf(bearing));
  }
  return diameter > 0 ? { id, diameter, finish: 'ream', use: 'bearing' } : undefined;
}

type Bearing = Arbor['bearings'][number];

/** A bush or race is seated in a hole of its outer diameter; a collar stands proud, over a hole of its bore. */
const seatOf = ({ kind, bore, outer }: Bearing): number => (kind === 'collar' || outer === undefined ? bore : outer);

/** Does a bearing stand in a plate: by its name, by its height, or for want of both in the first one? */
export function standsIn(bearing: Bearing, plate: Plate, isFirst: boolean): boolean {
  if (bearing.plate !== undefined) return bearing.plate === plate.id;
  if (bearing.at === undefined) return isFirst;
  return bearing.at < plate.levels.to && bearing.at + bearing.length > plate.levels.from;
}

/** Arbors, pipes and their collars that cross a plate on an axis that nothing of it bears; what is carried sweeps instead. */
function arborsThrough(movement: Movement, plate: Plate, asked: readonly PlateNeed[]): PlateNeed[] {
  const parts = solidPartsOf(movement);
  const roots = axisRoots(movement);
  // Only arbors have roots: the other points of the list are posts and marks.
  const borne = new Set(asked.flatMap(({ id }) => roots.get(id as ArborId) ?? []));
  const room = 2 * roomInPlate(movement);
  return movement.arbors.flatMap((arbor): PlateNeed[] => {
    const { id } = arbor;
    if (borne.has(roots.get(id) ?? id) || armsOf(id, parts).length > 0) return [];
    const widest = widestIn(arbor, plate, movement);
    return widest === undefined ? [] : [{ id, diameter: widest + room, finish: 'drill', use: 'passage' }];
  });
}

/** Gap that what turns owes the rim of a hole that it passes, mm: as stated for arbors and plates, else as to walls. */
function roomInPlate({ limits }: Movement): number {
  const pair = limits.pairs?.find(({ between }) => between.includes('arbor') && between.includes('plate'));
  return pair?.plan ?? limits.wallGap;
}

/** Diameter of the widest of an arbor and its collars that crosses a plate's heights, mm; undefined where nothing does. */
export function widestIn(arbor: Arbor, { levels }: Plate, movement: Movement): number | undefined {
  const whole = heightsOfArbor(arbor, movement);
  const crosses = ({ from, to }: { from: number; to: number }): boolean =>
    Math.min(to, levels.to) - Math.max(from, levels.from) > TOUCH;
  if (!whole || !crosses(whole)) return undefined;
  return Math.max(arbor.diameter, ...arbor.collars.filter(crosses).map(({ diameter }) => diameter));
}

/** Posts that go right through a plate and have no fixing hole of their own. */
function postsThrough(movement: Movement, plate: Plate): PlateNeed[] {
  return movement.posts.flatMap((post): PlateNeed[] =>
    post.hole > 0 || !goesThrough(post, plate, movement)
      ? []
      : [{ id: post.id, diameter: post.diameter + SLIDING_FIT, finish: 'drill', use: 'passage' }],
  );
}

/** Does a post go in at one face of a plate and out at the other? */
export function goesThrough(post: Post, { levels }: Plate, movement: Movement): boolean {
  const [x, y] = post.at;
  const heights = heightsOfPost(post, { x, y }, movement);
  return heights !== undefined && heights.from < levels.from - TOUCH && heights.to > levels.to + TOUCH;
}

/** One need for each point, of the largest diameter that it asks for, in the order of the file. */
function inOrder({ arbors, posts, marks }: Movement, needs: readonly PlateNeed[]): PlateNeed[] {
  const largest = new Map<PointId, PlateNeed>();
  for (const need of needs) {
    const known = largest.get(need.id);
    if (!known || known.diameter < need.diameter) largest.set(need.id, need);
  }
  return [...arbors, ...posts, ...marks].flatMap(({ id }) => largest.get(id) ?? []);
}
