/**
 * One braced block: a grid of points with one brace in enough of its cells to be rigid, tied to three held points by
 * single struts. No point has two loci before the others are placed, so the whole grid is one coupled block.
 *
 * A grid of squares is rigid when its braced cells join all rows and columns into one connected graph (E. D. Bolker and
 * H. Crapo, "Bracing rectangular frameworks", 1979); a spanning tree of that graph is just enough.
 */
import { type DraftRule, distance, networkFrom } from './builder.ts';
import type { KnownNetwork } from './coupled.ts';
import { seeded } from './random.ts';

/** A grid of `rows` by `columns` points 20 mm apart (shaken by up to 3 mm), sketched `off` mm from the known places. */
export function bracedNetwork(seed: number, rows: number, columns: number, off: number): KnownNetwork {
  const random = seeded(seed);
  const at: [number, number][] = [];
  for (let r = 0; r < rows; r++) {
    for (let c = 0; c < columns; c++) at.push([20 * c + 6 * (random() - 0.5), 20 * r + 6 * (random() - 0.5)]);
  }
  const first = at.length;
  const [width, height] = [20 * (columns - 1), 20 * (rows - 1)];
  at.push([-25, -20], [width + 25, -18], [width + 22, height + 24]);
  const pairs: [number, number][] = [];
  const node = (r: number, c: number): number => r * columns + c;
  for (let r = 0; r < rows; r++) for (let c = 1; c < columns; c++) pairs.push([node(r, c - 1), node(r, c)]);
  for (let r = 1; r < rows; r++) for (let c = 0; c < columns; c++) pairs.push([node(r - 1, c), node(r, c)]);
  for (const [r, c] of bracedCells(rows - 1, columns - 1, random)) pairs.push([node(r, c), node(r + 1, c + 1)]);
  pairs.push([node(0, 0), first], [node(0, columns - 1), first + 1], [node(rows - 1, columns - 1), first + 2]);
  const rules = pairs.map(([a, b]): DraftRule => {
    const [p, q] = [at[a]!, at[b]!]; // pairs name points
    return distance(a, b, Math.hypot(p[0] - q[0], p[1] - q[1]));
  });
  const sketch = at.map(([x, y], i): [number, number] => {
    const angle = 2 * Math.PI * random();
    return i >= first ? [x, y] : [x + off * Math.cos(angle), y + off * Math.sin(angle)];
  });
  const held = [first, first + 1, first + 2];
  return { network: networkFrom({ at: sketch, held, rules }), known: Float64Array.from(at.flat()) };
}

/** A spanning tree of rows and columns: a staircase along the diagonal and then cells that join one more each. */
function bracedCells(rows: number, columns: number, random: () => number): [number, number][] {
  const cells: [number, number][] = [[0, 0]];
  let [r, c] = [1, 1];
  while (r < rows || c < columns) {
    const addRow = c >= columns || (r < rows && random() < rows / (rows + columns));
    cells.push(addRow ? [r++, Math.floor(random() * c)] : [Math.floor(random() * r), c++]);
  }
  return cells;
}
