/** The edge of a region that is known by the middles of its cells: closed rows of points, the corners rounded off. */
import type { Point } from '../../solver/geometry/index.ts';

/** How often every corner is cut off at a quarter of its sides: twice gives an even curve. */
const ROUNDS = 2;

/** A step along the edge between two neighbouring grid points, in half cells, the region on its left. */
type Node = readonly [number, number];

/**
 * Closed outlines of the cells, mm, halfway between the last cells inside and the first outside; holes run the other
 * way round. Rows of two single cells that touch at a corner are held apart.
 *
 * @param middles middles of the cells, on a square grid
 * @param cell    width of a cell, mm
 */
export function regionOutlines(middles: readonly Point[], cell: number): Point[][] {
  const [first] = middles;
  if (!first) return [];
  const inside = new Set(
    middles.map(({ x, y }) => `${Math.round((x - first.x) / cell)},${Math.round((y - first.y) / cell)}`),
  );
  const next = new Map<string, Node[]>();
  for (const key of inside) {
    const [column = 0, row = 0] = key.split(',').map(Number);
    for (const [from, to, dx, dy] of SIDES) {
      if (inside.has(`${column + dx},${row + dy}`)) continue;
      const start = `${2 * column + from[0]},${2 * row + from[1]}`;
      next.set(start, [...(next.get(start) ?? []), [2 * column + to[0], 2 * row + to[1]]]);
    }
  }
  return loopsOf(next).map((loop) =>
    rounded(loop.map(([x, y]) => ({ x: first.x + (x / 2) * cell, y: first.y + (y / 2) * cell }))),
  );
}

/** Sides of a cell walked with the cell on the left, in half cells about its middle, and the neighbour beyond each. */
const SIDES: readonly (readonly [Node, Node, number, number])[] = [
  [[-1, -1], [1, -1], 0, -1],
  [[1, -1], [1, 1], 1, 0],
  [[1, 1], [-1, 1], 0, 1],
  [[-1, 1], [-1, -1], -1, 0],
];

function loopsOf(next: Map<string, Node[]>): Node[][] {
  const loops: Node[][] = [];
  for (const start of next.keys()) {
    for (;;) {
      const loop: Node[] = [];
      let at = start;
      let came: Node | undefined;
      for (;;) {
        const ways = next.get(at);
        const [x = 0, y = 0] = at.split(',').map(Number);
        const to = ways && takeLeft(ways, [x, y], came);
        if (!to) break;
        loop.push(to);
        came = [to[0] - x, to[1] - y];
        at = `${to[0]},${to[1]}`;
        if (at === start) break;
      }
      if (loop.length === 0) break;
      loops.push(loop);
    }
  }
  return loops;
}

/** Where two cells touch at a corner, the way that turns left keeps to the same cell. */
function takeLeft(ways: Node[], at: Node, came: Node | undefined): Node | undefined {
  const turn = (to: Node): number => (came ? came[0] * (to[1] - at[1]) - came[1] * (to[0] - at[0]) : 0);
  ways.sort((a, b) => turn(b) - turn(a));
  return ways.shift();
}

/** Middles of the sides first, so that a staircase becomes a slope, then corners cut off. */
function rounded(loop: readonly Point[]): Point[] {
  let points = loop.map((point, i) => between(point, after(loop, i), 0.5));
  for (let round = 0; round < ROUNDS; round++) {
    points = points.flatMap((point, i) => [
      between(point, after(points, i), 0.25),
      between(point, after(points, i), 0.75),
    ]);
  }
  return points;
}

const after = (points: readonly Point[], i: number): Point => points[(i + 1) % points.length] as Point; // the index is within the row, which is not empty here

const between = (a: Point, b: Point, part: number): Point => ({
  x: a.x + part * (b.x - a.x),
  y: a.y + part * (b.y - a.y),
});
