/**
 * The solids of a placed movement: rings (wheels, hubs, collars, arbors, pipes, posts) and filled regions
 * (walls, plates), each between two heights.
 *
 * A ring is a disc when its inner radius is 0. Everything that turns is a ring, so a gap in plan is a difference
 * of radii and distances, exact. Where a wheel, hub or collar surrounds its arbor, the arbor's own surface is
 * inside it and is left out at those heights.
 */
import { sizeOfWheel } from '../gearing/index.ts';
import type { Region, XY } from '../geometry/index.ts';
import type { Arbor, ArborId, Movement, Outline, PartId, Wheel } from '../movement/index.ts';
import type { PlacedMovement } from '../planting/index.ts';

export interface Heights {
  readonly from: number;
  readonly to: number;
}

interface SolidBase {
  /** Index in the list of solids. */
  readonly index: number;
  readonly part: PartId;
  /** "Wheel Third", "Arbor B", "Post P2": how a finding names it. */
  readonly label: string;
  readonly role: 'wheel' | 'hub' | 'collar' | 'arbor' | 'post' | 'wall' | 'plate';
  readonly heights: Heights;
  /** The arbor that it turns with. */
  readonly arbor?: ArborId;
}

export interface RingSolid extends SolidBase {
  readonly shape: 'ring';
  readonly centre: XY;
  readonly inner: number;
  readonly outer: number;
}

export interface RegionSolid extends SolidBase {
  readonly shape: 'region';
  readonly region: Region;
}

export type Solid = RingSolid | RegionSolid;
type Draft = Omit<RingSolid, 'index'> | Omit<RegionSolid, 'index'>;

/** Body outside the roots of an internal wheel, in modules, where the file states none: habit of the trade. */
const RING_BODY_MODULES = 2;

/** Every solid of the placed movement, in the order of the document. */
export function solidsOf(placed: PlacedMovement): readonly Solid[] {
  const { movement } = placed;
  const drafts: Draft[] = [
    ...movement.wheels.flatMap((wheel) => wheelSolids(wheel, placed)),
    ...movement.arbors.flatMap((arbor) => arborSolids(arbor, placed)),
    ...movement.posts.flatMap((post): Draft[] => {
      const at = placed.places.get(post.id);
      const heights = post.levels ?? spanBetweenPlates(movement);
      if (!at || !heights) return [];
      const label = `Post ${post.name ?? post.id}`;
      return [disc({ part: post.id, label, role: 'post', heights }, [at.x, at.y], post.diameter / 2)];
    }),
    ...movement.walls.map(
      (wall): Draft => ({
        shape: 'region',
        part: wall.id,
        label: wall.name ?? `Wall ${wall.id}`,
        role: 'wall',
        heights: wall.levels,
        region: { outer: wall.outline, holes: wall.inner ? [wall.inner] : [] },
      }),
    ),
    ...movement.plates.map(
      (plate): Draft => ({
        shape: 'region',
        part: plate.id,
        label: plate.name ?? `Plate ${plate.id}`,
        role: 'plate',
        heights: plate.levels,
        region: { outer: plate.outline, holes: openingsIn(movement, plate.id) },
      }),
    ),
  ];
  return drafts.map((draft, index) => ({ ...draft, index }));
}

/** The clear height between the two outermost plates, or of the walls; undefined where there is neither. */
function spanBetweenPlates(movement: Movement): Heights | undefined {
  const bodies = movement.plates.length > 1 ? movement.plates : movement.walls;
  if (bodies.length === 0) return undefined;
  const lowest = Math.min(...bodies.map((body) => body.levels.to));
  const highest = Math.max(...bodies.map((body) => body.levels.from));
  if (highest > lowest) return { from: lowest, to: highest };
  return { from: Math.min(...bodies.map((b) => b.levels.from)), to: Math.max(...bodies.map((b) => b.levels.to)) };
}

function openingsIn(movement: Movement, plateId: string): Outline[] {
  return movement.openings.filter((opening) => opening.plate === plateId).map((opening) => opening.outline);
}

type Described = Omit<SolidBase, 'index'>;

function disc(described: Described, centre: XY, radius: number): Draft {
  return { ...described, shape: 'ring', centre, inner: 0, outer: radius };
}

/** How a wheel is named in findings. */
export function wheelLabel(wheel: Wheel): string {
  const word = wheel.teeth <= 16 && !wheel.internal ? 'Pinion' : 'Wheel';
  return wheel.name ?? `${word} ${wheel.id}`;
}

function wheelSolids(wheel: Wheel, placed: PlacedMovement): Draft[] {
  const at = placed.places.get(wheel.arbor);
  if (!at) return [];
  const centre: XY = [at.x, at.y];
  const size = sizeOfWheel(wheel, placed.movement);
  const label = wheelLabel(wheel);
  const heights = { from: wheel.level, to: wheel.level + wheel.thickness };
  const described = { part: wheel.id, label, role: 'wheel', heights, arbor: wheel.arbor } as const;
  const outer = wheel.internal
    ? (wheel.outerDiameter ?? 2 * (size.rootRadius + RING_BODY_MODULES * size.module)) / 2
    : size.tipRadius;
  const inner = wheel.internal ? size.tipRadius : innerRadiusOf(wheel.arbor, placed.movement);
  const solids: Draft[] = [{ ...described, shape: 'ring', centre, inner, outer }];
  if (wheel.hub) {
    const { from, to, diameter } = wheel.hub;
    const hub = { ...described, label: `Hub of ${label}`, role: 'hub', heights: { from, to } } as const;
    const hole = innerRadiusOf(wheel.arbor, placed.movement);
    solids.push({ ...hub, shape: 'ring', centre, inner: hole, outer: diameter / 2 });
  }
  return solids;
}

/** Radius of the hole through an arbor and all that is fixed on it: a pipe's bore, or the arbor that it rides on. */
function innerRadiusOf(arborId: ArborId, movement: Movement): number {
  const arbor = movement.arbors.find((candidate) => candidate.id === arborId);
  if (arbor?.pipeBore !== undefined) return arbor.pipeBore / 2;
  const inside = movement.arbors.find((candidate) => candidate.id === arbor?.ridesOn);
  return inside ? inside.diameter / 2 : 0;
}

/** Heights that an arbor spans: as stated, or from all that stands on it and the plates that it runs in. */
export function heightsOfArbor(arbor: Arbor, movement: Movement): Heights | undefined {
  if (arbor.levels) return arbor.levels;
  const spans: Heights[] = [...arbor.collars];
  for (const wheel of movement.wheels) {
    if (wheel.arbor !== arbor.id) continue;
    spans.push({ from: wheel.level, to: wheel.level + wheel.thickness });
    if (wheel.hub) spans.push(wheel.hub);
  }
  for (const bearing of arbor.bearings) {
    const plate = movement.plates.find((candidate) => candidate.id === bearing.plate);
    if (bearing.at !== undefined) spans.push({ from: bearing.at, to: bearing.at + bearing.length });
    else if (plate) spans.push(plate.levels);
  }
  if (spans.length === 0) return undefined;
  return { from: Math.min(...spans.map((s) => s.from)), to: Math.max(...spans.map((s) => s.to)) };
}

function arborSolids(arbor: Arbor, placed: PlacedMovement): Draft[] {
  const at = placed.places.get(arbor.id);
  const whole = heightsOfArbor(arbor, placed.movement);
  if (!at || !whole) return [];
  const centre: XY = [at.x, at.y];
  const name = arbor.name ?? arbor.id;
  const described = { part: arbor.id, label: `Arbor ${name}`, role: 'arbor', arbor: arbor.id } as const;
  const inner = innerRadiusOf(arbor.id, placed.movement);
  const collars = arbor.collars.map(
    (collar): Draft => ({
      ...described,
      label: `Collar on ${name}`,
      role: 'collar',
      heights: { from: collar.from, to: collar.to },
      shape: 'ring',
      centre,
      inner,
      outer: collar.diameter / 2,
    }),
  );
  const bare = bareHeights(arbor, whole, placed.movement);
  const lengths = bare.map(
    (heights): Draft => ({ ...described, heights, shape: 'ring', centre, inner, outer: arbor.diameter / 2 }),
  );
  return [...lengths, ...collars];
}

/** Heights at which the arbor's own surface is bare: its span less the solid wheels, hubs and collars around it. */
function bareHeights(arbor: Arbor, whole: Heights, movement: Movement): Heights[] {
  const covers: Heights[] = arbor.collars.filter((collar) => collar.diameter >= arbor.diameter);
  for (const wheel of movement.wheels) {
    if (wheel.arbor !== arbor.id) continue;
    if (!wheel.internal) covers.push({ from: wheel.level, to: wheel.level + wheel.thickness });
    if (wheel.hub) covers.push(wheel.hub);
  }
  covers.sort((a, b) => a.from - b.from);
  const bare: Heights[] = [];
  let from = whole.from;
  for (const cover of covers) {
    if (cover.from > from) bare.push({ from, to: Math.min(cover.from, whole.to) });
    from = Math.max(from, cover.to);
  }
  if (from < whole.to) bare.push({ from, to: whole.to });
  return bare.filter((heights) => heights.to > heights.from);
}
