/**
 * The motions that the rules of a system hardly resist: singular values of its Jacobian near zero, with their vectors.
 *
 * Both columns of a point are scaled by one number, so that the answer does not change when the plane is turned (scaled
 * one by one, a touching pair of arcs would look settled wherever it lies along an axis). Small systems are decomposed
 * outright. Large ones: (JᵀJ + μI)⁻¹ with a tiny μ blows up what is hardly resisted and little else; a few passes over a
 * set of start vectors kept orthonormal leave that space, and the decomposition of J on it alone tells the values without
 * squaring them (subspace iteration with Rayleigh-Ritz: B. N. Parlett, "The Symmetric Eigenvalue Problem", chapter 14).
 * Array kernel: indices come from the loaded system, hence the `!`.
 */
import { Matrix, SVD } from 'ml-matrix';
import { motionsOfWhole, peelLoose } from './peelLoose.ts';
import { patternOf, SparseNormal } from './sparseNormal.ts';
import type { System } from './system.ts';

/** Singular value over the largest below which a motion is not resisted: the rules lack rank. */
export const LACKING = 1e-9;
/** Singular value over the largest below which a place is only barely settled. */
export const BARELY = 1e-6;

/** Coordinates up to which a system is decomposed outright: beyond this it takes more than 10 ms. */
const MOST_DENSE = 60;
/** Free motions from which what is loose at its ends is taken off before anything is decomposed. */
const MANY_FREE = 24;
/** Damping, against columns of length about one: below the square of `LACKING` by what rounding lets through. */
const MU = 1e-13;
/** Passes over the start vectors; each shrinks what is resisted by μ over its squared value. */
const PASSES = 4;
/** Start vectors beyond those that the count of rules calls for. */
const MORE = 6;
/** Steps of power iteration for the largest singular value, which only scales the others. */
const POWER = 12;

/** The smallest singular values with their directions. */
export interface NearNull {
  /** Singular values over the largest, in rising order, all below `BARELY`. */
  readonly values: readonly number[];
  /** One unit-length displacement of the system's roots a value: [dx, dy] a root. Orthonormal where they are few. */
  readonly vectors: readonly Float64Array[];
}

/** Decomposes the loaded system, whose Jacobian must be current; it is current again afterwards. */
export function nearNull(system: System): NearNull {
  const scale = scaleColumns(system);
  const found = 2 * system.rootCount - system.ruleCount > MANY_FREE ? peeledNull(system) : decomposed(system);
  unscaleColumns(system, scale);
  const order = found.values.map((_, k) => k).sort((a, b) => found.values[a]! - found.values[b]!);
  return {
    values: order.map((k) => found.values[k]!),
    vectors: order.map((k) => unit(found.vectors[k]!.map((v, i) => v / scale[i >> 1]!))),
  };
}

const decomposed = (system: System): NearNull => (2 * system.rootCount <= MOST_DENSE ? dense(system) : sparse(system));

/** With many free motions only the core is decomposed: the time of a decomposition grows with the cube of their number. */
function peeledNull(system: System): NearNull {
  const whole = peelLoose(system);
  const { core } = whole;
  const ofCore: NearNull = core.rootCount === 0 ? { values: [], vectors: [] } : decomposed(core);
  const vectors = motionsOfWhole(system, whole, ofCore.vectors);
  return { vectors, values: vectors.map((_, k) => ofCore.values[k] ?? 0) };
}

/** Divides both columns of each root by their common length; returns the lengths. */
function scaleColumns(system: System): Float64Array {
  const scale = new Float64Array(system.rootCount);
  const { rowRoot, jacobian } = system;
  const entries = system.rowStart[system.ruleCount]!;
  for (let e = 0; e < entries; e++) scale[rowRoot[e]!]! += jacobian[2 * e]! ** 2 + jacobian[2 * e + 1]! ** 2;
  for (let u = 0; u < scale.length; u++) scale[u] = scale[u]! > 0 ? Math.sqrt(scale[u]! / 2) : 1;
  for (let e = 0; e < entries; e++) {
    jacobian[2 * e]! /= scale[rowRoot[e]!]!;
    jacobian[2 * e + 1]! /= scale[rowRoot[e]!]!;
  }
  return scale;
}

function unscaleColumns(system: System, scale: Float64Array): void {
  const { rowRoot, jacobian } = system;
  for (let e = 0; e < system.rowStart[system.ruleCount]!; e++) {
    jacobian[2 * e]! *= scale[rowRoot[e]!]!;
    jacobian[2 * e + 1]! *= scale[rowRoot[e]!]!;
  }
}

/** The system's Jacobian as a dense matrix with at least as many rows as columns. */
function denseJacobian(system: System): Matrix {
  const columns = 2 * system.rootCount;
  const matrix = Matrix.zeros(Math.max(system.ruleCount, columns), columns);
  for (let i = 0; i < system.ruleCount; i++) {
    for (let e = system.rowStart[i]!; e < system.rowStart[i + 1]!; e++) {
      const column = 2 * system.rowRoot[e]!;
      matrix.set(i, column, matrix.get(i, column) + system.jacobian[2 * e]!);
      matrix.set(i, column + 1, matrix.get(i, column + 1) + system.jacobian[2 * e + 1]!);
    }
  }
  return matrix;
}

function dense(system: System): NearNull {
  const columns = 2 * system.rootCount;
  const svd = new SVD(denseJacobian(system), { computeLeftSingularVectors: false, computeRightSingularVectors: true });
  const most = Math.max(1e-300, ...svd.diagonal);
  const [values, vectors]: [number[], Float64Array[]] = [[], []];
  const right = svd.rightSingularVectors;
  for (let k = 0; k < columns; k++) {
    const value = svd.diagonal[k]! / most;
    if (value >= BARELY) continue;
    values.push(value);
    vectors.push(Float64Array.from({ length: columns }, (_, i) => right.get(i, k)));
  }
  return { values, vectors };
}

function sparse(system: System): NearNull {
  const size = 2 * system.rootCount;
  const normal = new SparseNormal();
  normal.take(patternOf(system));
  normal.assemble(system);
  for (let mu = MU; !normal.factor(mu) && mu < 1e-6; mu *= 10);
  const most = largestValue(system);
  const expected = Math.max(0, size - system.ruleCount);
  for (let count = Math.min(size, expected + MORE); ; count = Math.min(size, 2 * count)) {
    const start = Array.from({ length: count }, (_, k) => startVector(size, k));
    for (let pass = 0; pass < PASSES; pass++) {
      for (const vector of start) normal.solve(vector);
      orthonormalize(start);
    }
    const found = ritz(system, start, most);
    if (found.values.length < count || count === size) return found;
  }
}

/** A fixed vector that is like no other: cosines of unrelated frequencies. */
function startVector(size: number, k: number): Float64Array {
  return Float64Array.from({ length: size }, (_, i) => Math.cos(1 + (i + 1) * (0.7 + 1.618 * (k + 1)) + k));
}

function orthonormalize(vectors: Float64Array[]): void {
  vectors.forEach((vector, k) => {
    for (let twice = 0; twice < 2; twice++) {
      scaleBy(vector, 1 / Math.sqrt(dot(vector, vector)));
      for (let j = 0; j < k; j++) {
        const share = dot(vector, vectors[j]!);
        for (let i = 0; i < vector.length; i++) vector[i]! -= share * vectors[j]![i]!;
      }
    }
    scaleBy(vector, 1 / Math.sqrt(dot(vector, vector)));
  });
}

/** Singular values of the Jacobian on the space of the vectors, and the motions in it that are hardly resisted. */
function ritz(system: System, space: readonly Float64Array[], most: number): NearNull {
  const count = space.length;
  const products = new Matrix(Math.max(system.ruleCount, count), count);
  space.forEach((vector, k) => {
    times(system, vector).forEach((v, i) => {
      products.set(i, k, v);
    });
  });
  const svd = new SVD(products, { computeLeftSingularVectors: false, computeRightSingularVectors: true });
  const [values, vectors]: [number[], Float64Array[]] = [[], []];
  svd.diagonal.forEach((value, k) => {
    if (value >= BARELY * most) return;
    const motion = new Float64Array(2 * system.rootCount);
    for (let a = 0; a < count; a++) {
      const share = svd.rightSingularVectors.get(a, k);
      for (let i = 0; i < motion.length; i++) motion[i]! += share * space[a]![i]!;
    }
    values.push(value / most);
    vectors.push(motion);
  });
  return { values, vectors };
}

function largestValue(system: System): number {
  const vector = startVector(2 * system.rootCount, 0);
  let value = 1;
  for (let n = 0; n < POWER; n++) {
    scaleBy(vector, 1 / Math.sqrt(dot(vector, vector)));
    const product = times(system, vector);
    value = Math.sqrt(dot(product, product));
    if (value === 0) return 1;
    vector.set(timesTransposed(system, product));
  }
  return value;
}

/** J v. */
export function times(system: System, vector: Float64Array): Float64Array {
  const product = new Float64Array(system.ruleCount);
  for (let i = 0; i < system.ruleCount; i++) {
    let sum = 0;
    for (let e = system.rowStart[i]!; e < system.rowStart[i + 1]!; e++) {
      const column = 2 * system.rowRoot[e]!;
      sum += system.jacobian[2 * e]! * vector[column]! + system.jacobian[2 * e + 1]! * vector[column + 1]!;
    }
    product[i] = sum;
  }
  return product;
}

/** Jᵀ y. */
export function timesTransposed(system: System, y: Float64Array): Float64Array {
  const product = new Float64Array(2 * system.rootCount);
  for (let i = 0; i < system.ruleCount; i++) {
    for (let e = system.rowStart[i]!; e < system.rowStart[i + 1]!; e++) {
      const column = 2 * system.rowRoot[e]!;
      product[column]! += system.jacobian[2 * e]! * y[i]!;
      product[column + 1]! += system.jacobian[2 * e + 1]! * y[i]!;
    }
  }
  return product;
}

function unit(vector: Float64Array): Float64Array {
  scaleBy(vector, 1 / Math.sqrt(dot(vector, vector)));
  return vector;
}

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!;
  return sum;
}

function scaleBy(a: Float64Array, by: number): void {
  for (let i = 0; i < a.length; i++) a[i]! *= by;
}
