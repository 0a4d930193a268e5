/**
 * Outlines reshaped: a corner or a side moved, a corner more or less, a circle or a rectangle by its numbers.
 *
 * Every function gives a new outline and leaves fields that it does not know where they are. Whether the result is
 * sound (no side crosses another) is for the movement's own checks to say. Lengths in mm, y up.
 */

import type { Point } from '../../../solver/geometry/index.ts';
import { pieceBetween, pointAtAngle } from '../../../solver/geometry/index.ts';
import type { Outline } from '../../../solver/movement/schema.ts';

export type PathOutline = Extract<Outline, { kind: 'path' }>;
export type OutlineCorner = PathOutline['vertices'][number];

/** A nanometre: below anything that is cut, and without the tail that adding decimals leaves. */
export const clean = (mm: number): number => Math.round(mm * 1e6) / 1e6 + 0;

const moved = (corner: OutlineCorner, dx: number, dy: number): OutlineCorner => ({
  ...corner,
  x: clean(corner.x + dx),
  y: clean(corner.y + dy),
});

/** The corner at an index that may run round the outline. */
export function cornerAt({ vertices }: PathOutline, index: number): OutlineCorner {
  const corner = vertices[((index % vertices.length) + vertices.length) % vertices.length];
  if (!corner) throw new RangeError(`corner ${index} of an outline without corners`);
  return corner;
}

/** The outline with one corner at another place, mm; its bulges stay. */
export function moveCorner(outline: PathOutline, index: number, to: Point): PathOutline {
  const vertices = outline.vertices.map((corner, i) =>
    i === index ? { ...corner, x: clean(to.x), y: clean(to.y) } : corner,
  );
  return { ...outline, vertices };
}

/** Moves the side from corner `index` to the next, both ends alike. */
export function moveSide(outline: PathOutline, index: number, dx: number, dy: number): PathOutline {
  const next = (index + 1) % outline.vertices.length;
  const vertices = outline.vertices.map((corner, i) => (i === index || i === next ? moved(corner, dx, dy) : corner));
  return { ...outline, vertices };
}

/** Moves the whole outline. */
export function moveOutline(outline: Outline, dx: number, dy: number): Outline {
  if (outline.kind === 'path') return { ...outline, vertices: outline.vertices.map((corner) => moved(corner, dx, dy)) };
  const [x, y] = outline.centre;
  return { ...outline, centre: [clean(x + dx), clean(y + dy)] };
}

/** Ends of the side from corner `index`, its middle on the line or arc, its length between the ends, and the normal to the right of it. */
export function outlineSideOf(outline: PathOutline, index: number) {
  const [from, to] = [cornerAt(outline, index), cornerAt(outline, index + 1)];
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  // An arc that turns left bulges to the right of its chord.
  const normal = length > 0 ? { x: (to.y - from.y) / length, y: (from.x - to.x) / length } : { x: 1, y: 0 };
  const rise = (from.bulge * length) / 2;
  const middle = { x: (from.x + to.x) / 2 + rise * normal.x, y: (from.y + to.y) / 2 + rise * normal.y };
  return { from, to, length, normal, rise, middle };
}

/** Makes the side from corner `index` an arc that rises so far over its chord, mm, to the right of its direction; 0 is straight. */
export function bowSide(outline: PathOutline, index: number, rise: number): PathOutline {
  const { length } = outlineSideOf(outline, index);
  const bulge = length > 0 ? (2 * rise) / length : 0;
  // A rise that cannot be told from straight at a nanometre is straight.
  const clear = Math.abs(rise) < 1e-6 ? 0 : bulge;
  return {
    ...outline,
    vertices: outline.vertices.map((corner, i) => (i === index ? { ...corner, bulge: clear } : corner)),
  };
}

/** A new corner on the side from corner `index`, beside `near`; an arc becomes two arcs of the same circle. */
export function addCorner(outline: PathOutline, index: number, near: Point): PathOutline {
  const { from, to } = outlineSideOf(outline, index);
  const [first, corner] = from.bulge === 0 ? onLine(from, to, near) : onArc(from, to, near);
  const vertices = [...outline.vertices];
  vertices.splice(index, 1, first, corner);
  return { ...outline, vertices };
}

/** A new corner keeps off the ends of its side by this part of it, so that no side has no length. */
const OFF_END = 0.05;
const within = (share: number): number => Math.min(1 - OFF_END, Math.max(OFF_END, share));

function onLine(from: OutlineCorner, to: OutlineCorner, near: Point): readonly [OutlineCorner, OutlineCorner] {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const share = within(((near.x - from.x) * dx + (near.y - from.y) * dy) / (dx * dx + dy * dy));
  return [from, { x: clean(from.x + share * dx), y: clean(from.y + share * dy), bulge: 0 }];
}

/** A bulge is the tangent of a quarter of its arc's angle, so the two new ones share the angle. */
function onArc(from: OutlineCorner, to: OutlineCorner, near: Point): readonly [OutlineCorner, OutlineCorner] {
  const arc = pieceBetween(from, to);
  if (arc.kind === 'line') return onLine(from, to, near);
  const left = Math.sign(from.bulge);
  const { x, y } = arc.centre;
  const start = Math.atan2(from.y - y, from.x - x);
  const turn = 2 * Math.PI;
  const gone = (((left * (Math.atan2(near.y - y, near.x - x) - start)) % turn) + turn) % turn;
  const first = arc.sweep * within(gone / arc.sweep);
  const { x: atX, y: atY } = pointAtAngle(arc.centre, arc.radius, start + left * first);
  return [
    { ...from, bulge: left * Math.tan(first / 4) },
    { x: clean(atX), y: clean(atY), bulge: left * Math.tan((arc.sweep - first) / 4) },
  ];
}

/** Without a corner: its neighbours are joined by a straight side. */
export function removeCorner(outline: PathOutline, index: number): PathOutline {
  const before = (index + outline.vertices.length - 1) % outline.vertices.length;
  const vertices = outline.vertices
    .map((corner, i) => (i === before ? { ...corner, bulge: 0 } : corner))
    .filter((_, i) => i !== index);
  return { ...outline, vertices };
}

/** Middle and size of an outline that is an upright rectangle. */
export function rectangleOf(outline: Outline) {
  if (outline.kind !== 'path' || outline.vertices.length !== 4) return undefined;
  const { vertices } = outline;
  const isUpright = vertices.every((corner, i) => {
    const next = cornerAt(outline, i + 1);
    return corner.bulge === 0 && (clean(corner.x) === clean(next.x)) !== (clean(corner.y) === clean(next.y));
  });
  const [a, c] = [cornerAt(outline, 0), cornerAt(outline, 2)];
  const [width, height] = [Math.abs(c.x - a.x), Math.abs(c.y - a.y)];
  if (!isUpright || clean(width) === 0 || clean(height) === 0) return undefined;
  return { x: (a.x + c.x) / 2, y: (a.y + c.y) / 2, width, height };
}

/** An upright rectangle with another width and height about the same middle. */
export function sizeRectangle(outline: PathOutline, width: number, height: number): PathOutline {
  const box = rectangleOf(outline);
  if (!box) return outline;
  const vertices = outline.vertices.map((corner) => ({
    ...corner,
    x: clean(box.x + Math.sign(corner.x - box.x) * (width / 2)),
    y: clean(box.y + Math.sign(corner.y - box.y) * (height / 2)),
  }));
  return { ...outline, vertices };
}
