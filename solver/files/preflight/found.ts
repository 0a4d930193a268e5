/** What a file holds when it is read back, before it is held against what it should hold. */
import { decimalFixed } from '../../movement/decimal.ts';
import { jointsOf } from './loops.ts';
import { boundsOfRead, type ReadDrawing } from './readShapes.ts';

/** A hole that a file makes, mm. */
export interface FoundHole {
  readonly x: number;
  readonly y: number;
  /** mm; undefined in a drill program, which only knows tools. */
  readonly diameter: number | undefined;
}

/** What the reader of a format finds. */
export interface Found {
  /** [minX, minY, maxX, maxY] of everything that is cut, mm. */
  readonly extents?: readonly [number, number, number, number];
  readonly closedLoops: number;
  readonly openEnds: number;
  readonly gaps: readonly number[];
  readonly doubles: number;
  readonly smallestHole?: number;
  readonly holes: readonly FoundHole[];
  readonly layers: readonly string[];
  /** Everything that should be looked at; empty when the file is fine. */
  readonly problems: readonly string[];
}

/** What is found in a file that no machine reads. */
export const NOTHING_FOUND: Found = {
  closedLoops: 0,
  openEnds: 0,
  gaps: [],
  doubles: 0,
  holes: [],
  layers: [],
  problems: [],
};

/** Layers that a machine cuts; on the others open ends are no fault. */
const CUT_LAYERS = new Set(['OUTLINE', 'HOLES', 'OPENINGS', 'TEETH']);

/** What is found in a drawing. */
export function foundInDrawing(drawing: ReadDrawing): Found {
  const cut = drawing.shapes.filter((shape) => CUT_LAYERS.has(shape.layer));
  const joints = jointsOf(cut);
  const holes = cut.flatMap((shape) =>
    shape.kind === 'circle' && shape.layer === 'HOLES'
      ? [{ x: shape.centre[0], y: shape.centre[1], diameter: 2 * shape.radius }]
      : [],
  );
  const problems = [...drawing.problems];
  if (joints.openEnds > 0) problems.push(`${joints.openEnds} open ends on the cut layers`);
  if (joints.gaps.length > 0) {
    problems.push(`${joints.gaps.length} small gaps, the least ${decimalFixed(joints.gaps[0] ?? 0, 4)} mm`);
  }
  if (joints.doubles > 0) problems.push(`${joints.doubles} pieces are drawn twice`);
  if (drawing.unit !== undefined && drawing.unit !== 1) problems.push(`the unit is ${drawing.unit} mm`);
  const extents = boundsOfRead(cut);
  return { ...joints, holes, layers: drawing.layers, problems, ...(extents ? { extents } : {}), ...smallest(holes) };
}

/** What is found in a list of holes. */
export function foundInList(holes: readonly FoundHole[], problems: readonly string[]): Found {
  const shapes = holes.map(({ x, y }) => ({ kind: 'line', layer: '', from: [x, y], to: [x, y] }) as const);
  const extents = boundsOfRead(shapes);
  return { ...NOTHING_FOUND, holes, problems, ...(extents ? { extents } : {}), ...smallest(holes) };
}

function smallest(holes: readonly FoundHole[]): { smallestHole?: number } {
  const sizes = holes.flatMap((hole) => (hole.diameter === undefined ? [] : [hole.diameter]));
  return sizes.length === 0 ? {} : { smallestHole: Math.min(...sizes) };
}
