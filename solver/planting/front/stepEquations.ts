/** The equations of one construction step, linear about the planted places, in the points that they really hang on. */
import { LuDecomposition, Matrix } from 'ml-matrix';
import type { PlacementStep } from '../network.ts';
import type { Derivations } from './derivations.ts';
import type { StepEquation } from './equation.ts';
import type { PlacementIndex } from './placementIndex.ts';
import { equationsOfRule } from './ruleEquations.ts';

/** A step with its equations and their solution. */
export interface SolvedStep {
  readonly unknowns: readonly number[];
  readonly equations: readonly StepEquation[];
  /** μ with Jᵀ·μ = λ, J the step's own derivatives; undefined where the step settles nothing. */
  readonly transposeSolve: (lambda: Float64Array) => Float64Array | undefined;
}

/** The equations of a step and their solver; undefined where they are not as many as the unknowns. */
export function solvedStep(
  index: PlacementIndex,
  derivations: Derivations,
  step: PlacementStep,
): SolvedStep | undefined {
  const unknowns = step.points.filter((point) => !derivations.isDerived(point));
  const equations = step.rules
    .filter((rule) => !derivations.isDeriving(rule) && !index.isSpare(rule))
    .flatMap((rule) =>
      equationsOfRule(index.ground.network, index.result.coords, rule).map((terms, number) =>
        derivations.reduced(2 * rule + number, terms),
      ),
    );
  if (unknowns.length === 0 || equations.length !== 2 * unknowns.length) return undefined;
  return { unknowns, equations, transposeSolve: transposeSolver(unknowns, equations) };
}

/** A step is singular where a unit of error would move its points this many times as far: the proof's digits are gone. */
const SINGULAR = 1e10;

function transposeSolver(
  unknowns: readonly number[],
  equations: readonly StepEquation[],
): (lambda: Float64Array) => Float64Array | undefined {
  const size = 2 * unknowns.length;
  let factors: LuDecomposition | undefined;
  return (lambda) => {
    factors ??= new LuDecomposition(transposed(unknowns, equations));
    if (factors.isSingular()) return undefined;
    const solved = factors.solve(Matrix.columnVector([...lambda]));
    const mu = new Float64Array(size);
    let largest = 0;
    for (let row = 0; row < size; row++) {
      mu[row] = solved.get(row, 0);
      largest = Math.max(largest, Math.abs(solved.get(row, 0)));
    }
    return largest < SINGULAR * Math.max(...lambda.map(Math.abs)) ? mu : undefined;
  };
}

function transposed(unknowns: readonly number[], equations: readonly StepEquation[]): Matrix {
  const matrix = Matrix.zeros(2 * unknowns.length, equations.length);
  const rowOf = new Map(unknowns.map((point, row) => [point, 2 * row]));
  equations.forEach(({ gradients }, column) => {
    for (const [point, [gx, gy]] of gradients) {
      const row = rowOf.get(point);
      if (row === undefined) continue;
      matrix.set(row, column, gx);
      matrix.set(row + 1, column, gy);
    }
  });
  return matrix;
}
