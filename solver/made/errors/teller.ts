/** Looks up what effects and trials say of one figure, and ranks what they come from. */
import type { PointId } from '../../movement/ids.ts';
import type { ErrorEffects } from './errorEffects.ts';
import type { ErrorModel, Figure } from './errorModel.ts';
import type { ErrorTrials, FigureTrials } from './errorTrials.ts';
import type { ErrorEffect, ErrorPartOf, FigureSpread, PlaceFound, SourceFound } from './found.ts';

/** Effects below this are rounding, mm. */
const NOTHING = 1e-7;

/** One model with what was found of it. */
export class Teller {
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

  spread(kind: Figure['kind'], index: number): FigureSpread {
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

  place(id: PointId, index: number): PlaceFound {
    const at = this.at('place', index);
    const [x, y] = [this.tried.figures[at]?.sigma ?? 0, this.tried.figures[at + 1]?.sigma ?? 0];
    const covariance = [x * x, this.tried.covariances[index] ?? 0, y * y] as const;
    return { id, across: 2 * x, up: 2 * y, covariance };
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
        // More play gives the teeth more way to part, and less to hold on by: told as a size.
        const room = Math.max(Math.abs(change('tightRoom', index)), Math.abs(change('looseRoom', index)));
        return { on: 'depth', index, change: room, by: 'room' };
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
