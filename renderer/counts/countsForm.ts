/** The counts form as typed, and the options of a search that it means. */

import type { Movement } from '../../solver/movement/schema.ts';
import { type DividingKit, exactWays } from '../../solver/teeth/cutting/index.ts';
import {
  type AstronomyConstant,
  CONSTANTS,
  type CountsOptions,
  constantNamed,
  type JointOptions,
  ratioOfPeriods,
} from '../../solver/train/counts/index.ts';
import type { Turning } from '../../solver/train/index.ts';
import { divide, fractionText } from '../../solver/train/turning/rational.ts';
import { noPeriodSays } from '../../solver/words/train/index.ts';

/** As typed; nothing is read before the search is asked for. */
export interface CountsForm {
  from: string;
  to: string;
  stages: string;
  leaves: string;
  teeth: string;
  largestPrime: string;
  /** Largest error, parts per million; empty for the search's own. */
  tolerance: string;
  /** Wheels on hand, counts with spaces between; empty for any. */
  onHand: string;
  /** Which counts the maker can divide: any, those with a direct or simple division, those with any exact one. */
  divisions: 'any' | 'plain' | 'exact';
  /** Limits of every stage's centre distance, mm. */
  nearest: string;
  farthest: string;
  sense: '' | 'same' | 'reversed';
  coprime: boolean;
  equalSums: boolean;
  worm: boolean;
}

/** A field that cannot be read, by its name. */
export interface FormProblem {
  readonly field: string;
  readonly says: string;
}

/** What the form does not hold itself. */
export interface Surroundings {
  readonly constants: readonly AstronomyConstant[];
  readonly kit: DividingKit | undefined;
  /** Size of the teeth, for the limits of distances. */
  readonly size: { readonly module: number } | { readonly diametralPitch: number };
}

/** Several hands that share their first stages. */
export interface Wish {
  name: string;
  period: string;
  stages: 1 | 2;
}

/** Starts from the movement's drive, where it has one. */
export function blankForm(movement: Movement): CountsForm {
  const period = movement.drive?.period;
  return {
    from: period ? `${period.value} ${period.unit}` : '12 h',
    to: 'synodic month',
    stages: '3',
    leaves: '8-20',
    teeth: '20-120',
    largestPrime: '',
    tolerance: '',
    onHand: '',
    divisions: 'any',
    nearest: '',
    farthest: '',
    sense: '',
    coprime: false,
    equalSums: false,
    worm: false,
  };
}

/** The exact period of an arbor, as it may be typed: "43200 s", "86400/7 s"; `undefined` for one that does not turn. */
export function periodOfArbor(turning: Turning, arbor: string): string | undefined {
  const turns = [...turning.arbors.values()].find(({ id }) => id === arbor)?.rate?.turns;
  if (!turns || turns.n === 0n || !turning.drive) return undefined;
  const seconds = divide(turning.drive.periodSeconds, turns.n < 0n ? { n: -turns.n, d: turns.d } : turns);
  return `${fractionText(seconds)} s`;
}

type Limits = Omit<CountsOptions, 'ratio' | 'stages' | 'equalSums' | 'worm' | 'sense'>;

/** Reads fields one by one and remembers what could not be read. */
class Reader {
  readonly problems: FormProblem[] = [];
  private readonly form: CountsForm;

  constructor(form: CountsForm) {
    this.form = form;
  }

  range(field: 'stages' | 'leaves' | 'teeth'): { from: number; to: number } {
    const match = /^\s*(\d+)\s*(?:(?:-|–|to)\s*(\d+))?\s*$/.exec(this.form[field]);
    if (!match) this.refuse(field, `${this.form[field] || 'Nothing'} is no range: write 8-20, or one number.`);
    return { from: Number(match?.[1] ?? 0), to: Number(match?.[2] ?? match?.[1] ?? 0) };
  }

  number(field: 'largestPrime' | 'tolerance' | 'nearest' | 'farthest', example: string): number | undefined {
    const text = this.form[field].trim().replace(',', '.');
    if (text === '') return undefined;
    const value = Number(text);
    if (/^\d*\.?\d+$/.test(text) && value > 0) return value;
    this.refuse(field, `"${text}" is no number greater than 0: write ${example}, or leave it empty.`);
    return undefined;
  }

  counts(): readonly number[] | undefined {
    const words = this.form.onHand.split(/[\s,;]+/).filter(Boolean);
    const wrong = words.find((word) => !/^\d+$/.test(word));
    if (wrong !== undefined) {
      this.refuse('onHand', `"${wrong}" is no count of teeth: write 60 64 64 8, one for each wheel.`);
    }
    return words.length === 0 || wrong !== undefined ? undefined : words.map(Number);
  }

  refuse(field: string, says: string): void {
    this.problems.push({ field, says });
  }
}

function limitsOf(form: CountsForm, read: Reader, { kit, size }: Surroundings): Limits {
  const [drivers, driven] = [read.range('leaves'), read.range('teeth')];
  const largestPrime = read.number('largestPrime', '31');
  const tolerancePpm = read.number('tolerance', '0.5');
  const onHand = read.counts();
  const [from, to] = [read.number('nearest', '20'), read.number('farthest', '60')];
  const most = Math.min(2000, Math.max(drivers.to, driven.to));
  const divisions = form.divisions === 'any' || !kit ? undefined : divisible(most, kit, form.divisions === 'plain');
  return {
    drivers,
    driven,
    coprime: form.coprime,
    ...(largestPrime === undefined ? {} : { largestPrime }),
    ...(tolerancePpm === undefined ? {} : { tolerancePpm }),
    ...(onHand ? { onHand } : {}),
    ...(divisions ? { divisions } : {}),
    ...(from === undefined && to === undefined
      ? {}
      : { centreDistance: { ...size, ...(from === undefined ? {} : { from }), ...(to === undefined ? {} : { to }) } }),
  };
}

/** Counts up to `most` that the kit divides. */
function divisible(most: number, kit: DividingKit, plain: boolean): readonly number[] {
  return Array.from({ length: most }, (_, index) => index + 1).filter((count) => {
    const ways = exactWays(count, kit);
    return plain ? ways.some(({ kind }) => kind === 'direct' || kind === 'simple') : ways.length > 0;
  });
}

/** The options that a form means, or what is wrong with it. */
type Read<Options> = { readonly options: Options } | { readonly problems: readonly FormProblem[] };

/** Options of the search for one train, or every field that cannot be read. */
export function optionsOf(form: CountsForm, around: Surroundings): Read<CountsOptions> {
  const read = new Reader(form);
  const ratio = ratioOfPeriods(form.from, form.to, around.constants);
  if (ratio.kind === 'refused') read.refuse(ratio.field, noPeriodSays(ratio));
  const stages = read.range('stages');
  const limits = limitsOf(form, read, around);
  if (read.problems.length > 0 || ratio.kind === 'refused') return { problems: read.problems };
  return {
    options: {
      ...limits,
      ratio: fractionText(ratio.ratio),
      stages,
      ...(form.sense === '' ? {} : { sense: form.sense }),
      ...(form.equalSums ? { equalSums: 'all' as const } : {}),
      ...(form.worm ? { worm: { starts: { from: 1, to: 2 }, wheel: limits.driven } } : {}),
    },
  };
}

/** Options of the search for several hands, or every field that cannot be read. */
export function jointOptionsOf(
  form: CountsForm,
  sharedStages: number,
  wishes: readonly Wish[],
  around: Surroundings,
): Read<JointOptions> {
  const read = new Reader(form);
  const indications = wishes.flatMap((wish, index) => {
    const ratio = ratioOfPeriods(form.from, wish.period, around.constants);
    if (ratio.kind === 'ratio') return [{ name: wish.name, ratio: fractionText(ratio.ratio), stages: wish.stages }];
    const field = ratio.field === 'from' ? 'from' : `wish${index}`;
    if (!read.problems.some((problem) => problem.field === field)) read.refuse(field, noPeriodSays(ratio));
    return [];
  });
  const limits = limitsOf(form, read, around);
  if (read.problems.length > 0) return { problems: read.problems };
  return { options: { ...limits, sharedStages, indications } };
}

/** A typed period as the movement states one, with the source of a named constant; `undefined` for a fraction. */
export function statedPeriod(text: string, constants: readonly AstronomyConstant[] = CONSTANTS) {
  const plain = text.trim();
  const named = constantNamed(plain, constants);
  if (named) return { period: { value: Number(named.value), unit: named.unit }, source: named.source };
  const match = /^([\d.e+-]+)\s*(s|min|h|d)$/i.exec(plain);
  const unit = match?.[2]?.toLowerCase();
  const value = Number(match?.[1]);
  if (unit !== 's' && unit !== 'min' && unit !== 'h' && unit !== 'd') return undefined;
  return Number.isFinite(value) && value > 0 ? { period: { value, unit } } : undefined;
}
