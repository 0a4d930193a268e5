/**
 * Before cutting: what the errors of making do to every depth and gap, each alone and all together.
 *
 * Read `errorSources.ts` (what may be off), `errorModel.ts` (how it then comes out), `errorEffects.ts` (one at a time),
 * `errorTrials.ts` (all at once). The same movement, errors and seed give the same answer.
 */
import type { PointId, RuleId } from '../../movement/index.ts';
import { ruleWords } from '../../planting/index.ts';
import type { PlacedMovement } from '../../planting/placed.ts';
import { labelsOf } from '../plateView.ts';
import { type ErrorEffects, errorEffects } from './errorEffects.ts';
import { type ErrorModel, errorModel, type Figure } from './errorModel.ts';
import { type ErrorSource, type StatedErrors, USUAL_ERRORS } from './errorSources.ts';
import { type ErrorTrials, errorTrials, type FigureTrials } from './errorTrials.ts';

export interface ErrorsOptions {
  /** ± of what states none; those left out are the usual ones. */
  readonly errors?: Partial<StatedErrors> | undefined;
  /** Default 2000. */
  readonly trials?: number | undefined;
  /** Default 1. */
  readonly seed?: number | undefined;
}

export interface ErrorsProgress {
  /** 0 … 1 */
  readonly done: number;
  readonly says: string;
}

/** What one error does to one depth, gap or check. */
export interface ErrorEffect {
  readonly on: 'depth' | 'gap' | 'check';
  /** Its number in the list of depths, gaps or checks. */
  readonly index: number;
  /**
   * Change for the error's ±, mm. Of a depth that of its distance, or where that stays (`room`) that of the room to
   * binding or letting go.
   */
  readonly change: number;
  readonly by: 'distance' | 'room' | 'gap' | 'off';
}

export interface SourceFound extends ErrorSource {
  /** Most first. */
  readonly does: readonly ErrorEffect[];
  /** With this error alone the movement could not be planted one way or the other. */
  readonly breaks: boolean;
  /** Its part of the variance of all depths and gaps together, 0 … 1. */
  readonly share: number;
}

/** One source's part in what a depth, gap or check may be off by. */
export interface ErrorPartOf {
  /** Number in the list of sources. */
  readonly source: number;
  /** Part of the variance, 0 … 1. */
  readonly share: number;
}

interface Spread {
  readonly planned: number;
  /** ± to first order, and ± of the trials; two standard deviations, mm. */
  readonly plusMinus: number;
  readonly triedPlusMinus: number;
  readonly least: number;
  readonly most: number;
  /** Where it comes from, most first. */
  readonly from: readonly ErrorPartOf[];
}

export interface DepthFound extends Spread {
  readonly rule: RuleId;
  readonly label: string;
  /** Ends of the window of its teeth, mm; undefined where they cannot mesh. */
  readonly window: { readonly deepest: number; readonly deepestBy: string; readonly lostAt: number } | undefined;
  /** Shares of the trials, 0 … 1: binds or bottoms though its bearings give way; only because they give way it does not; lets go. */
  readonly tight: number;
  readonly leans: number;
  readonly loose: number;
}

export interface GapFound extends Spread {
  readonly parts: readonly [string, string];
  readonly label: string;
  /** As planted, without shake, mm; `planned` is at its worst with shake. */
  readonly asPlanted: number;
  readonly wanted: number;
  /** Shares of the trials, 0 … 1. */
  readonly fouls: number;
  readonly tooClose: number;
}

/** A rule that places nothing: how far it comes out from what it asks. */
export interface CheckFound extends Spread {
  readonly rule: RuleId;
  readonly label: string;
}

export interface PlaceFound {
  readonly id: PointId;
  readonly label: string;
  /** ± of the trials across and up, two standard deviations, mm. */
  readonly across: number;
  readonly up: number;
  /** Of the trials, mm²: [xx, xy, yy]. */
  readonly covariance: readonly [number, number, number];
}

export interface ErrorsFound {
  readonly errors: StatedErrors;
  readonly trials: number;
  readonly seed: number;
  /** Trials in which every settled point could be planted; shares and spreads count these. */
  readonly planted: number;
  /** What may be off, the most telling first. */
  readonly sources: readonly SourceFound[];
  readonly depths: readonly DepthFound[];
  readonly gaps: readonly GapFound[];
  readonly checks: readonly CheckFound[];
  readonly places: readonly PlaceFound[];
  /** Rules whose stated ± is not tried, in words: those that set no length. */
  readonly notTried: readonly string[];
}

/** Distances are told apart from the ends of a window by more than the engine's own fineness, mm. */
const FINE = 1e-3;
/** Contact is not overlap, mm. */
const TOUCH = 1e-6;
/** Effects below this are rounding, mm. */
const NOTHING = 1e-7;
/** Part of the progress that the windows of the depths are given. */
const WINDOWS = 0.3;

/** Finds out, telling its progress; stop it by asking for no more. */
export function* findErrors(
  placed: PlacedMovement,
  options: ErrorsOptions = {},
): Generator<ErrorsProgress, ErrorsFound, void> {
  const { trials = 2000, seed = 1 } = options;
  const errors: StatedErrors = { ...USUAL_ERRORS, ...options.errors };
  const making = errorModel(placed, errors);
  let made = making.next();
  for (; !made.done; made = making.next()) {
    const { done, of } = made.value;
    yield { done: (WINDOWS * done) / of, says: `Looking at depth ${done} of ${of}` };
  }
  const model = made.value;
  const effects = errorEffects(model);
  const limits = Float64Array.from(model.figures, ({ kind }) =>
    kind === 'tightRoom' || kind === 'bareRoom' || kind === 'looseRoom' ? -FINE : -TOUCH,
  );
  const running = errorTrials(model, effects.planned, limits, { trials, seed });
  let run = running.next();
  for (; !run.done; run = running.next()) {
    yield { done: WINDOWS + ((1 - WINDOWS) * run.value) / trials, says: `Trial ${run.value} of ${trials}` };
  }
  return foundOf(placed, errors, seed, model, effects, run.value);
}

/** The same in one go. */
export function errorsFound(placed: PlacedMovement, options: ErrorsOptions = {}): ErrorsFound {
  const search = findErrors(placed, options);
  for (;;) {
    const next = search.next();
    if (next.done) return next.value;
  }
}

function foundOf(
  placed: PlacedMovement,
  errors: StatedErrors,
  seed: number,
  model: ErrorModel,
  effects: ErrorEffects,
  tried: ErrorTrials,
): ErrorsFound {
  const teller = new Teller(model, effects, tried);
  const label = labelsOf(placed.movement);
  const words = ruleWords(placed.movement);
  const gaps = teller.gaps.flatMap((index): GapFound[] => {
    const gap = model.gaps[index];
    if (!gap) return [];
    const spread = teller.spread('gap', index);
    const { first, second, planned } = gap;
    const { asPlanted, wanted } = planned;
    const parts = [first.part, second.part] as const;
    const [fouls, tooClose] = [teller.below('gap', index), teller.below('gapRoom', index)];
    return [{ parts, label: `${first.label} and ${second.label}`, asPlanted, wanted, fouls, tooClose, ...spread }];
  });
  const depths = model.depths.map(({ rule, wheels: [a, b], ends }, index): DepthFound => {
    const tight = teller.below('tightRoom', index);
    return {
      rule: rule.id,
      label: `${label(a.arbor)} ${a.teeth} : ${b.teeth} ${label(b.arbor)}`,
      window: ends && { deepest: ends.deepest, deepestBy: ends.deepestBy, lostAt: ends.lostAt },
      tight,
      leans: teller.below('bareRoom', index) - tight,
      loose: teller.below('looseRoom', index),
      ...teller.spread('distance', index),
      from: teller.from(ends ? 'tightRoom' : 'distance', index),
    };
  });
  const ofTried = new Set(model.parts.map(({ source }) => source.of));
  return {
    errors,
    trials: tried.trials,
    seed,
    planted: tried.planted,
    sources: teller.sources,
    depths,
    gaps,
    checks: model.checks.map((rule, index) => ({
      rule: rule.id,
      label: words(rule),
      ...teller.spread('check', index),
    })),
    places: model.points.map((id, index) => teller.place(id, label(id), index)),
    notTried: placed.movement.rules
      .filter(({ id, leaveOut, plusMinus = 0 }) => !leaveOut && plusMinus > 0 && !ofTried.has(id))
      .filter(({ id }) => placed.rules.get(id)?.role === 'places')
      .map(words),
  };
}

/** Looks up what effects and trials say of one figure. */
class Teller {
  readonly sources: readonly SourceFound[];
  /** Gaps that some error reaches; others, such as those of pipes on one axis, are no matter of chance. */
  readonly gaps: readonly number[];
  private readonly figureAt = new Map<string, number>();
  /** Number in the ranked list of each source of the effects. */
  private readonly rankOf: readonly number[];

  constructor(
    private readonly model: ErrorModel,
    private readonly effects: ErrorEffects,
    private readonly tried: ErrorTrials,
  ) {
    model.figures.forEach((figure, at) => {
      this.figureAt.set(nameOf(figure), at);
    });
    this.gaps = model.gaps.flatMap((_, gap) => ((effects.sigma[this.at('gap', gap)] ?? 0) > NOTHING ? [gap] : []));
    const telling = model.figures.flatMap((figure, at) => (isTelling(model, figure) ? [at] : []));
    const weights = effects.sources.map(
      ({ changes }) => telling.reduce((sum, at) => sum + (changes[at] as number) ** 2, 0), // figures of the model
    );
    const whole = weights.reduce((sum, weight) => sum + weight, 0);
    const order = effects.sources.map((_, k) => k).sort((a, b) => (weights[b] ?? 0) - (weights[a] ?? 0) || a - b);
    const ranks: number[] = [];
    order.forEach((k, rank) => {
      ranks[k] = rank;
    });
    this.rankOf = ranks;
    this.sources = order.flatMap((k): SourceFound[] => {
      const found = effects.sources[k];
      if (!found) return [];
      const share = whole > 0 ? (weights[k] ?? 0) / whole : 0;
      return [{ ...found.source, does: this.does(found.changes), breaks: found.breaks, share }];
    });
  }

  spread(kind: Figure['kind'], index: number): Spread {
    const at = this.at(kind, index);
    const { sigma, least, most } = this.tried.figures[at] as FigureTrials; // one a figure
    return {
      planned: this.effects.planned[at] ?? 0,
      plusMinus: 2 * (this.effects.sigma[at] ?? 0),
      triedPlusMinus: 2 * sigma,
      least,
      most,
      from: this.from(kind, index),
    };
  }

  /** Sources of a figure's variance, most first; those below a thousandth are left out. */
  from(kind: Figure['kind'], index: number): readonly ErrorPartOf[] {
    const at = this.at(kind, index);
    const whole = 4 * (this.effects.sigma[at] ?? 0) ** 2;
    if (!(whole > NOTHING ** 2)) return [];
    return this.effects.sources
      .map(({ changes }, k) => ({ source: this.rankOf[k] ?? k, share: (changes[at] ?? 0) ** 2 / whole }))
      .filter(({ share }) => share >= 1e-3)
      .sort((a, b) => b.share - a.share || a.source - b.source);
  }

  below(kind: Figure['kind'], index: number): number {
    const { below } = this.tried.figures[this.at(kind, index)] as FigureTrials; // one a figure
    return below / Math.max(1, this.tried.planted);
  }

  place(id: PointId, label: string, index: number): PlaceFound {
    const at = this.at('place', index);
    const [x, y] = [this.tried.figures[at]?.sigma ?? 0, this.tried.figures[at + 1]?.sigma ?? 0];
    const covariance = [x * x, this.tried.covariances[index] ?? 0, y * y] as const;
    return { id, label, across: 2 * x, up: 2 * y, covariance };
  }

  private at(kind: Figure['kind'], index: number): number {
    return this.figureAt.get(`${kind} ${index}`) ?? -1;
  }

  private does(changes: Float64Array): readonly ErrorEffect[] {
    const change = (kind: Figure['kind'], index: number): number => changes[this.at(kind, index)] ?? 0;
    const effects = [
      ...this.model.depths.map((_, index): ErrorEffect => {
        const distance = change('distance', index);
        if (Math.abs(distance) > NOTHING) return { on: 'depth', index, change: distance, by: 'distance' };
        const [tight, loose] = [change('tightRoom', index), change('looseRoom', index)];
        return { on: 'depth', index, change: Math.abs(tight) >= Math.abs(loose) ? tight : loose, by: 'room' };
      }),
      ...this.gaps.map((gap, index): ErrorEffect => ({ on: 'gap', index, change: change('gap', gap), by: 'gap' })),
      ...this.model.checks.map(
        (_, index): ErrorEffect => ({ on: 'check', index, change: change('check', index), by: 'off' }),
      ),
    ];
    return effects
      .filter((effect) => Math.abs(effect.change) > NOTHING)
      .sort((a, b) => Math.abs(b.change) - Math.abs(a.change));
  }
}

function nameOf(figure: Figure): string {
  switch (figure.kind) {
    case 'gap':
    case 'gapRoom':
      return `${figure.kind} ${figure.gap}`;
    case 'check':
      return `check ${figure.check}`;
    case 'place':
      return figure.axis === 0 ? `place ${figure.point}` : `place ${figure.point} up`;
    default:
      return `${figure.kind} ${figure.depth}`;
  }
}

/** Figures by whose variance sources are ranked: the room of every depth and every gap, each once. */
function isTelling(model: ErrorModel, figure: Figure): boolean {
  if (figure.kind === 'gap') return true;
  if (figure.kind === 'tightRoom') return model.depths[figure.depth]?.ends !== undefined;
  return figure.kind === 'distance' && model.depths[figure.depth]?.ends === undefined;
}
