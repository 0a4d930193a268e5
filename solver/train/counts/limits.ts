/** The maker's limits, checked, and turned into the sets of counts that each stage may use. */
import { MAX_TEETH } from '../../movement/index.ts';
import { exactly, type Rational, toNumber } from '../turning/rational.ts';
import type { CountsFault, CountsOptions, CountsProblem, TeethRange } from './counts.ts';

export const MAX_STAGES = 5;
/** Largest product of counts that a double holds exactly. */
const LARGEST_PRODUCT = 2 ** 53;

/** Error beyond which no train is offered unless a tolerance is given, as a fraction: one worse than this serves nobody. */
const WIDEST = 0.1;

/** The counts that one stage may use. */
export interface StageSets {
  readonly drivers: readonly number[];
  readonly driven: readonly number[];
  readonly worm: boolean;
}

/** A search whose options were found sound. */
export interface Task {
  readonly target: Rational;
  readonly targetNumber: number;
  readonly stageNumbers: readonly number[];
  readonly wheels: StageSets;
  readonly worm?: StageSets;
  readonly best: number;
  readonly trainsPerRatio: number;
  /** Largest relative error. */
  readonly within: number;
  readonly options: CountsOptions;
}

/** Largest prime factor; 1 for 1. */
export function largestPrimeOf(count: number): number {
  let left = count;
  let largest = 1;
  for (let prime = 2; prime * prime <= left; prime++) {
    while (left % prime === 0) {
      largest = prime;
      left /= prime;
    }
  }
  return left > 1 ? left : largest;
}

/** Euclid's algorithm on whole numbers ≥ 0. */
export const greatestCommonFactor = (a: number, b: number): number => (b === 0 ? a : greatestCommonFactor(b, a % b));

/** Sets of one stage, in order, so that stages of one kind share their lists. */
export const stagesOf = (task: Task, count: number): readonly StageSets[] =>
  task.worm ? [task.worm, ...Array<StageSets>(count - 1).fill(task.wheels)] : Array<StageSets>(count).fill(task.wheels);

const counts = (range: TeethRange, allowed: (teeth: number) => boolean): readonly number[] =>
  Array.from({ length: range.to - range.from + 1 }, (_, index) => range.from + index).filter(allowed);

/** Tells a fault of one option. */
type Refuse = (field: string, why: CountsFault) => void;

function checkRange(refuse: Refuse, field: string, range: TeethRange, least: number, most = MAX_TEETH): void {
  for (const end of ['from', 'to'] as const) {
    const value = range[end];
    if (!Number.isInteger(value) || value < least || value > most) {
      refuse(`${field}.${end}`, { kind: 'notWhole', found: value, from: least, to: most });
    }
  }
  if (range.to < range.from) refuse(field, { kind: 'notInOrder', from: range.from, to: range.to });
}

function checkPositive(refuse: Refuse, field: string, value: number | undefined): void {
  if (value !== undefined && !(Number.isFinite(value) && value > 0)) {
    refuse(field, { kind: 'notPositive', found: value });
  }
}

function checkCentreDistance({ centreDistance }: CountsOptions, refuse: Refuse): void {
  if (!centreDistance) return;
  if ('module' in centreDistance) checkPositive(refuse, 'centreDistance.module', centreDistance.module);
  else checkPositive(refuse, 'centreDistance.diametralPitch', centreDistance.diametralPitch);
  const { from = 0, to = Number.POSITIVE_INFINITY } = centreDistance;
  if (!(from <= to)) {
    refuse('centreDistance', { kind: 'notInOrder', from: centreDistance.from, to: centreDistance.to });
  }
}

/** Ranges of counts and stages, and that the largest product of counts is still exact. */
function checkRanges(options: CountsOptions, stages: TeethRange, refuse: Refuse): void {
  checkRange(refuse, 'drivers', options.drivers, 1);
  checkRange(refuse, 'driven', options.driven, 1);
  checkRange(refuse, 'stages', stages, 1, MAX_STAGES);
  if (options.worm) {
    checkRange(refuse, 'worm.starts', options.worm.starts, 1, 50);
    checkRange(refuse, 'worm.wheel', options.worm.wheel, 1);
  }
  const most = Math.max(options.drivers.to, options.driven.to, options.worm?.wheel.to ?? 0);
  if (most ** stages.to >= LARGEST_PRODUCT) {
    refuse('stages', { kind: 'beyondExact', stages: stages.to, teeth: most });
  }
}

/** The counts that stages may use; refuses a list that the limits leave empty. */
function setsOf(options: CountsOptions, stages: TeethRange, refuse: Refuse): Pick<Task, 'wheels' | 'worm'> {
  const allowed = allowedCounts(options);
  const wheels = { drivers: counts(options.drivers, allowed), driven: counts(options.driven, allowed), worm: false };
  const worm = options.worm && {
    drivers: counts(options.worm.starts, () => true),
    driven: counts(options.worm.wheel, allowed),
    worm: true,
  };
  const onlyWorm = worm !== undefined && stages.to === 1;
  const lists = [
    ['drivers', onlyWorm ? undefined : wheels.drivers],
    ['driven', onlyWorm ? undefined : wheels.driven],
    ['worm.wheel', worm?.driven],
  ] as const;
  for (const [field, list] of lists) {
    if (list?.length === 0) refuse(field, { kind: 'noneLeft' });
  }
  return { wheels, ...(worm ? { worm } : {}) };
}

/** Reads the options; all problems at once. */
export function readOptions(options: CountsOptions): Task | readonly CountsProblem[] {
  const problems: CountsProblem[] = [];
  const refuse: Refuse = (field, why) => {
    problems.push({ field, why });
  };
  const { best = 10, trainsPerRatio = 3, tolerancePpm } = options;
  const stages = typeof options.stages === 'number' ? { from: options.stages, to: options.stages } : options.stages;
  const target = exactly(options.ratio);
  if (!target || target.n <= 0n) {
    refuse('ratio', { kind: 'noRatio', found: options.ratio });
  }
  checkRanges(options, stages, refuse);
  if (!Number.isInteger(best) || best < 1 || best > 10_000) {
    refuse('best', { kind: 'notWhole', found: best, from: 1, to: 10_000 });
  }
  checkPositive(refuse, 'tolerancePpm', tolerancePpm);
  checkPositive(refuse, 'largestPrime', options.largestPrime);
  checkCentreDistance(options, refuse);
  checkGroups(options, stages, refuse);
  if (problems.length > 0 || !target) return problems;
  const sets = setsOf(options, stages, refuse);
  if (problems.length > 0) return problems;
  return {
    ...sets,
    target,
    targetNumber: toNumber(target),
    stageNumbers: Array.from({ length: stages.to - stages.from + 1 }, (_, index) => stages.from + index),
    best,
    trainsPerRatio,
    within: tolerancePpm === undefined ? WIDEST : tolerancePpm / 1e6,
    options,
  };
}

function allowedCounts(options: CountsOptions): (teeth: number) => boolean {
  const { divisions, largestPrime, onHand } = options;
  const hand = onHand && new Set(onHand);
  const listed = typeof divisions === 'object' ? new Set(divisions) : undefined;
  const divides = typeof divisions === 'function' ? divisions : undefined;
  return (teeth) =>
    (largestPrime === undefined || largestPrimeOf(teeth) <= largestPrime) &&
    (hand === undefined || hand.has(teeth)) &&
    (listed === undefined || listed.has(teeth)) &&
    (divides === undefined || divides(teeth));
}

function checkGroups(options: CountsOptions, stages: TeethRange, refuse: Refuse): void {
  if (options.equalSums === undefined) return;
  if (options.worm) refuse('equalSums', { kind: 'notWithWorm' });
  if (options.equalSums === 'all') return;
  if (stages.from !== stages.to) refuse('equalSums', { kind: 'groupsOfRange' });
  const named = options.equalSums.flat();
  if (new Set(named).size !== named.length) refuse('equalSums', { kind: 'inTwoGroups' });
  const wrong = named.find((stage) => !Number.isInteger(stage) || stage < 0 || stage >= stages.to);
  if (wrong !== undefined) refuse('equalSums', { kind: 'noStage', found: wrong, last: stages.to - 1 });
}
