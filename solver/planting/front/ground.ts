/** The network of a movement with the way back from its indices to the maker's parts. */
import type { ArborId, PointId, PostId, RuleId } from '../../movement/ids.ts';
import type { Movement } from '../../movement/schema.ts';
import type { NotKeptCause } from '../disagreement.ts';
import type { Network } from '../network.ts';
import type { DepthLength } from './depthLengths.ts';

/** What a network rule comes from: a rule of the movement, or something that the document implies. */
export type RuleSource =
  | { readonly kind: 'rule'; readonly rule: RuleId }
  /** A pipe stands where its carrier stands. */
  | { readonly kind: 'pipe'; readonly arbor: ArborId }
  /** A sliding post without a radius rule keeps the radius it is sketched at. */
  | { readonly kind: 'slide'; readonly post: PostId }
  /** A second drilled place of a point. */
  | { readonly kind: 'drilled'; readonly point: PointId };

/** Why a point is fixed in the network. */
export interface HeldSource {
  readonly by: 'drilled' | 'rule' | 'case';
  readonly rule?: RuleId;
  /** ± of each coordinate (two standard deviations), mm. */
  readonly plusMinus: number;
}

/** A rule that asks nothing of the network because it cannot be asked. */
export interface UnusableRule {
  readonly rule: RuleId;
  readonly points: readonly PointId[];
  readonly why: NotKeptCause;
  /** mm missing, where that can be said. */
  readonly lacking: number;
}

/** The length that a rule sets, mm. */
export interface RuleLength extends Partial<DepthLength> {
  readonly length: number;
}

/** A network with the names of its points and rules. */
export interface PlantingGround {
  readonly movement: Movement;
  readonly network: Network;
  /** Id of every network point; undefined for places of the case. */
  readonly pointIds: readonly (PointId | undefined)[];
  readonly indexOf: ReadonlyMap<PointId, number>;
  /** Per network rule. */
  readonly sources: readonly RuleSource[];
  /** Per network rule: its ± (two standard deviations), mm, or radians for a ray; 0 where exact. */
  readonly plusMinus: Float64Array;
  readonly networkRulesOf: ReadonlyMap<RuleId, readonly number[]>;
  readonly heldBy: ReadonlyMap<number, HeldSource>;
  readonly lengths: ReadonlyMap<RuleId, RuleLength>;
  readonly unusable: readonly UnusableRule[];
  /** Network rules of gaps, and whether they are kept inside a ring, where less distance is more gap. */
  readonly gapSides: ReadonlyMap<number, 'inside' | 'outside'>;
  /** What was drilled: the network points, the ghosts of those that a pattern names, and 1 for each rule of the drawing that they released. */
  readonly made?: {
    readonly facts: ReadonlySet<number>;
    readonly ghostOf: ReadonlyMap<number, number>;
    readonly released: Uint8Array;
  };
}
