/** One error at a time: what each stated error does to every figure, and to first order what all of them come to. */
import type { Steps } from '../../steps.ts';
import type { ErrorModel } from './errorModel.ts';
import type { ErrorSource } from './errorSources.ts';

/** What one error does to every figure. */
export interface SourceEffects {
  readonly source: ErrorSource;
  /**
   * Change of each figure for an error of the source's ±, mm: half the difference of the error one way and the other. For
   * places and holes the change in the direction that does most.
   */
  readonly changes: Float64Array;
  /** Could the movement not be planted with the error one way or the other? */
  readonly breaks: boolean;
}

/** What each error does, and all of them to first order. */
export interface ErrorEffects {
  /** The figures without any error. */
  readonly planned: Float64Array;
  readonly sources: readonly SourceEffects[];
  /** First order, one standard deviation of each figure, mm. */
  readonly sigma: Float64Array;
}

/** Errors between two tellings of progress. */
const TOLD_EVERY = 20;

/**
 * Tries each source's ± alone, both ways, telling what part is done.
 *
 * @throws Error when the settled points are not settled without any error: the planting contradicts itself
 */
export function* errorEffectSteps(model: ErrorModel): Steps<number, ErrorEffects> {
  const errors = new Float64Array(model.parts.length);
  const nothing = model.read(errors);
  if (!nothing) throw new Error('settled points are not settled in a trial without errors');
  const planned = Float64Array.from(nothing);
  const bySource = new Map<
    ErrorSource,
    { squares: Float64Array; signs: Float64Array; breaks: boolean; parts: number }
  >();
  for (const [part, { source }] of model.parts.entries()) {
    if (part % TOLD_EVERY === 0) yield part / model.parts.length;
    const sums = bySource.get(source) ?? {
      squares: new Float64Array(planned.length),
      signs: new Float64Array(planned.length),
      breaks: false,
      parts: 0,
    };
    bySource.set(source, sums);
    sums.parts++;
    const [more, less] = [1, -1].map((sense) => {
      errors[part] = sense * source.plusMinus;
      const row = model.read(errors);
      return row && Float64Array.from(row);
    });
    errors[part] = 0;
    if (!more || !less) {
      sums.breaks = true;
      continue;
    }
    for (let k = 0; k < planned.length; k++) {
      const change = ((more[k] ?? 0) - (less[k] ?? 0)) / 2;
      sums.squares[k] = (sums.squares[k] ?? 0) + change * change;
      sums.signs[k] = change;
    }
  }
  const variance = new Float64Array(planned.length);
  const sources = [...bySource].map(([source, { squares, signs, breaks, parts }]): SourceEffects => {
    const changes = squares.map((square, k) => (parts === 1 && (signs[k] ?? 0) < 0 ? -1 : 1) * Math.sqrt(square));
    squares.forEach((square, k) => {
      // ± is two standard deviations.
      variance[k] = (variance[k] ?? 0) + square / 4;
    });
    return { source, changes, breaks };
  });
  return { planned, sources, sigma: variance.map(Math.sqrt) };
}
