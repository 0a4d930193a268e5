/** A finding: anything that a check wants the maker to see. */

import type { Point } from '../../geometry/index.ts';
import type { PartId, RuleId } from '../../movement/ids.ts';
import type { Edit } from '../../movement/index.ts';
import type { Movement } from '../../movement/schema.ts';
import type { Advice } from '../remedies/adviceKinds.ts';
import type { CureDeed } from '../remedies/deed.ts';
import type { FindingCause } from './cause.ts';

/** One thing that a check found, with the parts it is about. */
export interface Finding {
  /** Stable: kind and parts joined; the same fault has the same key in every run. */
  readonly key: string;
  readonly kind:
    | 'fouls'
    | 'tooClose'
    | 'depth'
    | 'size'
    | 'turning'
    | 'ring'
    | 'bearing'
    | 'body'
    | 'post'
    | 'stack'
    | 'planting'
    | 'assembly'
    | 'case';
  readonly severity: 'stops' | 'warns' | 'notes';
  readonly parts: readonly PartId[];
  /** Smallest gap, mm (negative: overlap), and the limit it was held against. */
  readonly gap?: number;
  readonly wanted?: number;
  /** For an overlap: the least movement that ends it, where that is more than the overlap, mm. */
  readonly wayOut?: number;
  /** For parts that stand in each other and are parted sooner in height: what would clear them in plan, mm. */
  readonly sideways?: number;
  /** All three values of the gap, mm. */
  readonly gaps?: { readonly asPlanted: number; readonly withShake: number; readonly withPlusMinus: number };
  /** Which of the three values decided: as planted, with shake, or with the ± of the planting. */
  readonly value?: 'asPlanted' | 'withShake' | 'withPlusMinus';
  /** Where to look: the two nearest points, or the place of the part. */
  readonly at?: readonly [Point, Point];
  /** What is wrong, for whoever says it: with `gap`, `wanted` and `value` it is all that a sentence needs. */
  readonly cause: FindingCause;
  /** Filled by `withRemedies` only: each remedy costs a planting and a check. */
  readonly remedies?: readonly Remedy[];
  /** Why there is no remedy, and what to try; filled by `withRemedies` where it found none. */
  readonly advice?: Advice;
}

/** The key of the finding that rules disagree. */
export function keyOfRules(rules: readonly RuleId[]): string {
  return `planting ${[...rules].sort().join(' ')}`;
}

/** How much more room in plan would clear a gap, mm. */
export function shortInPlan({ sideways, wanted = 0, gap = 0 }: Finding): number {
  return sideways ?? wanted - gap;
}

/** A change that was tried and cures a finding. */
export interface Remedy {
  /** What is done. */
  readonly deed: CureDeed;
  /** The change as one edit. */
  readonly edit: Edit;
  /** The movement with the remedy in it. */
  readonly movement: Movement;
  /** Gap after the remedy of a gap, found by running the check again, mm. */
  readonly gapAfter?: number;
}
