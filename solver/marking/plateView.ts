/** One face of one plate: its names, and how the movement's coordinates look on it. */

import type { Point } from '../geometry/index.ts';
import { boundsOfOutline } from '../geometry/index.ts';
import type { PlateId } from '../movement/ids.ts';
import type { Movement, Outline, Plate } from '../movement/schema.ts';
import type { DrawnVertex, Face } from './marks.ts';
import { namer } from './names.ts';

/** A plate as it lies before the maker. */
export interface PlateView {
  /** Absent for a movement without plates: then everything is on one bare surface. */
  readonly plate: Plate | undefined;
  readonly face: Face;
  readonly mirrored: boolean;
  /** Is it the face that the plate is marked on? */
  readonly isMarked: boolean;
  readonly plateLabel: string;
  /** "Base plate, marked face, seen from above". */
  readonly faceLabel: string;
  /** Coordinates as seen on this face: x turned about the y axis when mirrored. */
  readonly see: (point: Point) => Point;
}

/**
 * A face of a plate.
 *
 * @param plateId the plate; may be left out for a movement without plates
 * @param face    the marked face when left out
 * @throws Error when the plate is not in the movement: callers take ids from it
 */
export function plateViewOf(movement: Movement, plateId: string | undefined, face?: Face): PlateView {
  const plate = plateId === undefined ? undefined : movement.plates.find((each) => each.id === plateId);
  if (plateId !== undefined && !plate) {
    const known = movement.plates.map((each) => each.id).join(', ') || 'none';
    throw new Error(`plate "${plateId}" is not in the movement; its plates are: ${known}`);
  }
  const marked = plate?.markedFace ?? 'up';
  const seen = face ?? marked;
  const mirrored = seen === 'down';
  const plateLabel = plate ? asHeading(namer(movement)(plate.id)) : 'Plate';
  const side = seen === marked ? 'marked face' : 'other face';
  const from = mirrored ? 'seen from below (mirrored)' : 'seen from above';
  return {
    plate,
    face: seen,
    mirrored,
    isMarked: seen === marked,
    plateLabel,
    faceLabel: `${plateLabel}, ${side}, ${from}`,
    see: mirrored ? ({ x, y }) => ({ x: x === 0 ? 0 : -x, y }) : ({ x, y }) => ({ x, y }),
  };
}

const asHeading = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

/** The ids of the plates, or one `undefined` for a movement that has none. */
export function platesOf(movement: Movement): readonly (PlateId | undefined)[] {
  return movement.plates.length > 0 ? movement.plates.map((plate) => plate.id) : [undefined];
}

/** An outline as seen on a face: mirrored paths turn the other way. */
export function seenOutline(view: PlateView, outline: Outline): Outline {
  if (!view.mirrored) return outline;
  if (outline.kind === 'circle') {
    const centre = view.see({ x: outline.centre[0], y: outline.centre[1] });
    return { ...outline, centre: [centre.x, centre.y] };
  }
  return {
    ...outline,
    vertices: outline.vertices.map((v): DrawnVertex => ({ ...view.see(v), bulge: v.bulge === 0 ? 0 : -v.bulge })),
  };
}

/** The straight edges that a square can be laid to, as seen: where the plate's bounds are really bounded by lines. */
export interface DatumEdges {
  readonly left: number | undefined;
  readonly right: number | undefined;
  readonly lower: number | undefined;
  readonly upper: number | undefined;
}

/** Shortest part of an edge that a square can be laid to, as a share of the plate's width or height: habit of the trade. */
const LEAST_EDGE = 0.25;

/** Edges of the plate that lie along x and y, mm. */
export function datumEdgesOf(view: PlateView): DatumEdges {
  const none: DatumEdges = { left: undefined, right: undefined, lower: undefined, upper: undefined };
  if (view.plate?.outline.kind !== 'path') return none;
  const outline = seenOutline(view, view.plate.outline);
  if (outline.kind !== 'path') return none;
  const [minX, minY, maxX, maxY] = boundsOfOutline(outline);
  const reach = { x: 0, y: 0 };
  const lengthAt = (axis: 'x' | 'y', value: number): number => {
    const other = axis === 'x' ? 'y' : 'x';
    reach[axis] = 0;
    outline.vertices.forEach((a, index) => {
      const b = outline.vertices[(index + 1) % outline.vertices.length] ?? a;
      if (a.bulge === 0 && a[axis] === value && b[axis] === value) reach[axis] += Math.abs(a[other] - b[other]);
    });
    return reach[axis];
  };
  const width = maxX - minX;
  const height = maxY - minY;
  const keep = (axis: 'x' | 'y', value: number, span: number) =>
    lengthAt(axis, value) >= LEAST_EDGE * span ? value : undefined;
  return {
    left: keep('x', minX, height),
    right: keep('x', maxX, height),
    lower: keep('y', minY, width),
    upper: keep('y', maxY, width),
  };
}
