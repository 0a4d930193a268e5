/** Which points are derived exactly from others, and equations written in the points that are not. */
import { FIRST_EXACT_KIND } from '../kernel/residual.ts';
import { type Derivation, derivationOf } from './derivedPoints.ts';
import type { GradientTerm, StepEquation } from './equation.ts';
import type { PlacementIndex } from './placementIndex.ts';

/** Which points are derived, and from what. */
export class Derivations {
  readonly #of = new Map<number, Derivation>();
  readonly #rules = new Set<number>();

  /** Starts from the points that are held or that a step places by itself, and follows the exact rules from there. */
  constructor(index: PlacementIndex) {
    const { network } = index.ground;
    const known = new Uint8Array(network.held);
    for (const step of index.result.steps) {
      if (step.kind === 'derived' || step.kind === 'given') continue;
      for (const point of step.points) known[point] = 1;
    }
    const unneeded = new Set([...index.result.spare, ...index.result.disagreements.flatMap(({ rules }) => rules)]);
    let waiting: { rule: number; points: number[] }[] = [];
    for (let rule = 0; rule < network.ruleCount; rule++) {
      if ((network.kinds[rule] ?? 0) < FIRST_EXACT_KIND || unneeded.has(rule) || index.result.checks[rule]) continue;
      waiting.push({ rule, points: index.pointsOfRule(rule) });
    }
    for (let before = -1; before !== waiting.length; ) {
      before = waiting.length;
      waiting = waiting.filter(({ rule, points }) => {
        const open = points.filter((point) => known[point] !== 1);
        const [point] = open;
        if (point === undefined || open.length > 1) return open.length > 1;
        const derivation = derivationOf(network, rule, point);
        if (!derivation) return false;
        this.#of.set(point, derivation);
        this.#rules.add(rule);
        known[point] = 1;
        return false;
      });
    }
  }

  isDerived(point: number): boolean {
    return this.#of.has(point);
  }

  /** Is the rule used to derive a point, so that it holds by itself? */
  isDeriving(rule: number): boolean {
    return this.#rules.has(rule);
  }

  /** An equation with its derived points replaced by what they follow from. */
  reduced(source: number, terms: readonly GradientTerm[]): StepEquation {
    const gradients = new Map<number, [number, number]>();
    const noises: { source: number; factor: number }[] = [];
    for (const term of terms) {
      this.spread(
        term,
        ({ point, gx, gy }) => {
          const known = gradients.get(point) ?? [0, 0];
          gradients.set(point, [known[0] + gx, known[1] + gy]);
        },
        (noise, factor) => noises.push({ source: noise, factor }),
      );
    }
    return { source, gradients, noises };
  }

  /** Hands the gradient of one point on to the points it follows from, and to the errors of the rules between. */
  spread(
    term: GradientTerm,
    toPoint: (term: GradientTerm) => void,
    toNoise: (source: number, factor: number) => void,
  ): void {
    const waiting = [term];
    for (let next = waiting.pop(); next; next = waiting.pop()) {
      const { gx, gy } = next;
      const derivation = this.#of.get(next.point);
      if (!derivation) {
        toPoint(next);
        continue;
      }
      const [a, b, c, d] = derivation.error;
      toNoise(2 * derivation.rule, gx * a + gy * c);
      toNoise(2 * derivation.rule + 1, gx * b + gy * d);
      for (const { point, matrix } of derivation.from) {
        waiting.push({ point, gx: gx * matrix[0] + gy * matrix[2], gy: gx * matrix[1] + gy * matrix[3] });
      }
    }
  }
}
