/**
 * Holes that a plate cannot have: broken out of its edge or too near it, into one another, or smaller than what goes
 * through them. They are the holes that are drilled (`needsOfPlate`).
 */
import { type Point, type Region, signedDistanceToRegion } from '../../geometry/index.ts';
import type { PointId } from '../../movement/ids.ts';
import type { Arbor, Movement, Plate } from '../../movement/schema.ts';
import type { PlacedMovement } from '../../planting/placed.ts';
import { ONE_PLACE, TOUCH } from '../../tolerances.ts';
import { goesThrough, isMetal, needsOfPlate, type PlateNeed, widestIn } from '../bodies/plateNeeds.ts';
import type { FindingCause } from '../findings/cause.ts';
import type { Finding } from '../findings/finding.ts';
import { axisRoots } from '../gaps/pairTerms.ts';
import { nearTreeOf } from '../planckAdapter.ts';
import { caseSolids } from '../solids/caseSolids.ts';

/**
 * Metal that a hole wants beside it: its own radius, half the plate's thickness, or this, mm, whichever is least.
 * Common practice for brass plates, careful rather than exact.
 */
const ENOUGH_METAL = 1;

/** A hole where it is drilled. */
interface Hole extends PlateNeed {
  readonly plate: Plate;
  readonly at: Point;
  readonly radius: number;
}

/** Everything that is wrong with the holes of a placed movement. */
export function checkHoles(placed: PlacedMovement): readonly Finding[] {
  const regions = regionsOf(placed.movement);
  return placed.movement.plates.flatMap((plate) => {
    const holes = holesIn(placed, plate);
    const region = regions.get(plate.id);
    return [
      ...(region ? holes.flatMap((hole) => atEdge(hole, region, placed.movement)) : []),
      ...overlapping(placed, holes),
      ...tight(placed, plate, holes),
    ];
  });
}

/** Holes of arbors without a bearing are a plan's; marks and posts that name no plate count where they stand on one. */
function holesIn(placed: PlacedMovement, plate: Plate): Hole[] {
  const named = namedPlates(placed.movement);
  return needsOfPlate(placed, plate.id).flatMap((need): Hole[] => {
    const at = placed.places.get(need.id);
    if (!at || need.diameter <= 0 || need.note !== undefined) return [];
    const here = need.use !== 'fixing' || named.has(need.id) || isMetal(placed.movement, plate, at);
    return here ? [{ ...need, plate, at: { x: at.x, y: at.y }, radius: need.diameter / 2 }] : [];
  });
}

const knownNamed = new WeakMap<Movement, ReadonlySet<string>>();

function namedPlates(movement: Movement): ReadonlySet<string> {
  const known =
    knownNamed.get(movement) ??
    new Set(
      [...movement.posts, ...movement.marks].filter(({ plate }) => plate !== undefined).map(({ id }) => id as string),
    );
  knownNamed.set(movement, known);
  return known;
}

function regionsOf(movement: Movement): ReadonlyMap<string, Region> {
  return new Map(
    caseSolids(movement).flatMap((solid) =>
      solid.shape === 'region' ? [[solid.part as string, solid.region] as const] : [],
    ),
  );
}

function holeFinding(key: string, hole: Hole, cause: FindingCause, more: Partial<Finding>): Finding {
  return {
    key,
    kind: 'bearing',
    severity: 'stops',
    parts: [hole.id, hole.plate.id],
    at: [hole.at, hole.at],
    cause,
    ...more,
  };
}

function atEdge(hole: Hole, region: Region, movement: Movement): Finding[] {
  const { id, plate, at, radius } = hole;
  const near = signedDistanceToRegion(region, at);
  const metal = -near.distance - radius;
  const wanted = Math.min(radius, (plate.levels.to - plate.levels.from) / 2, ENOUGH_METAL);
  if (metal >= wanted - TOUCH) return [];
  const where = [at, { x: near.a.x, y: near.a.y }] as const;
  if (metal <= 0) {
    const isArbor = movement.arbors.some((arbor) => arbor.id === id);
    const cause = { kind: 'breaksOut', point: id, plate: plate.id } as const;
    return [holeFinding(`${isArbor ? 'bearing' : 'hole'} ${id} ${plate.id}`, hole, cause, { gap: metal, at: where })];
  }
  const cause = { kind: 'nearEdge', point: id, plate: plate.id } as const;
  return [
    holeFinding(`hole edge ${id} ${plate.id}`, hole, cause, { severity: 'warns', gap: metal, wanted, at: where }),
  ];
}

function overlapping({ movement }: PlacedMovement, holes: readonly Hole[]): Finding[] {
  const roots = axisRoots(movement) as ReadonlyMap<PointId, PointId>;
  const boxes = holes.map(({ at, radius: r }) => [at.x - r, at.y - r, at.x + r, at.y + r] as const);
  const tree = nearTreeOf(boxes);
  const found: Finding[] = [];
  holes.forEach((first, index) => {
    const box = boxes[index];
    if (!box) return;
    tree.near(box, 0, (other) => {
      const second = holes[other];
      if (!second || other <= index || areOne(first, second, roots)) return;
      const gap = Math.hypot(second.at.x - first.at.x, second.at.y - first.at.y) - first.radius - second.radius;
      if (gap > 0) return;
      found.push({
        key: `bearing ${first.id} ${second.id} ${first.plate.id}`,
        kind: 'bearing',
        severity: 'stops',
        parts: [first.id, second.id],
        gap,
        at: [first.at, second.at],
        cause: { kind: 'holesMeet', points: [first.id, second.id], plate: first.plate.id },
      });
    });
  });
  return found;
}

/** Pipes of one axis, and points at one place, share their hole. */
function areOne(first: Hole, second: Hole, roots: ReadonlyMap<PointId, PointId>): boolean {
  const root = roots.get(first.id);
  if (root !== undefined && root === roots.get(second.id)) return true;
  return Math.hypot(first.at.x - second.at.x, first.at.y - second.at.y) < ONE_PLACE;
}

/** What goes through a plate against the hole that is drilled there: a pipe through an arbor's bearing, a post through its screw hole. */
function tight(placed: PlacedMovement, plate: Plate, holes: readonly Hole[]): Finding[] {
  const { movement, places } = placed;
  const roots = axisRoots(movement);
  const bearings = holes.filter(({ use }) => use === 'bearing');
  const passing = bearings.length === 0 ? [] : crossersOf(movement, plate);
  const byRoot = new Map(bearings.map((hole) => [roots.get(hole.id as Arbor['id']), hole]));
  const arbors = passing.flatMap(({ arbor, widest }): Finding[] => {
    const hole = byRoot.get(roots.get(arbor.id));
    if (!hole || hole.id === arbor.id || bearings.some(({ id }) => id === arbor.id)) return [];
    const bore = boreOf(movement, hole);
    return widest <= bore + TOUCH ? [] : [tooTight(hole, arbor.id, widest, bore)];
  });
  const posts = movement.posts.flatMap((post): Finding[] => {
    const at = places.get(post.id);
    const hole = holes.find(({ id }) => id === post.id);
    if (!at || !hole || hole.diameter >= post.diameter - TOUCH || !goesThrough(post, plate, movement)) return [];
    return [tooTight(hole, post.id, post.diameter, hole.diameter)];
  });
  return [...arbors, ...posts];
}

/** The running hole, not the seat of the bush round it. */
function boreOf({ arbors }: Movement, { id, plate, diameter }: Hole): number {
  const own = arbors.find((arbor) => arbor.id === id)?.bearings.filter((bearing) => bearing.plate === plate.id) ?? [];
  return Math.max(...own.map(({ bore }) => bore), own.length === 0 ? diameter : 0);
}

const knownCrossers = new WeakMap<Movement, Map<string, readonly { arbor: Arbor; widest: number }[]>>();

/** Arbors that cross a plate's heights, with their widest there; of each movement they are gathered once. */
function crossersOf(movement: Movement, plate: Plate): readonly { arbor: Arbor; widest: number }[] {
  const ofMovement = knownCrossers.get(movement) ?? new Map<string, readonly { arbor: Arbor; widest: number }[]>();
  knownCrossers.set(movement, ofMovement);
  const known =
    ofMovement.get(plate.id) ??
    movement.arbors.flatMap((arbor) => {
      const widest = widestIn(arbor, plate, movement);
      return widest === undefined ? [] : [{ arbor, widest }];
    });
  ofMovement.set(plate.id, known);
  return known;
}

function tooTight(hole: Hole, id: PointId, diameter: number, bore: number): Finding {
  const cause = { kind: 'holeTight', point: id, plate: hole.plate.id, diameter, hole: bore } as const;
  return holeFinding(`hole tight ${id} ${hole.plate.id}`, hole, cause, {
    parts: [id, hole.plate.id],
    gap: (bore - diameter) / 2,
  });
}
