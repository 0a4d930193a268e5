/**
 * All trains of a ratio: every way of writing it as driven counts over driver counts, paired into stages.
 *
 * A ratio p/q in lowest terms is met by the products p·t and q·t for any t for which both are products of counts
 * within the limits. Each product is split into counts; which driver stands with which driven wheel does not change
 * the ratio, so the pairing that suits the limits is looked for, the most even one first.
 */

import { moduleOf } from '../../teeth/index.ts';
import type { RankedRatio } from './bestRatios.ts';
import type { CountedTrain, Stage } from './counts.ts';
import { greatestCommonFactor, largestPrimeOf, type StageSets, type Task } from './limits.ts';
import { holds, lowerBound } from './products.ts';

/** Ways of writing `product` with one count from each set, rising where neighbouring sets are the same. */
export function* splits(
  product: number,
  sets: readonly (readonly number[])[],
  from = 0,
  least = 0,
): Generator<readonly number[], void, void> {
  const set = sets[from];
  if (set === undefined) {
    if (product === 1) yield [];
    return;
  }
  const left = sets.length - from;
  const same = sets[from + 1] === set;
  for (const count of set) {
    if (count < least || product % count !== 0) continue;
    // Rising counts of one set: the first cannot exceed the root of what is left.
    if (same && sets.every((other, index) => index < from || other === set) && count ** left > product * (1 + 1e-9)) {
      break;
    }
    for (const rest of splits(product / count, sets, from + 1, same ? count : 0)) yield [count, ...rest];
  }
}

/** Limits that look at two counts together. */
export function pairAllowed(task: Task): (driver: number, driven: number) => boolean {
  const { coprime, centreDistance } = task.options;
  const half = centreDistance ? moduleOf(centreDistance) / 2 : 0;
  const from = centreDistance?.from ?? 0;
  const to = centreDistance?.to ?? Number.POSITIVE_INFINITY;
  return (driver, driven) => {
    if (coprime && greatestCommonFactor(driver, driven) !== 1) return false;
    const distance = half * (driver + driven);
    return !centreDistance || (distance >= from - 1e-9 && distance <= to + 1e-9);
  };
}

/** Whether a stage is limited as a pair, so that its two counts cannot be chosen apart. */
export const hasPairLimits = (task: Task): boolean =>
  task.options.coprime === true || task.options.centreDistance !== undefined;

/** Whether no more wheels are used than lie on the shelf. */
export function shelfAllows(task: Task): (stages: readonly Stage[]) => boolean {
  const { onHand } = task.options;
  if (!onHand) return () => true;
  return (stages) => {
    const shelf = new Map<number, number>();
    for (const teeth of onHand) shelf.set(teeth, (shelf.get(teeth) ?? 0) + 1);
    return stages
      .flatMap((stage) => (stage.worm ? [stage.driven] : [stage.driver, stage.driven]))
      .every((teeth) => {
        const left = shelf.get(teeth) ?? 0;
        shelf.set(teeth, left - 1);
        return left > 0;
      });
  };
}

/** The most even pairing of drivers with driven wheels that the limits allow. */
function pairUp(
  driven: readonly number[],
  drivers: readonly number[],
  sets: readonly StageSets[],
  allowed: (driver: number, driven: number) => boolean,
): readonly Stage[] | undefined {
  const used = new Set<number>();
  const stages: Stage[] = [];
  const place = (index: number): boolean => {
    const wheel = driven[index];
    const kind = sets[index];
    if (wheel === undefined || kind === undefined) return true;
    // Both lists rise, so taking drivers in order keeps the stage ratios even.
    for (let other = 0; other < drivers.length; other++) {
      const driver = drivers[other];
      if (driver === undefined || used.has(other) || sets[other] !== kind) continue;
      if (!kind.worm && !allowed(driver, wheel)) continue;
      used.add(other);
      stages.push(kind.worm ? { driver, driven: wheel, worm: true } : { driver, driven: wheel });
      if (place(index + 1)) return true;
      stages.pop();
      used.delete(other);
    }
    return false;
  };
  return place(0) ? stages : undefined;
}

/** A train with its totals and what its sense needs; undefined where the sense cannot be had. */
export function trainOf(stages: readonly Stage[], task: Task): CountedTrain | undefined {
  const { sense, idlers = true } = task.options;
  const worm = stages.some((stage) => stage.worm);
  const reversed = stages.length % 2 === 1;
  const wrongWay = !worm && sense !== undefined && (sense === 'reversed') !== reversed;
  if (wrongWay && !idlers) return undefined;
  const teeth = stages.flatMap((stage) => (stage.worm ? [stage.driven] : [stage.driver, stage.driven]));
  return {
    stages,
    total: teeth.reduce((sum, count) => sum + count, 0),
    largest: Math.max(...teeth),
    largestPrime: Math.max(...teeth.map(largestPrimeOf)),
    ...(worm ? {} : { reversed }),
    idlers: wrongWay ? 1 : 0,
  };
}

/** Products of the driven and of the driver counts within the limits, both rising. */
export interface ProductLists {
  readonly driven: Float64Array;
  readonly drivers: Float64Array;
}

/** Multipliers t for which both p·t and q·t are products within the limits. */
function* multipliers(ratio: RankedRatio, lists: ProductLists): Generator<number, void, void> {
  const { driven, drivers } = lists;
  const largest = Math.min(
    (driven[driven.length - 1] ?? 0) / ratio.driven,
    (drivers[drivers.length - 1] ?? 0) / ratio.drivers,
  );
  const least = Math.max((driven[0] ?? 1) / ratio.driven, (drivers[0] ?? 1) / ratio.drivers);
  if (largest - least <= drivers.length) {
    for (let times = Math.max(1, Math.ceil(least)); times <= largest; times++) {
      if (holds(drivers, ratio.drivers * times) && holds(driven, ratio.driven * times)) yield times;
    }
    return;
  }
  for (let index = lowerBound(drivers, ratio.drivers * least); index < drivers.length; index++) {
    const times = (drivers[index] ?? 0) / ratio.drivers;
    if (Number.isInteger(times) && holds(driven, ratio.driven * times)) yield times;
  }
}

/** Every distinct train of the ratio within the limits, roughly from few teeth to many. */
export function* trainsOfRatio(
  ratio: RankedRatio,
  sets: readonly StageSets[],
  lists: ProductLists,
  task: Task,
): Generator<CountedTrain, void, void> {
  const allowed = pairAllowed(task);
  const shelf = shelfAllows(task);
  const drivenSets = sets.map((stage) => stage.driven);
  const driverSets = sets.map((stage) => stage.drivers);
  for (const times of multipliers(ratio, lists)) {
    const driverWays = [...splits(ratio.drivers * times, driverSets)];
    for (const driven of splits(ratio.driven * times, drivenSets)) {
      for (const drivers of driverWays) {
        const stages = pairUp(driven, drivers, sets, allowed);
        const train = stages && shelf(stages) ? trainOf(stages, task) : undefined;
        if (train) yield train;
      }
    }
  }
}
