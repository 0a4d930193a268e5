/**
 * The exhaustive search for counts.
 *
 * Three ways, all of which go through everything within the limits:
 *  - without limits on pairs: the distinct products of driven and of driver counts are walked together
 *    (products.ts, bestRatios.ts), and the best ratios are split into trains (trainsOfRatio.ts);
 *  - with limits on pairs that rule out little: the same walk, with a bound on the error that grows until enough
 *    ratios have a train that passes;
 *  - with equal sums, or few possible pairs: halves of trains made of allowed pairs meet in the middle (halves.ts).
 */
import { runSteps, type Steps } from '../../steps.ts';
import { compare, digitsOf, fractionText, magnitude, toNumber } from '../turning/rational.ts';
import { BestRatios, type RankedRatio, sweepProductsSteps } from './bestRatios.ts';
import type { CountedTrain, CountsOptions, CountsProgress, CountsResult, CountsRow, NoCounts } from './counts.ts';
import { meetInPairsSteps, pairsAreFew } from './halves.ts';
import { readOptions, type StageSets, stagesOf, type Task } from './limits.ts';
import { distinctProducts } from './products.ts';
import { hasPairLimits, type ProductLists, trainsOfRatio } from './trainsOfRatio.ts';
import { ratiosWithinSteps } from './widening.ts';

/** Trains of one ratio that are looked at before the ones with fewest teeth are listed, and that are counted at most. */
const FIRST_LISTED = 64;
const FIRST_COUNTED = 1_000_000;

/**
 * Searches step by step: `next()` works for some milliseconds and yields how far it is, and the generator returns
 * the result. Stop by not calling it again.
 */
export function* findCountsSteps(options: CountsOptions): Steps<CountsProgress, CountsResult> {
  const task = readOptions(options);
  if (!('target' in task)) return { kind: 'refused', problems: task };
  const rows: CountsRow[] = [];
  for (const count of task.stageNumbers) {
    for (const row of yield* stageSteps(task, count)) merge(rows, row);
  }
  rows.sort((a, b) => compare(magnitude(a.error), magnitude(b.error)) || compare(a.ratio, b.ratio));
  rows.length = Math.min(rows.length, task.best);
  const within = task.within;
  const good = rows.filter((row) => Math.abs(row.errorPpm) <= within * 1e6);
  const [nearest] = rows;
  if (good.length > 0) return { kind: 'found', target: task.target, rows: good };
  return { kind: 'none', target: task.target, why: whyNone(task), ...(nearest ? { nearest } : {}) };
}

/** Runs a search to its end; `progress` may return false to stop it. */
export function findCounts(options: CountsOptions): CountsResult {
  return runSteps(findCountsSteps(options));
}

/** Rows of one ratio from different numbers of stages become one. */
function merge(rows: CountsRow[], row: CountsRow): void {
  const index = rows.findIndex((other) => compare(other.ratio, row.ratio) === 0);
  const found = rows[index];
  if (!found) rows.push(row);
  else {
    rows[index] = {
      ...found,
      trains: [...found.trains, ...row.trains],
      ...(found.trainCount === undefined ? {} : { trainCount: found.trainCount + (row.trainCount ?? 0) }),
    };
  }
}

function* stageSteps(task: Task, count: number): Steps<CountsProgress, readonly CountsRow[]> {
  const sets = stagesOf(task, count);
  if (sets.some((set) => set.drivers.length === 0 || set.driven.length === 0)) return [];
  if (!senseCanBe(task, count)) return [];
  const named = (done: number): CountsProgress => ({ done, doing: { kind: 'stages', stages: count } });
  if (task.options.equalSums !== undefined || (hasPairLimits(task) && !task.worm && pairsAreFew(task, count))) {
    const found = yield* relaySteps(meetInPairsSteps(task, count), named);
    return found.map(({ ratio, trains }) => rowOf(ratio, trains, task));
  }
  yield named(0);
  const lists = productLists(sets, task.targetNumber);
  const best = new BestRatios(task.target, task.targetNumber, task.best);
  yield* relaySteps(sweepProductsSteps(best, task.targetNumber, lists.driven, lists.drivers), named);
  const rows = rowsOf(best.list, sets, lists, task);
  if (rows.length >= best.list.length || best.list.length < task.best) return rows;
  return yield* widenSteps(task, sets, lists, best.bound, rows, named);
}

function* relaySteps<Result>(
  steps: Steps<number, Result>,
  named: (done: number) => CountsProgress,
): Steps<CountsProgress, Result> {
  for (let step = steps.next(); ; step = steps.next()) {
    if (step.done) return step.value;
    yield named(step.value);
  }
}

/** Lets larger and larger errors in until enough ratios have a train that passes. */
function* widenSteps(
  task: Task,
  sets: readonly StageSets[],
  lists: ProductLists,
  start: number,
  first: readonly CountsRow[],
  named: (done: number) => CountsProgress,
): Steps<CountsProgress, readonly CountsRow[]> {
  const rows = [...first];
  const tried = new Set(rows.map((row) => fractionText(row.ratio)));
  const widest = task.within;
  let low = start;
  let high = Math.max(start * 4, 1e-12);
  while (rows.length < task.best && low < widest) {
    const ranked: readonly RankedRatio[] = yield* relaySteps(
      ratiosWithinSteps(task, lists, low, Math.min(high, widest)),
      () => named(0.5),
    );
    for (const ratio of ranked) {
      if (rows.length >= task.best) break;
      // Neighbouring bounds overlap by the rounding of the errors.
      if (tried.has(fractionText(ratio.ratio))) continue;
      tried.add(fractionText(ratio.ratio));
      rows.push(...rowsOf([ratio], sets, lists, task));
      yield named(rows.length / task.best);
    }
    low = high;
    high *= 4;
  }
  return rows;
}

/** The lists of products, without those that cannot meet any product of the other side closely. */
function productLists(sets: readonly StageSets[], target: number): ProductLists {
  const drivenSets = sets.map((set) => set.driven);
  const driverSets = sets.map((set) => set.drivers);
  const product = (of: readonly (readonly number[])[], end: (set: readonly number[]) => number): number =>
    of.reduce((total, set) => total * end(set), 1);
  const least = (set: readonly number[]): number => set[0] ?? 1;
  const most = (set: readonly number[]): number => set[set.length - 1] ?? 1;
  // Twice either way, so that the ten best are found even where the target lies at the edge of what is reached.
  const room = 2;
  const drivenFrom = Math.floor((product(driverSets, least) * target) / room);
  const drivenTo = Math.ceil(product(driverSets, most) * target * room);
  const driversFrom = Math.floor(product(drivenSets, least) / target / room);
  const driversTo = Math.ceil((product(drivenSets, most) / target) * room);
  const reached = drivenTo >= product(drivenSets, least) && drivenFrom <= product(drivenSets, most);
  if (drivenSets.every((set, index) => sameNumbers(set, driverSets[index] ?? []))) {
    const list = reached
      ? distinctProducts(drivenSets, Math.max(1, Math.min(drivenFrom, driversFrom)), Math.max(drivenTo, driversTo))
      : distinctProducts(drivenSets);
    return { driven: list, drivers: list };
  }
  return reached
    ? {
        driven: distinctProducts(drivenSets, Math.max(1, drivenFrom), drivenTo),
        drivers: distinctProducts(driverSets, Math.max(1, driversFrom), driversTo),
      }
    : { driven: distinctProducts(drivenSets), drivers: distinctProducts(driverSets) };
}

const sameNumbers = (a: readonly number[], b: readonly number[]): boolean =>
  a.length === b.length && a.every((value, index) => value === b[index]);

/** Rows of those ratios that have a train within the limits. */
function rowsOf(
  ratios: readonly RankedRatio[],
  sets: readonly StageSets[],
  lists: ProductLists,
  task: Task,
): readonly CountsRow[] {
  const rows: CountsRow[] = [];
  for (const ratio of ratios) {
    const trains: CountedTrain[] = [];
    let count = 0;
    for (const train of trainsOfRatio(ratio, sets, lists, task)) {
      count++;
      if (trains.length < Math.max(FIRST_LISTED, task.trainsPerRatio)) trains.push(train);
      else if (!task.options.countTrains || count >= FIRST_COUNTED) break;
    }
    if (count > 0) rows.push(rowOf(ratio, trains, task, task.options.countTrains ? count : undefined));
  }
  return rows;
}

const rowOf = (ratio: RankedRatio, trains: readonly CountedTrain[], task: Task, trainCount?: number): CountsRow => ({
  ratio: ratio.ratio,
  digits: digitsOf(ratio.ratio),
  error: ratio.error,
  errorPpm: toNumber(ratio.error) * 1e6,
  trains: [...trains].sort((a, b) => a.total - b.total || a.largest - b.largest).slice(0, task.trainsPerRatio),
  ...(trainCount === undefined ? {} : { trainCount }),
});

/** Whether so many stages can have the wanted sense. */
function senseCanBe(task: Task, count: number): boolean {
  const { sense, idlers = true } = task.options;
  return sense === undefined || idlers || task.worm !== undefined || (sense === 'reversed') === (count % 2 === 1);
}

/** Why there is none: out of reach, or nothing within the error or the other limits. */
function whyNone(task: Task): NoCounts {
  const stages = Math.max(...task.stageNumbers);
  const reach = stagesOf(task, stages).reduce(
    (ends, set) => ({
      low: (ends.low * (set.driven[0] ?? 1)) / (set.drivers[set.drivers.length - 1] ?? 1),
      high: (ends.high * (set.driven[set.driven.length - 1] ?? 1)) / (set.drivers[0] ?? 1),
    }),
    { low: 1, high: 1 },
  );
  const isOutside = task.targetNumber > reach.high || task.targetNumber < reach.low;
  return isOutside ? { kind: 'outOfReach', stages, ...reach } : { kind: 'allTried', withinPpm: task.within * 1e6 };
}
