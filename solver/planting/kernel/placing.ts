/** What a planting leaves behind of its steps. */
import type { Plan } from './planSteps.ts';
import type { Ground } from './system.ts';

/** What the steps left behind, for the verdict. */
export interface Placing {
  readonly ground: Ground;
  readonly plan: Plan;
  /** 1 for each rule that only checks. */
  readonly checks: Uint8Array;
  readonly sketch: Float64Array;
  /** How each crossing step met (one of `Meet`), its gap, and the other crossing. */
  readonly meet: Uint8Array;
  /** Which crossing was taken, as in `CrossingTool.slot`. */
  readonly slot: Uint8Array;
  readonly gap: Float64Array;
  readonly other: Float64Array;
  /** Rules that placed a crossing step with more than two loci. */
  readonly pairOf: Map<number, readonly [number, number]>;
  /** Steps whose rules cannot all hold. */
  readonly stuck: number[];
  /** Roots of which it is in doubt whether the rules settle them: to be decomposed. */
  readonly doubted: readonly number[];
}
