/**
 * The rates of all arbors in space, from trains that stand on the plates and on arms.
 *
 * Unknowns are the rates of the trains' first arbors (see trains.ts). An arbor's rate in space is its rate against
 * the arm that carries it plus that of the arm. An arbor that belongs to trains on different arms (a sun wheel, or
 * the ring round a set of planets) must have one rate whichever way it is reckoned: one equation each. They are
 * few, and are solved exactly. The drive's rate is 1.
 */
import type { ArborId } from '../../movement/ids.ts';
import type { Axes } from './axes.ts';
import { add, divide, isZero, multiply, negate, ONE, type Rational, ZERO } from './rational.ts';
import type { Train } from './trains.ts';

/** A sum of unknown rates and a constant (under key -1), without zero terms. */
type Sum = ReadonlyMap<number, Rational>;
const CONSTANT = -1;

function plus(a: Sum, b: Sum, times: Rational = ONE): Sum {
  const sum = new Map(a);
  for (const [key, value] of b) {
    const total = add(sum.get(key) ?? ZERO, multiply(value, times));
    if (isZero(total)) sum.delete(key);
    else sum.set(key, total);
  }
  return sum;
}

/** Solved unknowns, each as a sum of unsolved ones. */
class Solved {
  private readonly known = new Map<number, Sum>();

  reduce(sum: Sum): Sum {
    let reduced: Sum = sum;
    for (const [key, value] of sum) {
      const found = this.known.get(key);
      if (found) reduced = plus(plus(reduced, new Map([[key, value]]), negate(ONE)), found, value);
    }
    return reduced;
  }

  /** Adds sum = 0. Gives false where that cannot be (a constant is left over). */
  require(equation: Sum): boolean {
    const sum = this.reduce(equation);
    const key = [...sum.keys()].find((candidate) => candidate !== CONSTANT);
    if (key === undefined) return sum.size === 0;
    const value = sum.get(key) ?? ONE;
    const rest = plus(sum, new Map([[key, value]]), negate(ONE));
    const solution = plus(new Map(), rest, divide(negate(ONE), value));
    for (const [other, expression] of this.known) {
      const share = expression.get(key);
      if (share) this.known.set(other, plus(plus(expression, new Map([[key, share]]), negate(ONE)), solution, share));
    }
    this.known.set(key, solution);
    return true;
  }
}

/** The rates of arbors in space, by arbor. */
export interface Rates {
  /** Turns in space for one of the drive; `open` where a rate is not settled. */
  readonly of: (arbor: ArborId) => Rational | 'open';
  /** Whether the drive can turn at all. */
  readonly driveTurns: boolean;
}

/**
 * @param trains trains of all frames; each arbor is in exactly one train of its own arm's frame
 * @param still  arbors that never turn against what they stand on
 */
export function ratesOf(
  trains: readonly Train[],
  axes: Axes,
  drive: ArborId | undefined,
  still: ReadonlySet<ArborId>,
): Rates {
  const home = new Map<ArborId, { readonly index: number; readonly ratio: Rational }>();
  trains.forEach((train, index) => {
    for (const [arbor, ratio] of train.ratios) if (axes.armOf(arbor) === train.arm) home.set(arbor, { index, ratio });
  });
  const sums = new Map<ArborId, Sum>();
  const sumOf = (arbor: ArborId): Sum => {
    const found = sums.get(arbor);
    if (found) return found;
    const own = home.get(arbor);
    const arm = axes.armOf(arbor);
    const sum = plus(arm === undefined ? new Map() : sumOf(arm), own ? new Map([[own.index, own.ratio]]) : new Map());
    sums.set(arbor, sum);
    return sum;
  };

  const solved = new Solved();
  trains.forEach((train, index) => {
    const own: Sum = new Map([[index, ONE]]);
    if (
      train.rings.length > 0 ||
      [...train.ratios.keys()].some((id) => still.has(id) && axes.armOf(id) === train.arm)
    ) {
      solved.require(own);
    }
    for (const [arbor, ratio] of train.ratios) {
      if (axes.armOf(arbor) === train.arm) continue;
      const against = plus(sumOf(arbor), train.arm === undefined ? new Map() : sumOf(train.arm), negate(ONE));
      solved.require(plus(against, own, negate(ratio)));
    }
  });
  const driveTurns = drive !== undefined && solved.require(plus(sumOf(drive), new Map([[CONSTANT, ONE]]), negate(ONE)));
  return {
    driveTurns,
    of: (arbor) => {
      const sum = solved.reduce(sumOf(arbor));
      if ([...sum.keys()].some((key) => key !== CONSTANT)) return 'open';
      return sum.get(CONSTANT) ?? ZERO;
    },
  };
}
