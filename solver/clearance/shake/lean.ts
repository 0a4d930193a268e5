/**
 * How far an arbor leans: the one number that depths, gaps side by side and in height, findings, errors and levels use.
 *
 * Two things lean it. Its holes: drilled in two plates not opposite each other, or one drilled out of square. Its play: a
 * stick in bearings of play c at heights z leans at most by the steepest line that every bearing lets through. All slopes
 * are small, mm aside for each mm of height; a rim at radius R stands R times the slope higher or lower than its wheel.
 */
import type { Point } from '../../geometry/index.ts';
import { drilledAxis } from '../../movement/index.ts';
import type { Arbor, Made, Movement, Plate } from '../../movement/schema.ts';
import { HOLDS } from '../../tolerances.ts';

/** A bound on the sideways movement at one height, mm. */
export interface PlayBound {
  readonly z: number;
  readonly play: number;
}

/** How an arbor stands by its holes alone: aside of its place at height 0, and the slope of its axis. */
export interface HoleLean {
  readonly at: Point;
  readonly slope: Point;
}

const UPRIGHT: HoleLean = { at: { x: 0, y: 0 }, slope: { x: 0, y: 0 } };

/**
 * Steepest slope of a stick under the bounds; 0 where nothing is known of its bearings, or all stand at one height (there
 * the drawing is taken at its word).
 *
 * |x₀ + s·zᵢ| ≤ cᵢ for all i: the greatest s has two bounds active on opposite sides, s = (cᵢ + cⱼ)/|zⱼ − zᵢ|, and the
 * least of these is it, since each pair alone forbids any steeper one.
 */
export function steepest(bounds: readonly PlayBound[]): number {
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < bounds.length; i++) {
    for (let j = i + 1; j < bounds.length; j++) {
      const [first, second] = [bounds[i], bounds[j]];
      if (!first || !second || Math.abs(second.z - first.z) < HOLDS) continue;
      least = Math.min(least, (first.play + second.play) / Math.abs(second.z - first.z));
    }
  }
  return Number.isFinite(least) ? least : 0;
}

/**
 * The lean that an arbor's drilled holes give it, for every arbor that has one. Drilled in two
 * plates its axis is the line through both; else its place is where it was drilled, and it stands there in every plate.
 */
export function holeLeans(movement: Movement): ReadonlyMap<Arbor['id'], HoleLean> {
  const drilled = new Map<string, Made[]>();
  for (const made of movement.made) {
    if (made.state !== 'drilled' || made.at === undefined) continue;
    const list = drilled.get(made.point);
    if (list) list.push(made);
    else drilled.set(made.point, [made]);
  }
  const plates = new Map<string, Plate>(movement.plates.map((plate) => [plate.id, plate]));
  const leans = new Map<Arbor['id'], HoleLean>();
  for (const arbor of movement.arbors) {
    const holes = drilled.get(arbor.id);
    const axis = holes && drilledAxis(movement, holes, arbor);
    // Of an axis through two holes the place is the one at the marked face.
    const lean = axis ? { at: UPRIGHT.at, slope: axis.slope } : holes && leanOfHoles(arbor, holes, plates);
    if (lean && lean !== UPRIGHT) leans.set(arbor.id, lean);
  }
  return leans;
}

/** Where the axis passes through a hole, mm off its place, and at what height. */
interface Passing {
  readonly z: number;
  readonly off: Point;
  readonly outOfSquare: Point;
}

function leanOfHoles(arbor: Arbor, holes: readonly Made[], plates: ReadonlyMap<string, Plate>): HoleLean {
  const [place] = holes;
  if (!place?.at) return UPRIGHT;
  const [x, y] = place.at;
  const passings = arbor.bearings.flatMap((bearing): Passing[] => {
    const plate = bearing.plate === undefined ? undefined : plates.get(bearing.plate);
    if (!plate) return [];
    const hole = holes.find((each) => each.plate === plate.id) ?? holes.find((each) => each.plate === undefined);
    const [u, v] = hole?.at ?? [x, y];
    const from = bearing.at ?? plate.levels.from;
    return [{ z: from + bearing.length / 2, off: { x: u - x, y: v - y }, outOfSquare: slopeOf(hole) }];
  });
  const [low, high] = facing(arbor, passings, plates);
  if (!low) return UPRIGHT;
  // One hole guides the arbor along its own axis; between two the line through both decides.
  const slope = high
    ? { x: (high.off.x - low.off.x) / (high.z - low.z), y: (high.off.y - low.off.y) / (high.z - low.z) }
    : low.outOfSquare;
  const at = { x: low.off.x - slope.x * low.z, y: low.off.y - slope.y * low.z };
  return Math.hypot(slope.x, slope.y, at.x, at.y) < HOLDS ? UPRIGHT : { at, slope };
}

/** The lowest and the highest hole, at the faces that look at each other: there the pivots bear on what stands between. */
function facing(
  { bearings }: Arbor,
  passings: readonly Passing[],
  plates: ReadonlyMap<string, Plate>,
): readonly [Passing | undefined, Passing | undefined] {
  const sorted = [...passings].sort((a, b) => a.z - b.z);
  const [low, high] = [sorted[0], sorted.at(-1)];
  if (!low || !high || high.z - low.z < HOLDS) return [low, undefined];
  const ends = bearings.flatMap(({ plate, at, length }): [number, number][] => {
    const from = at ?? (plate === undefined ? undefined : plates.get(plate)?.levels.from);
    return from === undefined || plate === undefined ? [] : [[from, from + length]];
  });
  const upper = Math.max(...ends.map(([from]) => from));
  const lower = Math.min(...ends.map(([, to]) => to));
  return upper - lower < HOLDS
    ? [low, high]
    : [
        { ...low, z: lower },
        { ...high, z: upper },
      ];
}

/** Slope of a hole drilled out of square; its sense is the direction to which the axis leans as it rises. */
function slopeOf(hole: Made | undefined): Point {
  const { angle = 0, direction = 0 } = hole?.outOfSquare ?? {};
  const slope = Math.tan((angle * Math.PI) / 180);
  const towards = (direction * Math.PI) / 180;
  return { x: slope * Math.cos(towards), y: slope * Math.sin(towards) };
}
