/**
 * Free motions of large systems: the null space of the Jacobian by subspace iteration on the sparse factorization.
 *
 * (JᵀJ + μI)⁻¹ with a tiny μ blows up free motions and little else; a few passes over a set of start vectors, kept
 * orthonormal, leave the space of the free ones, and a small dense eigenproblem tells which they are (subspace iteration
 * with Rayleigh-Ritz: B. N. Parlett, "The Symmetric Eigenvalue Problem", chapter 14).
 * Array kernel: indices come from the loaded system, hence the `!`.
 */
import { EigenvalueDecomposition, Matrix } from 'ml-matrix';
import { patternOf, SparseNormal } from './sparseNormal.ts';
import type { System } from './system.ts';

/** Damping, against pivots of about one: far below the square of any real stiffness, far above rounding. */
const MU = 1e-13;
/** Passes over the start vectors; each shrinks what is not free by μ over its squared stiffness. */
const PASSES = 4;
/** Singular value below which a motion is free, as in the dense case. */
const FREE = 1e-7;

/** Orthonormal free motions of the loaded system, its Jacobian current; `expected` is what the structure says. */
export function sparseMotions(system: System, expected: number): Float64Array[] {
  const size = 2 * system.rootCount;
  const normal = new SparseNormal();
  normal.take(patternOf(system));
  normal.assemble(system);
  for (let mu = MU; !normal.factor(mu) && mu < 1e-6; mu *= 10);
  for (let count = Math.min(size, expected + 6); ; count = Math.min(size, 2 * count)) {
    const vectors = Array.from({ length: count }, (_, k) => startVector(size, k));
    for (let pass = 0; pass < PASSES; pass++) {
      for (const vector of vectors) normal.solve(vector);
      orthonormalize(vectors);
    }
    const free = freeOnes(system, vectors);
    if (free.length < count || count === size) return free;
  }
}

/** A fixed vector that is like no other: cosines of unrelated frequencies. */
function startVector(size: number, k: number): Float64Array {
  return Float64Array.from({ length: size }, (_, i) => Math.cos(1 + (i + 1) * (0.7 + 1.618 * (k + 1)) + k));
}

function orthonormalize(vectors: Float64Array[]): void {
  vectors.forEach((vector, k) => {
    for (let twice = 0; twice < 2; twice++) {
      scale(vector, 1 / Math.sqrt(dot(vector, vector)));
      for (let j = 0; j < k; j++) {
        const share = dot(vector, vectors[j]!);
        for (let i = 0; i < vector.length; i++) vector[i]! -= share * vectors[j]![i]!;
      }
    }
    scale(vector, 1 / Math.sqrt(dot(vector, vector)));
  });
}

/** Ritz vectors of the space whose Jacobian products vanish. */
function freeOnes(system: System, vectors: readonly Float64Array[]): Float64Array[] {
  const products = vectors.map((vector) => times(system, vector));
  const count = vectors.length;
  const small = Matrix.zeros(count, count);
  for (let a = 0; a < count; a++) for (let b = 0; b < count; b++) small.set(a, b, dot(products[a]!, products[b]!));
  const parts = new EigenvalueDecomposition(small, { assumeSymmetric: true });
  const free: Float64Array[] = [];
  parts.realEigenvalues.forEach((_, k) => {
    const motion = new Float64Array(vectors[0]!.length);
    for (let a = 0; a < count; a++) {
      const share = parts.eigenvectorMatrix.get(a, k);
      for (let i = 0; i < motion.length; i++) motion[i]! += share * vectors[a]![i]!;
    }
    const product = times(system, motion);
    if (Math.sqrt(dot(product, product)) <= FREE) free.push(motion);
  });
  return free;
}

/** J v. */
function times(system: System, vector: Float64Array): Float64Array {
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

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!;
  return sum;
}

function scale(a: Float64Array, by: number): void {
  for (let i = 0; i < a.length; i++) a[i]! *= by;
}
