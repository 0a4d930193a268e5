/** Outlines that are no outlines: corners on top of each other, sides that cross, a hollow that leaves its wall. */

import {
  areaOfOutline,
  containsPoint,
  crossingsOf,
  endsOf,
  nearestOfSegments,
  nearestToPoint,
  type Point,
  piecesOf,
  pointAtAngle,
  type Segment,
} from '../../geometry/index.ts';
import { TOUCH } from '../../tolerances.ts';
import type { Movement, Outline } from '../schema.ts';
import type { Fault, Report } from './fault.ts';
import { sweepPairs } from './sweepPairs.ts';

/** A fault whose place is told from the outline on. */
type OutlineFault = Omit<Fault, 'path' | 'id'> & { readonly keys: readonly (string | number)[] };

/** Outlines are immutable, so each is looked at once. */
const known = new WeakMap<Outline, OutlineFault | 'sound'>();

/** Reports what is wrong with the outlines of plates, walls and openings. */
export function checkOutlines(movement: Movement, report: Report): void {
  const check = (outline: Outline, path: readonly (string | number)[], id: string): boolean => {
    const fault = known.get(outline) ?? faultOf(outline) ?? 'sound';
    known.set(outline, fault);
    if (fault === 'sound') return true;
    const { keys, ...rest } = fault;
    report({ path: [...path, ...keys], id, ...rest });
    return false;
  };
  movement.plates.forEach(({ outline, id }, i) => {
    check(outline, ['plates', i, 'outline'], id);
  });
  movement.openings.forEach(({ outline, id }, i) => {
    check(outline, ['openings', i, 'outline'], id);
  });
  movement.walls.forEach(({ outline, inner, id }, i) => {
    const sound = check(outline, ['walls', i, 'outline'], id);
    if (inner === undefined || !check(inner, ['walls', i, 'inner'], id) || !sound || isInside(inner, outline)) return;
    report({
      path: ['walls', i, 'inner'],
      id,
      found: 'a hollow that is not wholly inside the wall’s outline',
      expected: 'an inner outline within the outer one, touching it nowhere',
      remedy: 'correct one of the two outlines',
    });
  });
}

function faultOf(outline: Outline): OutlineFault | undefined {
  if (outline.kind === 'circle') return undefined;
  return coincident(outline.vertices) ?? crossing(outline) ?? flat(outline);
}

function coincident(vertices: readonly { readonly x: number; readonly y: number }[]): OutlineFault | undefined {
  const index = vertices.findIndex((vertex, i) => {
    const next = vertices[(i + 1) % vertices.length] ?? vertex;
    return Math.hypot(next.x - vertex.x, next.y - vertex.y) < TOUCH;
  });
  if (index < 0) return undefined;
  const next = (index + 1) % vertices.length;
  return {
    keys: ['vertices', next],
    found: `a corner at the same place, ${placeOf(vertices[index])}, as the one before it`,
    expected: 'each corner away from the one before it; the last joins the first by itself',
    remedy: 'remove one of the two',
  };
}

function crossing(outline: Outline): OutlineFault | undefined {
  const pieces = piecesOf(outline);
  let found: readonly [number, number] | undefined;
  sweepPairs(pieces, (a, b) => {
    const first = pieces[a];
    const second = pieces[b];
    if (first === undefined || second === undefined) return false;
    const neighbours = b - a === 1 || b - a === pieces.length - 1;
    const touch = neighbours ? meetAgain(first, second) : nearestOfSegments(first, second).distance < TOUCH;
    if (touch) found = [a, b];
    return touch;
  });
  if (found === undefined) return undefined;
  return {
    keys: ['vertices', found[0]],
    found: `${sideWords(pieces[found[0]])} that meets ${sideWords(pieces[found[1]])}`,
    expected: 'an outline that neither crosses nor touches itself',
    remedy: 'put the corners in order round the outline, or correct a bulge',
  };
}

/** Corners are told by their places, which the file and the screen have in common; their numbers begin at 0 in one only. */
const placeOf = (at: { readonly x: number; readonly y: number } | undefined): string =>
  `(${Number(at?.x.toFixed(3))}, ${Number(at?.y.toFixed(3))})`;

function sideWords(piece: Segment | undefined): string {
  if (!piece) return 'a side';
  const [from, to] = endsOf(piece).map(({ x, y }) => placeOf({ x, y }));
  return `the side between ${from} and ${to}`;
}

/** Neighbours may share their corners and nothing else. */
function meetAgain(first: Segment, second: Segment): boolean {
  const corners = endsOf(first);
  const elsewhere = (point: Point): boolean =>
    corners.every((corner) => distance(corner, point) > TOUCH + 1e-6 * sizeOf(first));
  if (crossingsOf(first, second).some(elsewhere)) return true;
  const [shorter, longer] = sizeOf(first) < sizeOf(second) ? [first, second] : [second, first];
  return nearestToPoint(longer, middleOf(shorter)).distance < TOUCH;
}

function flat(outline: Outline): OutlineFault | undefined {
  const pieces = piecesOf(outline);
  const around = pieces.reduce((sum, piece) => sum + sizeOf(piece), 0);
  if (Math.abs(areaOfOutline(outline)) > TOUCH * around) return undefined;
  return {
    keys: [],
    found: 'an outline that encloses nothing',
    expected: 'an outline with an area',
    remedy: 'add a corner off the line, or give a side a bulge',
  };
}

function isInside(inner: Outline, outer: Outline): boolean {
  const innerPieces = piecesOf(inner);
  const pieces = [...innerPieces, ...piecesOf(outer)];
  let meet = false;
  sweepPairs(pieces, (a, b) => {
    const first = pieces[a];
    const second = pieces[b];
    if (first === undefined || second === undefined || a < innerPieces.length === b < innerPieces.length) return false;
    meet = nearestOfSegments(first, second).distance < TOUCH;
    return meet;
  });
  const [first] = innerPieces;
  return !meet && first !== undefined && containsPoint(outer, endsOf(first)[0]);
}

function middleOf(piece: Segment): Point {
  if (piece.kind === 'arc') return pointAtAngle(piece.centre, piece.radius, piece.start + piece.sweep / 2);
  return { x: (piece.from.x + piece.to.x) / 2, y: (piece.from.y + piece.to.y) / 2 };
}

function sizeOf(piece: Segment): number {
  return piece.kind === 'arc' ? piece.radius * piece.sweep : distance(piece.from, piece.to);
}

function distance(a: Point, b: Point): number {
  return Math.hypot(a.x - b.x, a.y - b.y);
}
