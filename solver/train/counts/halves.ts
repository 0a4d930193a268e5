/**
 * Trains made of allowed pairs of wheels, found by halves that meet in the middle.
 *
 * Where stages must have one sum of teeth, the pairs of each sum are few (at most one for each count), so halves of
 * trains can be listed outright: for every half the complement that would hit the target is looked up in the other,
 * sorted half. Groups of stages with a sum of their own become one list of group options; the groups are shared out
 * to two halves. Where only pair limits hold and the pairs are few, every stage is a group of its own.
 */
import type { Steps } from '../../steps.ts';
import { BestRatios, type RankedRatio } from './bestRatios.ts';
import type { CountedTrain, Stage } from './counts.ts';
import type { Task } from './limits.ts';
import { pairAllowed, shelfAllows, trainOf } from './trainsOfRatio.ts';

/** Halves with more rows than this would not fit the memory set aside (about 60 bytes a row). */
const MOST_ROWS = 4_000_000;

/** Counts of one stage. */
interface Pair {
  readonly driver: number;
  readonly driven: number;
}

/** One half of a train in many ways: products of its counts, and the pairs used, `width` a row. */
interface Half {
  readonly rows: number;
  readonly width: number;
  readonly drivers: Float64Array;
  readonly driven: Float64Array;
  readonly picks: Int32Array;
  /** Rows in rising order of driven/drivers. */
  readonly order: Uint32Array;
}

/** A ratio with the trains of allowed pairs that make it. */
export interface PairResult {
  readonly ratio: RankedRatio;
  readonly trains: readonly CountedTrain[];
}

function allowedPairs(task: Task): readonly Pair[] {
  const allowed = pairAllowed(task);
  return task.wheels.drivers.flatMap((driver) =>
    task.wheels.driven.filter((driven) => allowed(driver, driven)).map((driven) => ({ driver, driven })),
  );
}

/** Multisets of `size` out of `count`. */
function waysOf(count: number, size: number): number {
  let ways = 1;
  for (let step = 0; step < size; step++) ways = (ways * (count + step)) / (step + 1);
  return ways;
}

/** Whether half a train of so many stages can be listed outright. */
export const pairsAreFew = (task: Task, count: number): boolean =>
  waysOf(allowedPairs(task).length, Math.ceil(count / 2)) <= MOST_ROWS;

/** Multisets of `size` pairs, as rows of pair indices, rising. */
function choose(pairs: readonly number[], size: number): Int32Array {
  const rows = waysOf(pairs.length, size);
  const picks = new Int32Array(rows * size);
  const at = new Int32Array(size);
  for (let row = 0; row < rows; row++) {
    for (let place = 0; place < size; place++) picks[row * size + place] = pairs[at[place] ?? 0] ?? 0;
    let place = size - 1;
    while (place >= 0 && at[place] === pairs.length - 1) place--;
    if (place < 0) break;
    at.fill((at[place] ?? 0) + 1, place);
  }
  return picks;
}

function halfOf(picks: Int32Array, width: number, pairs: readonly Pair[]): Half {
  const rows = width === 0 ? 1 : picks.length / width;
  const drivers = new Float64Array(rows).fill(1);
  const driven = new Float64Array(rows).fill(1);
  const value = new Float64Array(rows);
  const order = new Uint32Array(rows);
  for (let row = 0; row < rows; row++) {
    let p = 1;
    let q = 1;
    for (let place = 0; place < width; place++) {
      const pair = pairs[picks[row * width + place] as number] as Pair; // indices made by `choose`
      p *= pair.driven;
      q *= pair.driver;
    }
    driven[row] = p;
    drivers[row] = q;
    value[row] = p / q;
    order[row] = row;
  }
  order.sort((a, b) => (value[a] as number) - (value[b] as number)); // rows below its length
  return { rows, width, drivers, driven, picks, order };
}

function bySum(pairs: readonly Pair[]): readonly (readonly number[])[] {
  const sums = new Map<number, number[]>();
  pairs.forEach((pair, index) => {
    const sum = pair.driver + pair.driven;
    const list = sums.get(sum);
    if (list) list.push(index);
    else sums.set(sum, [index]);
  });
  return [...sums.values()];
}

/** All ways of a group of stages that share one sum; a single stage is any pair. */
function groupPicks(size: number, pairs: readonly Pair[], sums: readonly (readonly number[])[]): Int32Array {
  if (size === 1) return Int32Array.from(pairs.keys());
  const parts = sums.map((list) => choose(list, size));
  const picks = new Int32Array(parts.reduce((total, part) => total + part.length, 0));
  let at = 0;
  for (const part of parts) {
    picks.set(part, at);
    at += part.length;
  }
  return picks;
}

/** Every row of `a` with every row of `b`. */
function crossed(a: Int32Array, aWidth: number, b: Int32Array, bWidth: number): Int32Array {
  if (aWidth === 0) return b;
  const [aRows, bRows, width] = [a.length / aWidth, b.length / bWidth, aWidth + bWidth];
  if (aRows * bRows > MOST_ROWS) throw new RangeError(`half a train has ${aRows * bRows} ways; at most ${MOST_ROWS}`);
  const picks = new Int32Array(aRows * bRows * width);
  for (let row = 0; row < aRows * bRows; row++) {
    const [left, right] = [Math.floor(row / bRows), row % bRows];
    picks.set(a.subarray(left * aWidth, (left + 1) * aWidth), row * width);
    picks.set(b.subarray(right * bWidth, (right + 1) * bWidth), row * width + aWidth);
  }
  return picks;
}

/** Pairs of halves that together make all trains of so many stages. */
function* halvesOf(task: Task, count: number, pairs: readonly Pair[]): Generator<readonly [Half, Half], void, void> {
  const { equalSums } = task.options;
  const sums = bySum(pairs);
  if (equalSums === 'all' && count > 1) {
    const first = Math.ceil(count / 2);
    for (const list of sums) {
      const left = halfOf(choose(list, first), first, pairs);
      yield [left, first * 2 === count ? left : halfOf(choose(list, count - first), count - first, pairs)];
    }
    return;
  }
  const groups = typeof equalSums === 'object' ? equalSums.map((group) => group.length).filter((size) => size > 0) : [];
  const single = count - groups.reduce((total, size) => total + size, 0);
  const sizes = [...groups, ...Array<number>(single).fill(1)].sort((a, b) => b - a);
  // The widest group first, then always to the narrower half.
  const sides: [number[], number[]] = [[], []];
  const width = (side: readonly number[]): number => side.reduce((total, size) => total + size, 0);
  for (const size of sizes) (width(sides[0]) <= width(sides[1]) ? sides[0] : sides[1]).push(size);
  const made = sides.map((side) => {
    let picks: Int32Array = new Int32Array(0);
    let across = 0;
    for (const size of side) {
      picks = crossed(picks, across, groupPicks(size, pairs, sums), size);
      across += size;
    }
    return halfOf(picks, across, pairs);
  });
  const [left, right] = made;
  if (left && right) yield [left, right];
}

/** Calls `meet` for all rows of two halves whose ratio is within the bound, rows given by index. */
function sweepHalves(
  left: Half,
  right: Half,
  target: number,
  bound: () => number,
  meet: (a: number, b: number) => void,
): void {
  // Array kernel: indices stay inside the lists by the loop bounds.
  const ratio = (half: Half, place: number): number => {
    const row = half.order[place] as number;
    return (half.driven[row] as number) / (half.drivers[row] as number);
  };
  let at = right.rows - 1;
  for (let place = 0; place < left.rows; place++) {
    const here = ratio(left, place);
    while (at >= 0 && here * ratio(right, at) > target) at--;
    for (let up = at + 1; up < right.rows && here * ratio(right, up) <= target * (1 + bound() + 1e-14); up++) {
      meet(left.order[place] as number, right.order[up] as number);
    }
    for (let down = at; down >= 0 && here * ratio(right, down) >= target * (1 - bound() - 1e-14); down--) {
      meet(left.order[place] as number, right.order[down] as number);
    }
  }
}

/** The best distinct ratios of trains made of allowed pairs, with their trains. Yields the share done. */
export function* meetInPairsSteps(task: Task, count: number): Steps<number, readonly PairResult[]> {
  const pairs = allowedPairs(task);
  if (pairs.length === 0) return [];
  const shelf = shelfAllows(task);
  const target = task.targetNumber;
  const best = new BestRatios(task.target, target, task.best, task.within);
  const stagesAt = (left: Half, a: number, right: Half, b: number): readonly Stage[] =>
    [
      ...left.picks.subarray(a * left.width, (a + 1) * left.width),
      ...right.picks.subarray(b * right.width, (b + 1) * right.width),
    ]
      .sort((x, y) => x - y)
      .map((index) => pairs[index] as Pair); // indices made by `choose`
  const trains = new Map<string, Map<string, CountedTrain>>();
  const all = [...halvesOf(task, count, pairs)];
  let done = 0;
  for (const collect of [false, true]) {
    for (const [left, right] of all) {
      sweepHalves(
        left,
        right,
        target,
        () => best.bound,
        (a, b) => {
          const driven = (left.driven[a] as number) * (right.driven[b] as number); // rows of the halves
          const drivers = (left.drivers[a] as number) * (right.drivers[b] as number); // rows of the halves
          if (!collect) {
            if (task.options.onHand === undefined || shelf(stagesAt(left, a, right, b))) best.offer(driven, drivers);
            return;
          }
          const known = best.list.find(
            (ratio) => ratio.driven * (drivers / ratio.drivers) === driven && drivers % ratio.drivers === 0,
          );
          const stages = known && stagesAt(left, a, right, b);
          const train = stages && shelf(stages) ? trainOf(stages, task) : undefined;
          if (!known || !train) return;
          const key = `${known.driven}/${known.drivers}`;
          const list = trains.get(key) ?? new Map<string, CountedTrain>();
          trains.set(key, list);
          if (list.size < 10_000) {
            list.set(train.stages.map((stage) => `${stage.driver}:${stage.driven}`).join(' '), train);
          }
        },
      );
      done++;
      if (done % 16 === 0) yield done / (2 * all.length);
    }
  }
  return best.list.map((ratio) => ({
    ratio,
    trains: [...(trains.get(`${ratio.driven}/${ratio.drivers}`)?.values() ?? [])],
  }));
}
