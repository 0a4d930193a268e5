/**
 * How the ± of every rule and held place reaches a point, or the distance between two.
 *
 * To first order a place moves by J⁻¹·d(values). Asked for one output at a time, this is a sweep backwards along the
 * order of construction (the adjoint): from a point through the step that placed it to the steps before. One sweep costs
 * as much as the point has ancestors, so that a movement of thousands of arbors pays only for what is asked.
 */
import { HOLDS } from '../../tolerances.ts';
import { RuleKind } from '../network.ts';
import type { Spread } from '../placed.ts';
import { Derivations } from './derivations.ts';
import type { PlacementIndex } from './placementIndex.ts';
import { spreadOfCovariance } from './spreadOfCovariance.ts';
import { type SolvedStep, solvedStep } from './stepEquations.ts';

/** A linear function of places: for each point its derivatives along x and y. */
type Output = readonly { readonly point: number; readonly gx: number; readonly gy: number }[];

/** Carries every ± to places and distances, keeping what it has worked out. */
export class Sensitivity {
  readonly #index: PlacementIndex;
  #derivations: Derivations | undefined;
  #solved: (SolvedStep | 'unsettled' | undefined)[] = [];
  #sigma: Float64Array | undefined;
  #isUncertain: boolean | undefined;
  #scratch: Float64Array | undefined;

  constructor(index: PlacementIndex) {
    this.#index = index;
  }

  /** Covariance and ellipse of a point; undefined where no ± reaches it, or it is not settled. */
  spreadOf(point: number): Spread | undefined {
    if (!this.#hasErrors()) return undefined;
    const x = this.#sweep([{ point, gx: 1, gy: 0 }]);
    const y = this.#sweep([{ point, gx: 0, gy: 1 }]);
    if (!x || !y || (x.size === 0 && y.size === 0)) return undefined;
    return spreadOfCovariance(dot(x, x), dot(x, y), dot(y, y));
  }

  /** ± (two standard deviations) of the distance between two points, mm; undefined where no ± reaches it. */
  plusMinusBetween(a: number, b: number): number | undefined {
    if (!this.#hasErrors()) return undefined;
    const { coords } = this.#index.result;
    const dx = (coords[2 * b] ?? 0) - (coords[2 * a] ?? 0);
    const dy = (coords[2 * b + 1] ?? 0) - (coords[2 * a + 1] ?? 0);
    const length = Math.hypot(dx, dy);
    if (length < HOLDS) return this.#plusMinusApart(a, b);
    return twoSigma(this.#sweep(difference(a, b, dx / length, dy / length)));
  }

  /** How far 1 mm more in each of the rules that place a point moves it, the rest of its step's ground standing still. */
  movedBy(point: number, rules: readonly number[]): number[] {
    const derivations = this.#derivationsNow();
    if (derivations.isDerived(point)) return rules.map((rule) => (derivations.isDeriving(rule) ? 1 : 0));
    const step = this.#stepPlacing(point);
    if (!step) return rules.map(() => 0);
    const row = 2 * step.unknowns.indexOf(point);
    const [x, y] = [0, 1].map((axis) => {
      const lambda = new Float64Array(2 * step.unknowns.length);
      lambda[row + axis] = 1;
      return step.transposeSolve(lambda);
    });
    return rules.map((rule) => {
      let moved = 0;
      step.equations.forEach(({ source }, equation) => {
        if (source >> 1 === rule) moved = Math.max(moved, Math.hypot(x?.[equation] ?? 0, y?.[equation] ?? 0));
      });
      return moved;
    });
  }

  /** Two places that coincide: the ± of their separation in the direction in which it is greatest. */
  #plusMinusApart(a: number, b: number): number | undefined {
    const x = this.#sweep(difference(a, b, 1, 0));
    const y = this.#sweep(difference(a, b, 0, 1));
    if (!x || !y || (x.size === 0 && y.size === 0)) return undefined;
    return 2 * spreadOfCovariance(dot(x, x), dot(x, y), dot(y, y)).major;
  }

  /**
   * Sensitivity × standard deviation per source of error for one output; undefined where the output hangs on a point
   * that is not settled.
   */
  #sweep(output: Output): Map<number, number> | undefined {
    const { network } = this.#index.ground;
    const stepOf = this.#index.stepOf;
    this.#scratch ??= new Float64Array(2 * network.pointCount);
    const lambda = this.#scratch;
    const touched: number[] = [];
    const found = new Map<number, number>();
    const sigma = this.#sigmaNow();
    const noise = (source: number, factor: number): void => {
      const s = sigma[source] ?? 0;
      if (s > 0 && factor !== 0) found.set(source, (found.get(source) ?? 0) + factor * s);
    };
    let last = -1;
    let settled = true;
    const push = ({ point, gx, gy }: { point: number; gx: number; gy: number }): void => {
      lambda[2 * point] = (lambda[2 * point] ?? 0) + gx;
      lambda[2 * point + 1] = (lambda[2 * point + 1] ?? 0) + gy;
      touched.push(point);
      last = Math.max(last, stepOf[point] ?? -1);
    };

    const derivations = this.#derivationsNow();
    for (const term of output) derivations.spread(term, push, noise);
    for (let number = last; number >= 0 && settled; number--) {
      const points = this.#index.result.steps[number]?.points ?? [];
      if (points.every((point) => lambda[2 * point] === 0 && lambda[2 * point + 1] === 0)) continue;
      if (points.every((point) => network.held[point] === 1)) continue;
      const step = this.#stepAt(number);
      const mu = step?.transposeSolve(takeOwn(step, lambda));
      if (!step || !mu) {
        settled = false;
        break;
      }
      const own = new Set(step.unknowns);
      step.equations.forEach(({ source, gradients, noises }, equation) => {
        const m = mu[equation] ?? 0;
        if (m === 0) return;
        noise(source, m);
        for (const each of noises) noise(each.source, -m * each.factor);
        for (const [point, [gx, gy]] of gradients) if (!own.has(point)) push({ point, gx: -m * gx, gy: -m * gy });
      });
    }

    // What is left lies on held places; anything else hangs on a point that nothing settles.
    const heldAt = 2 * network.ruleCount;
    for (const point of touched) {
      const gx = lambda[2 * point] ?? 0;
      const gy = lambda[2 * point + 1] ?? 0;
      lambda[2 * point] = 0;
      lambda[2 * point + 1] = 0;
      if (gx === 0 && gy === 0) continue;
      if (network.held[point] !== 1) settled = false;
      noise(heldAt + 2 * point, gx);
      noise(heldAt + 2 * point + 1, gy);
    }
    return settled ? found : undefined;
  }

  #stepPlacing(point: number): SolvedStep | undefined {
    return this.#stepAt(this.#index.stepOf[point] ?? -1);
  }

  #stepAt(number: number): SolvedStep | undefined {
    const step = this.#index.result.steps[number];
    if (!step) return undefined;
    const solved = this.#solved[number] ?? solvedStep(this.#index, this.#derivationsNow(), step) ?? 'unsettled';
    this.#solved[number] = solved;
    return solved === 'unsettled' ? undefined : solved;
  }

  #derivationsNow(): Derivations {
    this.#derivations ??= new Derivations(this.#index);
    return this.#derivations;
  }

  #hasErrors(): boolean {
    this.#isUncertain ??= this.#sigmaNow().some((sigma) => sigma > 0);
    return this.#isUncertain;
  }

  /** Standard deviation of every source: two per network rule, then two per held point. ± is two of them. */
  #sigmaNow(): Float64Array {
    if (this.#sigma) return this.#sigma;
    const { network, plusMinus, heldBy } = this.#index.ground;
    const { coords } = this.#index.result;
    const sigma = new Float64Array(2 * network.ruleCount + 2 * network.pointCount);
    plusMinus.forEach((value, rule) => {
      // The ± of a ray is an angle: as a length it grows with the radius.
      const arm = network.kinds[rule] === RuleKind.ray ? separation(coords, network.points, rule) : 1;
      sigma[2 * rule] = (value * arm) / 2;
      sigma[2 * rule + 1] = (value * arm) / 2;
    });
    for (const [point, held] of heldBy) {
      sigma[2 * (network.ruleCount + point)] = held.plusMinus / 2;
      sigma[2 * (network.ruleCount + point) + 1] = held.plusMinus / 2;
    }
    this.#sigma = sigma;
    return sigma;
  }
}

function difference(a: number, b: number, gx: number, gy: number): Output {
  return [
    { point: b, gx, gy },
    { point: a, gx: -gx, gy: -gy },
  ];
}

/** Takes the weights of a step's own points out of the sweep. */
function takeOwn(step: SolvedStep, lambda: Float64Array): Float64Array {
  const own = new Float64Array(2 * step.unknowns.length);
  step.unknowns.forEach((point, row) => {
    own[2 * row] = lambda[2 * point] ?? 0;
    own[2 * row + 1] = lambda[2 * point + 1] ?? 0;
    lambda[2 * point] = 0;
    lambda[2 * point + 1] = 0;
  });
  return own;
}

function separation(coords: Float64Array, points: Int32Array, rule: number): number {
  const p = points[4 * rule] ?? 0;
  const a = points[4 * rule + 1] ?? 0;
  return Math.hypot((coords[2 * p] ?? 0) - (coords[2 * a] ?? 0), (coords[2 * p + 1] ?? 0) - (coords[2 * a + 1] ?? 0));
}

function dot(a: ReadonlyMap<number, number>, b: ReadonlyMap<number, number>): number {
  let sum = 0;
  for (const [source, value] of a) sum += value * (b.get(source) ?? 0);
  return sum;
}

function twoSigma(sensitivities: ReadonlyMap<number, number> | undefined): number | undefined {
  if (!sensitivities || sensitivities.size === 0) return undefined;
  return 2 * Math.sqrt(dot(sensitivities, sensitivities));
}
