/**
 * Before cutting: what the errors of making do to every depth and gap, each alone and all together.
 *
 * Read `errorSources.ts` (what may be off), `errorModel.ts` (how it then comes out), `errorEffects.ts` (one at a time),
 * `errorTrials.ts` (all at once). The same movement, errors and seed give the same answer.
 */

import type { PlacedMovement } from '../../planting/placed.ts';
import { runSteps, type Steps } from '../../steps.ts';
import { GAUGE, TOUCH } from '../../tolerances.ts';
import { type ErrorEffects, errorEffectSteps } from './errorEffects.ts';
import { type ErrorModel, errorModelSteps } from './errorModel.ts';
import { type StatedErrors, USUAL_ERRORS } from './errorSources.ts';
import { type ErrorTrials, errorTrialSteps } from './errorTrials.ts';
import type { DepthFound, ErrorsFound, GapFound } from './found.ts';
import { Teller } from './teller.ts';

/** How errors are looked for. */
export interface ErrorsOptions {
  /** ± of what states none; those left out are the usual ones. */
  readonly errors?: Partial<StatedErrors> | undefined;
  /** Default 2000. */
  readonly trials?: number | undefined;
  /** Default 1. */
  readonly seed?: number | undefined;
}

/** How far the search is. */
export interface ErrorsProgress {
  /** 0 … 1 */
  readonly done: number;
  readonly doing: ErrorsDoing;
}

/** What is under way: window number `at` of `of`, each error alone, or trial `at` of `of`. */
export type ErrorsDoing =
  | { readonly kind: 'depths'; readonly at: number; readonly of: number }
  | { readonly kind: 'alone' }
  | { readonly kind: 'trials'; readonly at: number; readonly of: number };

/** Parts of the progress that the windows of the depths, and each error alone, are given. */
const WINDOWS = 0.3;
const ALONE = 0.1;

/** Finds out, telling its progress; stop it by asking for no more. */
export function* findErrorsSteps(
  placed: PlacedMovement,
  options: ErrorsOptions = {},
): Steps<ErrorsProgress, ErrorsFound> {
  const { trials = 2000, seed = 1 } = options;
  const errors: StatedErrors = { ...USUAL_ERRORS, ...options.errors };
  const making = errorModelSteps(placed, errors);
  let made = making.next();
  for (; !made.done; made = making.next()) {
    const { done, of } = made.value;
    yield { done: (WINDOWS * done) / of, doing: { kind: 'depths', at: done, of } };
  }
  const model = made.value;
  const alone = errorEffectSteps(model);
  let one = alone.next();
  for (; !one.done; one = alone.next()) {
    yield { done: WINDOWS + ALONE * one.value, doing: { kind: 'alone' } };
  }
  const effects = one.value;
  const limits = Float64Array.from(model.figures, ({ kind }) =>
    kind === 'tightRoom' || kind === 'bareRoom' || kind === 'looseRoom' ? -GAUGE : -TOUCH,
  );
  model.countUnplaced();
  const running = errorTrialSteps(model, effects.planned, limits, { trials, seed });
  let run = running.next();
  for (; !run.done; run = running.next()) {
    yield {
      done: WINDOWS + ALONE + ((1 - WINDOWS - ALONE) * run.value) / trials,
      doing: { kind: 'trials', at: run.value, of: trials },
    };
  }
  return foundOf(placed, errors, seed, model, effects, run.value);
}

/** The same in one go. */
export function findErrors(placed: PlacedMovement, options: ErrorsOptions = {}): ErrorsFound {
  return runSteps(findErrorsSteps(placed, options));
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
  const gaps = teller.gaps.flatMap((index): GapFound[] => {
    const gap = model.gaps[index];
    if (!gap) return [];
    const spread = teller.spread('gap', index);
    const { first, second, planned } = gap;
    const { asPlanted, wanted } = planned;
    const parts = [first.part, second.part] as const;
    const [fouls, tooClose] = [teller.below('gap', index), teller.below('gapRoom', index)];
    return [{ parts, asPlanted, wanted, fouls, tooClose, ...spread }];
  });
  const depths = model.depths.map(({ rule, ends }, index): DepthFound => {
    const tight = teller.below('tightRoom', index);
    return {
      rule: rule.id,
      window: ends && { deepest: ends.deepest, deepestBy: ends.deepestBy, lostAt: ends.lostAt },
      tight,
      bearingsGive: teller.below('bareRoom', index) - tight,
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
    unplaced: model.unplaced().map(({ id, trials }) => ({ id, trials })),
    sources: teller.sources,
    depths,
    gaps,
    checks: model.checks.map((rule, index) => ({
      rule: rule.id,
      ...teller.spread('check', index),
    })),
    places: model.points.map((id, index) => teller.place(id, index)),
    notTried: placed.movement.rules
      .filter(({ id, leaveOut, plusMinus = 0 }) => !leaveOut && plusMinus > 0 && !ofTried.has(id))
      .filter(({ id }) => placed.rules.get(id)?.role === 'places')
      .map(({ id }) => id),
  };
}
