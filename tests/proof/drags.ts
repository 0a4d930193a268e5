/**
 * Drags are continuous: every step of many drags of small linkages is looked at.
 *
 * Wrong is: a step in which another point goes farther than twice its first-order move and a hundredth, however finely
 * the step is divided; a rigid or placing triangle that turns over; a rule that held and does not; a dragged point that
 * ends more than 0.01 mm farther from the pointer than an independent projection, which follows the same rules by a
 * singular value decomposition in steps of a few hundredths.
 */
import { Matrix, SVD } from 'ml-matrix';
import { createPlanner } from '../../solver/planting/kernel/planner.ts';
import { type Network, type NetworkResult, PointState, RuleKind } from '../../solver/planting/network.ts';
import { seeded } from '../planting/scenes/random.ts';
import { linkageOf } from './drags/linkages.ts';
import { type Proof, type Table, tableLines } from './proof.ts';
import { residualsOf, rowsOf } from './rank/oracle.ts';

/** Steps of one drag. */
const STEPS = 100;
/** How much farther than the projection a dragged point may stay, and what a point may go beyond its first-order move, mm. */
const NEAR = 0.01;
/** Every how many steps the dragged point is held against the projection, which takes hundreds of decompositions. */
const PROJECTED = 10;
/** Residual to which a rule holds, mm. */
const HOLDS = 1e-9;
/** Step of the projection, mm, and how many it takes. */
const SHORT = 0.04;
const MOST_SHORT = 400;

const KINDS = ['leaps', 'turned over', 'rules broken', 'not nearest'] as const;
type Wrong = (typeof KINDS)[number];

/** The rules of a network as rows at places, by an oracle of its own. */
class Rules {
  readonly network: Network;
  private readonly columnOf: Int32Array;
  readonly columns: number;

  constructor(network: Network) {
    this.network = network;
    this.columnOf = new Int32Array(network.pointCount).fill(-1);
    let columns = 0;
    for (let i = 0; i < network.pointCount; i++) {
      if (network.held[i]) continue;
      this.columnOf[i] = columns;
      columns += 2;
    }
    this.columns = columns;
  }

  /** Residuals and the decomposition of their rows. */
  at(coords: Float64Array): { residuals: number[]; svd: SVD; rank: number } {
    const residuals: number[] = [];
    const rows: number[][] = [];
    for (let r = 0; r < this.network.ruleCount; r++) {
      residuals.push(...residualsOf(this.network, r, coords));
      for (const entries of rowsOf(this.network, r, coords)) {
        const row = new Array<number>(this.columns).fill(0);
        for (const [point, dx, dy] of entries) {
          const column = this.columnOf[point] as number; // one a point
          if (column < 0) continue;
          row[column] = (row[column] as number) + dx; // within the row
          row[column + 1] = (row[column + 1] as number) + dy; // as above
        }
        rows.push(row);
      }
    }
    while (rows.length < this.columns) rows.push(new Array<number>(this.columns).fill(0));
    const svd = new SVD(new Matrix(rows));
    return { residuals, svd, rank: svd.diagonal.filter((value) => value > 1e-7).length };
  }

  /** The least motion of all points, to first order, with which one goes by (dx, dy) as far as the rules let it. */
  response(coords: Float64Array, point: number, dx: number, dy: number): Float64Array {
    const { svd } = this.at(coords);
    const column = this.columnOf[point] as number; // a loose point has one
    const free = svd.diagonal.flatMap((value, k) => (value > 1e-7 ? [] : [k]));
    const right = svd.rightSingularVectors;
    const own = Matrix.zeros(Math.max(2, free.length), free.length);
    free.forEach((k, j) => {
      own.set(0, j, right.get(column, k));
      own.set(1, j, right.get(column + 1, k));
    });
    const shift = new Float64Array(2 * this.network.pointCount);
    if (free.length === 0) return shift;
    const wanted = Matrix.zeros(own.rows, 1);
    wanted.set(0, 0, dx);
    wanted.set(1, 0, dy);
    // Singular directions in which the point hardly answers are left out.
    const parts = new SVD(own, { autoTranspose: true });
    const shares = new Float64Array(free.length);
    parts.diagonal.forEach((value, k) => {
      if (value < 1e-4) return;
      let along = 0;
      for (let i = 0; i < own.rows; i++) along += parts.leftSingularVectors.get(i, k) * wanted.get(i, 0);
      for (let j = 0; j < free.length; j++) {
        shares[j] = (shares[j] as number) + (parts.rightSingularVectors.get(j, k) * along) / value; // one a motion
      }
    });
    for (let i = 0; i < this.network.pointCount; i++) {
      const at = this.columnOf[i] as number; // one a point
      if (at < 0) continue;
      free.forEach((k, j) => {
        shift[2 * i] = (shift[2 * i] as number) + (shares[j] as number) * right.get(at, k); // as above
        shift[2 * i + 1] = (shift[2 * i + 1] as number) + (shares[j] as number) * right.get(at + 1, k); // as above
      });
    }
    return shift;
  }

  /** Newton's steps back to where all rules hold; false where they do not come to it. */
  settle(coords: Float64Array): boolean {
    for (let n = 0; n < 12; n++) {
      const { residuals, svd } = this.at(coords);
      if (Math.max(0, ...residuals.map(Math.abs)) < 1e-10) return true;
      const step = new Float64Array(this.columns);
      svd.diagonal.forEach((value, k) => {
        if (value <= 1e-7) return;
        const share = residuals.reduce((sum, v, i) => sum + v * svd.leftSingularVectors.get(i, k), 0) / value;
        for (let c = 0; c < step.length; c++) {
          step[c] = (step[c] as number) - share * svd.rightSingularVectors.get(c, k); // one a column
        }
      });
      this.columnOf.forEach((column, i) => {
        if (column < 0) return;
        coords[2 * i] = (coords[2 * i] as number) + (step[column] as number); // as above
        coords[2 * i + 1] = (coords[2 * i + 1] as number) + (step[column + 1] as number); // as above
      });
    }
    return false;
  }

  /** How near to (x, y) the point comes from these places, in short steps along the rules and on its branch, mm. */
  nearest(from: Float64Array, point: number, x: number, y: number, isOver: (at: Float64Array) => boolean): number {
    let coords = Float64Array.from(from);
    let short = SHORT;
    const gap = (at: Float64Array): number =>
      Math.hypot((at[2 * point] as number) - x, (at[2 * point + 1] as number) - y); // a point of it
    let best = gap(coords);
    for (let n = 0; n < MOST_SHORT && short > 1e-4; n++) {
      const shift = this.response(
        coords,
        point,
        x - (coords[2 * point] as number),
        y - (coords[2 * point + 1] as number),
      ); // as above
      const far = Math.max(...shift.map(Math.abs));
      if (far < 1e-6) break;
      const share = Math.min(1, short / far);
      const next = coords.map((v, k) => v + share * (shift[k] as number)); // same length
      if (!this.settle(next) || gap(next) >= best || isOver(next)) {
        short /= 4;
        continue;
      }
      coords = next;
      best = gap(coords);
    }
    return best;
  }
}

/** Triangles that the rules keep: of three distances, and of the points that are struck as crossings of two arcs. */
function trianglesOf(network: Network, result: NetworkResult): [number, number, number][] {
  const ends = (r: number): [number, number] => [network.points[4 * r] as number, network.points[4 * r + 1] as number]; // four a rule
  const isDistance = (r: number): boolean => network.kinds[r] === RuleKind.distance;
  const distances = Array.from({ length: network.ruleCount }, (_, r) => r).filter(isDistance);
  const joined = new Set(distances.map((r) => [Math.min(...ends(r)), Math.max(...ends(r))].join(' ')));
  const found: [number, number, number][] = [];
  for (const r of distances) {
    const [a, b] = ends(r);
    for (let u = 0; u < network.pointCount; u++) {
      const isThird = [a, b].every((end) => joined.has([Math.min(u, end), Math.max(u, end)].join(' ')));
      if (isThird) found.push([u, a, b]);
    }
  }
  for (const { kind, points, rules } of result.steps) {
    if (kind !== 'crossing' || !rules.every(isDistance)) continue;
    const [u] = points as [number]; // a crossing places one
    const [a, b] = rules.map((r) => ends(r)[0] + ends(r)[1] - u) as [number, number]; // two rules
    found.push([u, a, b]);
  }
  return found;
}

/** Twice the signed area of a triangle, mm². */
function areaOf(coords: Float64Array, [u, a, b]: readonly [number, number, number]): number {
  const at = (i: number, k: number): number => coords[2 * i + k] as number; // points of the network
  return (at(a, 0) - at(u, 0)) * (at(b, 1) - at(u, 1)) - (at(a, 1) - at(u, 1)) * (at(b, 0) - at(u, 0));
}

/** Does another point go farther in one divided step than twice its first-order move and a hundredth? */
function leaps(rules: Rules, point: number, from: Float64Array, to: Float64Array): boolean {
  const by = [0, 1].map((k) => (to[2 * point + k] as number) - (from[2 * point + k] as number)); // a point of it
  const first = rules.response(from, point, by[0] as number, by[1] as number); // two numbers
  for (let i = 0; i < rules.network.pointCount; i++) {
    const [dx, dy] = [0, 1].map((k) => (to[2 * i + k] as number) - (from[2 * i + k] as number)) as [number, number]; // as above
    const ahead = Math.hypot(first[2 * i] as number, first[2 * i + 1] as number); // as above
    if (i !== point && Math.hypot(dx, dy) > 2 * ahead + NEAR) return true;
  }
  return false;
}

/** Drags one point of a network along a winding path; what is wrong about it, and how many steps it stayed off the pointer. */
export function faultsOfDrag(network: Network, random: () => number): { wrong: Wrong[]; held: number; far: number } {
  const divided: Float64Array[] = [];
  const planner = createPlanner(network, (coords) => divided.push(coords));
  const start = planner.plant();
  const loose = Array.from(start.states.keys()).filter((i) => start.states[i] === PointState.loose);
  const wrong = new Set<Wrong>();
  if (loose.length === 0) return { wrong: [], held: 0, far: 0 };
  const point = loose[Math.floor(random() * loose.length)] as number; // within the list
  const rules = new Rules(network);
  const triangles = trianglesOf(network, start);
  const hands = triangles.map((each) => areaOf(start.coords, each));
  /** Has a triangle another hand than at the start? */
  const isOver = (at: Float64Array): boolean =>
    triangles.some((each, k) => areaOf(at, each) * (hands[k] as number) < -1e-6 * Math.abs(hands[k] as number)); // one a triangle
  const [cx, cy] = [start.coords[2 * point] as number, start.coords[2 * point + 1] as number]; // a point of it
  const [reach, turns, phase] = [3 + 50 * random(), 0.3 + 1.2 * random(), 7 * random()];
  let coords = start.coords;
  let [held, far] = [0, 0];
  for (let n = 1; n <= STEPS; n++) {
    const t = (n / STEPS) * 2 * Math.PI * turns;
    const pointer: [number, number] = [
      cx + reach * (Math.cos(t + phase) - Math.cos(phase)),
      cy + reach * (Math.sin(t + phase) - Math.sin(phase)),
    ];
    divided.length = 0;
    const result = planner.drag(point, pointer[0], pointer[1]);
    const isKept = result.missBy.every((miss, r) => miss <= HOLDS || (start.missBy[r] as number) > HOLDS); // one a rule
    if (!isKept) wrong.add('rules broken');
    const places = [coords, ...divided, result.coords];
    for (let k = 1; k < places.length; k++) {
      if (leaps(rules, point, places[k - 1] as Float64Array, places[k] as Float64Array)) wrong.add('leaps'); // within the list
    }
    if (isOver(result.coords)) wrong.add('turned over');
    const off = Math.hypot(
      (result.coords[2 * point] as number) - pointer[0],
      (result.coords[2 * point + 1] as number) - pointer[1],
    ); // as above
    if (off > NEAR) held++;
    if (off > NEAR && n % PROJECTED === 0) {
      far = Math.max(far, off - rules.nearest(coords, point, pointer[0], pointer[1], isOver));
      if (far > NEAR) wrong.add('not nearest');
    }
    coords = result.coords;
  }
  return { wrong: [...wrong], held, far };
}

function run(count: number, seed: number): Table {
  const rows = new Map<string, { drags: number; held: number; far: number; wrong: Map<Wrong, number> }>();
  const examples: string[] = [];
  for (let n = 0; n < count; n++) {
    const random = seeded(seed * 1_000_003 + n);
    const { name, network } = linkageOf(n, random);
    const row = rows.get(name) ?? { drags: 0, held: 0, far: 0, wrong: new Map<Wrong, number>() };
    rows.set(name, row);
    const { wrong, held, far } = faultsOfDrag(network, random);
    row.drags++;
    row.held += held;
    row.far = Math.max(row.far, far);
    for (const each of wrong) {
      row.wrong.set(each, (row.wrong.get(each) ?? 0) + 1);
      if (examples.length < 12) examples.push(`  ${each}: ${name}, case ${n}`);
    }
  }
  const heading = ['linkages', 'drags', 'steps off the pointer', 'farther than projected, mm', ...KINDS];
  const lines = tableLines(
    heading,
    [...rows].map(([name, { drags, held, far, wrong }]) => [
      name,
      drags,
      held,
      far.toFixed(4),
      ...KINDS.map((kind) => wrong.get(kind) ?? 0),
    ]),
  );
  const total = [...rows.values()].reduce((sum, { wrong }) => sum + [...wrong.values()].reduce((a, b) => a + b, 0), 0);
  return { lines: [...lines, ...examples], wrong: total };
}

export const proof: Proof = { title: `Drags of ${STEPS} steps, every step looked at`, fullCount: 1000, run };
