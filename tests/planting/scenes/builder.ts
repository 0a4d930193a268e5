/** Builds kernel networks by hand, for tests and benchmarks. */
import { type Network, RuleKind, type RuleKindCode } from '../../../solver/planting/network.ts';

export interface DraftRule {
  readonly kind: RuleKindCode;
  readonly points: readonly number[];
  readonly values?: readonly number[];
}

export interface Draft {
  /** Sketch places. */
  readonly at: readonly (readonly [number, number])[];
  readonly held?: readonly number[];
  readonly rules: readonly DraftRule[];
  /** Recorded crossings: point, side (1 left, 2 right, 3 ahead, 4 behind), from, to. */
  readonly sides?: readonly (readonly [number, number, number, number])[];
}

export const distance = (a: number, b: number, length: number): DraftRule => ({
  kind: RuleKind.distance,
  points: [a, b],
  values: [length],
});

export function networkFrom(draft: Draft): Network {
  const pointCount = draft.at.length;
  const ruleCount = draft.rules.length;
  const network: Network = {
    pointCount,
    ruleCount,
    coords: Float64Array.from(draft.at.flat()),
    held: new Uint8Array(pointCount),
    kinds: Uint8Array.from(draft.rules, (rule) => rule.kind),
    points: new Int32Array(4 * ruleCount).fill(-1),
    values: new Float64Array(3 * ruleCount),
    sides: new Uint8Array(pointCount),
    sideFrom: new Int32Array(pointCount).fill(-1),
    sideTo: new Int32Array(pointCount).fill(-1),
  };
  for (const i of draft.held ?? []) network.held[i] = 1;
  draft.rules.forEach((rule, r) => {
    network.points.set(rule.points, 4 * r);
    network.values.set(rule.values ?? [], 3 * r);
  });
  for (const [point, side, from, to] of draft.sides ?? []) {
    network.sides[point] = side;
    network.sideFrom[point] = from;
    network.sideTo[point] = to;
  }
  return network;
}
