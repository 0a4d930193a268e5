/**
 * One search for several indications that share their first stages.
 *
 * Every ratio of the shared stages is tried; for each, the branch of every indication needs the ratio that is left
 * over, and the nearest one is looked up in the sorted list of all ratios of that branch. Trains are ranked by the
 * worst error among the indications. Exhaustive for the ratios; where a limit on pairs rules out the trains of a
 * ratio, the next best takes its place.
 */
import { runSteps, type Steps } from '../../steps.ts';
import {
  compare,
  digitsOf,
  divide,
  exactly,
  magnitude,
  multiply,
  ONE,
  type Rational,
  rational,
  subtract,
  toNumber,
} from '../turning/rational.ts';
import type { RankedRatio } from './bestRatios.ts';
import type { CountedTrain, CountsOptions, CountsProblem, CountsProgress } from './counts.ts';
import { greatestCommonFactor, readOptions, type StageSets, stagesOf, type Task } from './limits.ts';
import { distinctProducts } from './products.ts';
import { type ProductLists, trainsOfRatio } from './trainsOfRatio.ts';

/** What is asked where several indications share stages. */
export interface JointOptions
  extends Omit<
    CountsOptions,
    'ratio' | 'stages' | 'equalSums' | 'worm' | 'sense' | 'idlers' | 'countTrains' | 'trainsPerRatio'
  > {
  /** Stages that all indications share, 1 or 2. */
  readonly sharedStages: number;
  /** The wanted ratios (2 to 6), and the stages of each branch, 1 or 2; one of the two numbers of stages is 1. */
  readonly indications: readonly { readonly name: string; readonly ratio: number | string; readonly stages: number }[];
}

/** Shared stages with the branch that each indication takes from there. */
export interface JointRow {
  readonly shared: CountedTrain;
  readonly branches: readonly {
    readonly name: string;
    readonly train: CountedTrain;
    /** Of the whole way, shared stages included. */
    readonly ratio: Rational;
    readonly digits: string;
    readonly error: Rational;
    readonly errorPpm: number;
  }[];
  readonly worstPpm: number;
  /** Teeth of all wheels, the shared ones once. */
  readonly total: number;
}

/** Answers, best first, or why there are none. */
export type JointResult =
  | { readonly kind: 'found'; readonly rows: readonly JointRow[] }
  /** Every ratio of the shared stages was tried. */
  | { readonly kind: 'none'; readonly withinPpm: number }
  | { readonly kind: 'refused'; readonly problems: readonly CountsProblem[] };

/** All ratios of so many stages: the lists of products, and the values of every driven over every driver product, rising. */
interface Ratios {
  readonly sets: readonly StageSets[];
  readonly lists: ProductLists;
  readonly values: Float64Array;
}

/** Largest list of ratios, 8 bytes each. */
const MOST_RATIOS = 20_000_000;
/** How many times the wanted number of rows is kept while searching, for those that limits on pairs rule out. */
const SPARE = 8;
const CHUNK = 4096;

/** Shared stages with a branch for each indication, by their indices, and the worst error of all. */
interface Candidate {
  readonly shared: number;
  readonly branches: readonly number[];
  readonly worst: number;
}

/** Searches step by step, as `findCountsSteps` does. */
export function* findJointCountsSteps(options: JointOptions): Steps<CountsProgress, JointResult> {
  const read = readJoint(options);
  if ('problems' in read) return { kind: 'refused', problems: read.problems };
  const { task, targets } = read;
  const bySize = new Map<number, Ratios>();
  for (const stages of new Set([options.sharedStages, ...options.indications.map((wish) => wish.stages)])) {
    yield { done: 0, doing: { kind: 'ratios', stages } };
    const ratios = ratiosOf(task, stages);
    if (!ratios) return { kind: 'refused', problems: [tooMany(stages)] };
    bySize.set(stages, ratios);
  }
  const shared = bySize.get(options.sharedStages) as Ratios; // just put in
  const branches = options.indications.map((wish) => bySize.get(wish.stages) as Ratios); // just put in
  const kept = yield* sweepSharedSteps(shared, branches, targets.map(toNumber), task);
  const rows: JointRow[] = [];
  for (const candidate of kept) {
    const row = rowOf(candidate, shared, branches, { task, targets, options });
    if (row && !rows.some((other) => sameRatios(other, row))) rows.push(row);
  }
  rows.sort((a, b) => a.worstPpm - b.worstPpm || a.total - b.total);
  rows.length = Math.min(rows.length, task.best);
  return rows.length > 0 ? { kind: 'found', rows } : { kind: 'none', withinPpm: task.within * 1e6 };
}

/** Runs a joint search to its end. */
export function findJointCounts(options: JointOptions): JointResult {
  return runSteps(findJointCountsSteps(options));
}

const tooMany = (stages: number): CountsProblem => ({
  field: 'drivers',
  why: { kind: 'tooManyRatios', stages },
});

function readJoint(
  options: JointOptions,
): { task: Task; targets: readonly Rational[] } | { problems: readonly CountsProblem[] } {
  const problems: CountsProblem[] = [];
  const check = (field: string, value: number): void => {
    if (value !== 1 && value !== 2) problems.push({ field, why: { kind: 'notWhole', found: value, from: 1, to: 2 } });
  };
  check('sharedStages', options.sharedStages);
  options.indications.forEach((wish, index) => {
    check(`indications[${index}].stages`, wish.stages);
    if (options.sharedStages === 2 && wish.stages === 2) {
      problems.push({
        field: `indications[${index}].stages`,
        why: { kind: 'branchTooLong' },
      });
    }
  });
  if (options.indications.length < 2 || options.indications.length > 6) {
    const found = options.indications.length;
    problems.push({ field: 'indications', why: { kind: 'notWhole', found, from: 2, to: 6 } });
  }
  const targets = options.indications.flatMap((wish, index) => {
    const target = exactly(wish.ratio);
    if (target && target.n > 0n) return [target];
    problems.push({
      field: `indications[${index}].ratio`,
      why: { kind: 'noRatio', found: wish.ratio },
    });
    return [];
  });
  const task = readOptions({ ...options, ratio: 1, stages: 1 });
  if (!('target' in task)) problems.push(...task);
  return problems.length > 0 || !('target' in task) ? { problems } : { task, targets };
}

function ratiosOf(task: Task, stages: number): Ratios | undefined {
  const sets = stagesOf(task, stages);
  const driven = distinctProducts(sets.map((set) => set.driven));
  const drivers = distinctProducts(sets.map((set) => set.drivers));
  if (driven.length * drivers.length > MOST_RATIOS) return undefined;
  const values = new Float64Array(driven.length * drivers.length);
  let at = 0;
  for (const p of driven) {
    for (const q of drivers) {
      values[at] = p / q;
      at++;
    }
  }
  // Equal fractions divide to the same double, so doubles that are equal are one ratio.
  return { sets, lists: { driven, drivers }, values: distinct(values.sort()) };
}

function distinct(sorted: Float64Array): Float64Array {
  let used = 0;
  for (let index = 0; index < sorted.length; index++) {
    if (index === 0 || sorted[index] !== sorted[index - 1]) {
      sorted[used] = sorted[index] as number; // within its length
      used++;
    }
  }
  return sorted.slice(0, used);
}

/** Index of the value nearest to `wanted`, by ratio. */
function nearest(values: Float64Array, wanted: number): number {
  let low = 0;
  let high = values.length - 1;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if ((values[middle] as number) < wanted) {
      low = middle + 1;
    } // between the ends
    else high = middle;
  }
  if (low === 0) return 0;
  const [below, above] = [values[low - 1] as number, values[low] as number]; // low is from 1 to the last
  return wanted - below < above - wanted ? low - 1 : low;
}

function* sweepSharedSteps(
  shared: Ratios,
  branches: readonly Ratios[],
  targets: readonly number[],
  task: Task,
): Steps<CountsProgress, readonly Candidate[]> {
  const most = task.best * SPARE;
  const kept: Candidate[] = [];
  let bound = task.within;
  for (let index = 0; index < shared.values.length; index++) {
    const value = shared.values[index] as number; // within its length
    let worst = 0;
    const picks: number[] = [];
    for (let wish = 0; wish < targets.length && worst <= bound; wish++) {
      const wanted = (targets[wish] as number) / value; // one target a branch
      const list = (branches[wish] as Ratios).values; // one branch a target
      const pick = nearest(list, wanted);
      picks.push(pick);
      worst = Math.max(worst, Math.abs((list[pick] as number) / wanted - 1)); // found in the list
    }
    if (worst <= bound && picks.length === targets.length) {
      const place = kept.findIndex((other) => worst < other.worst);
      kept.splice(place < 0 ? kept.length : place, 0, { shared: index, branches: picks, worst });
      if (kept.length > most) kept.length = most;
      if (kept.length === most) bound = Math.min(bound, (kept[most - 1] as Candidate).worst); // just filled
    }
    if (index % CHUNK === CHUNK - 1) yield { done: index / shared.values.length, doing: { kind: 'shared' } };
  }
  return kept;
}

/** The exact fraction behind a value, from the lists that made it. */
function rankedOf(ratios: Ratios, index: number): RankedRatio | undefined {
  const value = ratios.values[index] ?? 0;
  for (const q of ratios.lists.drivers) {
    const p = Math.round(value * q);
    if (p / q !== value) continue;
    const factor = greatestCommonFactor(p, q);
    return { driven: p / factor, drivers: q / factor, ratio: rational(p, q), error: subtract(ONE, ONE), size: 0 };
  }
  return undefined;
}

function cheapest(ranked: RankedRatio | undefined, ratios: Ratios, task: Task): CountedTrain | undefined {
  if (!ranked) return undefined;
  let best: CountedTrain | undefined;
  let seen = 0;
  for (const train of trainsOfRatio(ranked, ratios.sets, ratios.lists, task)) {
    if (!best || train.total < best.total) best = train;
    seen++;
    if (seen === 64) break;
  }
  return best;
}

function rowOf(
  candidate: Candidate,
  sharedRatios: Ratios,
  branchRatios: readonly Ratios[],
  wanted: { readonly task: Task; readonly targets: readonly Rational[]; readonly options: JointOptions },
): JointRow | undefined {
  const { task, targets, options } = wanted;
  const sharedRatio = rankedOf(sharedRatios, candidate.shared);
  const shared = cheapest(sharedRatio, sharedRatios, task);
  if (!sharedRatio || !shared) return undefined;
  const branches: JointRow['branches'][number][] = [];
  for (const [index, pick] of candidate.branches.entries()) {
    const [ratios, wish, target] = [branchRatios[index], options.indications[index], targets[index]];
    const own = ratios && rankedOf(ratios, pick);
    const train = ratios && cheapest(own, ratios, task);
    if (!own || !train || !wish || !target) return undefined;
    const ratio = multiply(sharedRatio.ratio, own.ratio);
    const error = subtract(divide(ratio, target), ONE);
    branches.push({
      name: wish.name,
      train,
      ratio,
      digits: digitsOf(ratio),
      error,
      errorPpm: toNumber(error) * 1e6,
    });
  }
  return {
    shared,
    branches,
    worstPpm: Math.max(...branches.map((branch) => Math.abs(branch.errorPpm))),
    total: shared.total + branches.reduce((sum, branch) => sum + branch.train.total, 0),
  };
}

const sameRatios = (a: JointRow, b: JointRow): boolean =>
  a.branches.every((branch, index) => {
    const other = b.branches[index];
    return other !== undefined && compare(magnitude(branch.ratio), magnitude(other.ratio)) === 0;
  });
