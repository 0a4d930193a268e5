/**
 * The tilted view of the stack: every body as a short cylinder, seen from above at an angle, drawn from the bottom up
 * so that what stands higher covers what stands lower.
 *
 * A point (x, y, z) is turned about the vertical and tipped: its picture is an affine map, so circles become ellipses
 * with level long axes and plan outlines can be drawn through one matrix.
 */
import { type Solid, solidsOf } from '../../solver/clearance/index.ts';
import type { PartId } from '../../solver/movement/ids.ts';
import type { Movement, Outline } from '../../solver/movement/schema.ts';
import type { PlacedMovement } from '../../solver/planting/placed.ts';

/** A body of the stack as a cylinder. */
export interface Drum {
  readonly key: string;
  readonly part: PartId;
  readonly role: Solid['role'];
  readonly teeth?: number;
  /** Centre of the upper face on the picture, mm, y down; half axes; height of the side. */
  readonly x: number;
  readonly y: number;
  readonly rx: number;
  readonly ry: number;
  readonly side: number;
  readonly hole: number;
}

/** An outline of the case, drawn through the matrix of its height. */
export interface CaseRim {
  readonly key: string;
  readonly part: PartId;
  readonly outline: Outline;
  readonly z: number;
  readonly covers: boolean;
}

/** What the tilted view draws, the farthest first. */
export interface TiltedView {
  readonly rims: readonly CaseRim[];
  readonly drums: readonly Drum[];
}

/** From where the stack is looked at. */
export interface Aim {
  /** Turn about the vertical and tip from straight above, radians. */
  readonly turn: number;
  readonly tip: number;
}

/** SVG matrix from plan (x right, y up) at a height to the picture (y down). */
export function matrixAt(aim: Aim, z: number): string {
  const { cos, sin, flat } = factors(aim);
  const numbers = [cos, -sin * flat, -sin, -cos * flat, 0, -z * Math.sin(aim.tip)];
  return `matrix(${numbers.map((n) => n.toFixed(6)).join(' ')})`;
}

function factors({ turn, tip }: Aim): { cos: number; sin: number; flat: number } {
  return { cos: Math.cos(turn), sin: Math.sin(turn), flat: Math.cos(tip) };
}

/** Every body of the placed movement in the order to draw. */
export function tiltedView(placed: PlacedMovement, aim: Aim): TiltedView {
  const { cos, sin, flat } = factors(aim);
  const rise = Math.sin(aim.tip);
  const teeth = new Map<string, number>(placed.movement.wheels.map((wheel) => [wheel.id, wheel.teeth]));
  const drums = solidsOf(placed)
    .filter((solid) => solid.shape === 'ring')
    .map((solid) => {
      const { x: px, y: py } = solid.centre;
      const count = solid.role === 'wheel' ? teeth.get(solid.part) : undefined;
      const drum: Drum = {
        key: `${solid.index}`,
        part: solid.part,
        role: solid.role,
        ...(count === undefined ? {} : { teeth: count }),
        x: px * cos - py * sin,
        y: -(px * sin + py * cos) * flat - solid.heights.to * rise,
        rx: solid.outer,
        ry: solid.outer * flat,
        side: (solid.heights.to - solid.heights.from) * rise,
        hole: solid.inner,
      };
      return { drum, from: solid.heights.from, depth: px * sin + py * cos };
    })
    .sort((a, b) => a.from - b.from || b.depth - a.depth)
    .map(({ drum }) => drum);
  return { rims: rimsOf(placed.movement), drums };
}

/** Lower plates cover what is under them; upper plates and walls are only outlined, so that the train stays in sight. */
function rimsOf(movement: Movement): CaseRim[] {
  const lowest = Math.min(...movement.wheels.map((wheel) => wheel.level), Number.POSITIVE_INFINITY);
  const plates = movement.plates.flatMap(({ id, outline, levels }): CaseRim[] => [
    { key: `${id} under`, part: id, outline, z: levels.from, covers: false },
    { key: `${id} over`, part: id, outline, z: levels.to, covers: levels.to <= lowest },
  ]);
  const walls = movement.walls.flatMap(({ id, outline, inner, levels }): CaseRim[] =>
    [outline, ...(inner ? [inner] : [])].flatMap((rim, index): CaseRim[] => [
      { key: `${id} ${index} under`, part: id, outline: rim, z: levels.from, covers: false },
      { key: `${id} ${index} over`, part: id, outline: rim, z: levels.to, covers: false },
    ]),
  );
  return [...plates, ...walls].sort((a, b) => a.z - b.z);
}

/** Bounds of the picture, mm: [minX, minY, maxX, maxY], y down. */
export function boundsOfTilted(view: TiltedView, aim: Aim): readonly [number, number, number, number] {
  const xs: number[] = [];
  const ys: number[] = [];
  for (const { x, y, rx, ry, side } of view.drums) {
    xs.push(x - rx, x + rx);
    ys.push(y - ry, y + ry + side);
  }
  const { cos, sin, flat } = factors(aim);
  for (const { outline, z } of view.rims) {
    const reach = outline.kind === 'circle' ? outline.radius : 0;
    const corners = outline.kind === 'circle' ? [outline.centre] : outline.vertices.map(({ x, y }) => [x, y] as const);
    for (const [px, py] of corners) {
      const x = px * cos - py * sin;
      const y = -(px * sin + py * cos) * flat - z * Math.sin(aim.tip);
      xs.push(x - reach, x + reach);
      ys.push(y - reach * flat, y + reach * flat);
    }
  }
  if (xs.length === 0) return [-10, -10, 10, 10];
  return [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)];
}
