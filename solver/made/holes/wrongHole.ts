/**
 * Which hole is wrong: distances measured between holes are compared with the places as planned.
 *
 * For each hole the displacement is sought that best explains all distances with every other hole where it should be;
 * the hole whose displacement explains most is named, taken as moved, and the search goes on until what is left is within
 * the readings' own ±. Then all places are fitted together, and the residuals shown.
 *
 * Source of the test: W. Baarda, A testing procedure for use in geodetic networks (1968): the fall of the weighted sum of
 * squares against a chi-square limit, here with two freedoms.
 */
import { EigenvalueDecomposition, Matrix } from 'ml-matrix';

/** A hole with its place, mm. */
export interface PlannedHole {
  readonly id: string;
  readonly x: number;
  readonly y: number;
}

/** A distance that was measured between two holes. */
export interface MeasuredDistance {
  readonly from: string;
  readonly to: string;
  /** mm, and its ± (two standard deviations). */
  readonly length: number;
  readonly plusMinus: number;
}

/** A hole that the distances say is off. */
export interface WrongHole {
  readonly id: string;
  /** Where it really is, against the plan, mm. */
  readonly dx: number;
  readonly dy: number;
  /** ± of the displacement along its worst direction, mm (two standard deviations). */
  readonly plusMinus: number;
  /** How much of the weighted sum of squares it explains. */
  readonly explains: number;
}

/** What a set of distances says of the holes. */
export interface HoleReport {
  readonly wrong: readonly WrongHole[];
  /** Most probable places of all holes, mm: all distances fitted, as near the plan as they allow. */
  readonly places: readonly PlannedHole[];
  /** Measured less fitted, mm, in the order of the distances, and each as a number of its own standard deviations. */
  readonly residuals: readonly {
    readonly from: string;
    readonly to: string;
    readonly residual: number;
    readonly sigmas: number;
  }[];
}

/** Chi-square limit for two freedoms at one in a thousand (published tables: 13.816). */
const LIMIT = 13.816;

/** Compares measured distances with planned places; distances that name unknown holes, or one hole twice, are left out. */
export function findWrongHoles(holes: readonly PlannedHole[], distances: readonly MeasuredDistance[]): HoleReport {
  const known = new Set(holes.map((hole) => hole.id));
  const usable = distances.filter(({ from, to }) => known.has(from) && known.has(to) && from !== to);
  const places = new Map(holes.map((hole) => [hole.id, { ...hole }]));
  const wrong: WrongHole[] = [];
  for (let round = 0; round < holes.length; round++) {
    const best = holes
      .filter((hole) => !wrong.some((each) => each.id === hole.id))
      .flatMap((hole) => displacementOf(hole.id, places, usable) ?? [])
      .reduce<WrongHole | undefined>((a, b) => (a && a.explains >= b.explains ? a : b), undefined);
    if (!best || best.explains < LIMIT) break;
    wrong.push(best);
    const place = places.get(best.id);
    if (place) places.set(best.id, { ...place, x: place.x + best.dx, y: place.y + best.dy });
  }
  const fitted = fitPlaces([...places.values()], usable);
  const at = new Map(fitted.map((hole) => [hole.id, hole]));
  const residuals = usable.map(({ from, to, length, plusMinus }) => {
    const residual = length - between(at.get(from), at.get(to));
    return { from, to, residual, sigmas: residual / (plusMinus / 2) };
  });
  return { wrong, places: fitted, residuals };
}

const between = (a: PlannedHole | undefined, b: PlannedHole | undefined): number =>
  a && b ? Math.hypot(a.x - b.x, a.y - b.y) : 0;

/** The displacement of one hole that best explains the distances to it, by Gauss and Newton from the plan. */
function displacementOf(
  id: string,
  places: ReadonlyMap<string, PlannedHole>,
  distances: readonly MeasuredDistance[],
): WrongHole | undefined {
  const own = distances.filter(({ from, to }) => from === id || to === id);
  const start = places.get(id);
  if (!start || own.length < 2) return undefined;
  let at = start;
  let normal = { xx: 0, xy: 0, yy: 0 };
  for (let turn = 0; turn < 20; turn++) {
    let [bx, by] = [0, 0];
    normal = { xx: 0, xy: 0, yy: 0 };
    for (const { from, to, length, plusMinus } of own) {
      const other = places.get(from === id ? to : from);
      const d = between(at, other);
      if (!other || d === 0) continue;
      const w = 4 / plusMinus ** 2;
      const [ux, uy] = [(at.x - other.x) / d, (at.y - other.y) / d];
      normal = { xx: normal.xx + w * ux * ux, xy: normal.xy + w * ux * uy, yy: normal.yy + w * uy * uy };
      bx += w * ux * (length - d);
      by += w * uy * (length - d);
    }
    const det = normal.xx * normal.yy - normal.xy ** 2;
    // All directions alike: the distances say nothing across them, and no displacement can be told.
    if (!(det > 1e-9 * (normal.xx + normal.yy) ** 2)) return undefined;
    const dx = (bx * normal.yy - by * normal.xy) / det;
    const dy = (by * normal.xx - bx * normal.xy) / det;
    at = { ...at, x: at.x + dx, y: at.y + dy };
    if (Math.hypot(dx, dy) < 1e-12) break;
  }
  const sum = (place: PlannedHole) =>
    own.reduce((total, { from, to, length, plusMinus }) => {
      const other = places.get(from === id ? to : from);
      return total + ((length - between(place, other)) / (plusMinus / 2)) ** 2;
    }, 0);
  const trace = normal.xx + normal.yy;
  const least = trace / 2 - Math.sqrt(Math.max(0, (trace / 2) ** 2 - (normal.xx * normal.yy - normal.xy ** 2)));
  return {
    id,
    dx: at.x - start.x,
    dy: at.y - start.y,
    plusMinus: 2 / Math.sqrt(least),
    explains: sum(start) - sum(at),
  };
}

/**
 * Most probable places: weighted least squares over all distances; the three motions that no distance sees, and
 * everything else that they leave open, stay as near the start as possible (least displacement).
 */
export function fitPlaces(
  holes: readonly PlannedHole[],
  distances: readonly MeasuredDistance[],
): readonly PlannedHole[] {
  const index = new Map(holes.map((hole, i) => [hole.id, i]));
  let places = holes.map((hole) => ({ ...hole }));
  for (let turn = 0; turn < 20 && distances.length > 0; turn++) {
    const J = Matrix.zeros(distances.length, 2 * holes.length);
    const r = Matrix.zeros(distances.length, 1);
    distances.forEach(({ from, to, length, plusMinus }, row) => {
      const [i, j] = [index.get(from) ?? 0, index.get(to) ?? 0];
      const [a, b] = [places[i], places[j]];
      const d = between(a, b);
      if (!a || !b || d === 0) return;
      const w = 2 / plusMinus;
      const [ux, uy] = [(a.x - b.x) / d, (a.y - b.y) / d];
      J.set(row, 2 * i, w * ux)
        .set(row, 2 * i + 1, w * uy)
        .set(row, 2 * j, -w * ux)
        .set(row, 2 * j + 1, -w * uy);
      r.set(row, 0, w * (length - d));
    });
    const step = leastNormStep(J, r);
    places = places.map((place, i) => ({
      ...place,
      x: place.x + (step[2 * i] ?? 0),
      y: place.y + (step[2 * i + 1] ?? 0),
    }));
    if (step.every((value) => Math.abs(value) < 1e-12)) break;
  }
  return places;
}

/** Directions whose weight is below this share of the greatest are free and left alone. */
const FREE = 1e-10;

/** Least-squares step of least norm, by the eigenvectors of JᵀJ. */
function leastNormStep(J: Matrix, r: Matrix): readonly number[] {
  const Jt = J.transpose();
  const eigen = new EigenvalueDecomposition(Jt.mmul(J), { assumeSymmetric: true });
  const b = Jt.mmul(r).to1DArray();
  const vectors = eigen.eigenvectorMatrix;
  const greatest = eigen.realEigenvalues.reduce((a, c) => Math.max(a, c), 0);
  const step = new Array<number>(b.length).fill(0);
  eigen.realEigenvalues.forEach((value, k) => {
    if (value <= FREE * greatest) return;
    let along = 0;
    for (let i = 0; i < b.length; i++) along += vectors.get(i, k) * (b[i] ?? 0);
    for (let i = 0; i < b.length; i++) step[i] = (step[i] ?? 0) + (along / value) * vectors.get(i, k);
  });
  return step;
}
