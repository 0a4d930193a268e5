/**
 * Pairs of parts that stand side by side and near each other, and their gap when places, sizes or shake are a little
 * different: what errors of making are tried on.
 */

import type { WheelId } from '../../movement/ids.ts';
import type { Wheel } from '../../movement/schema.ts';
import type { PlacedMovement } from '../../planting/placed.ts';
import { nearTreeOf } from '../planckAdapter.ts';
import type { Shake } from '../shake/shake.ts';
import { type Solid, sweptRing } from '../solids/solid.ts';
import { solidsOf } from '../solids/solids.ts';
import { asTheyMeet } from './gapChecker.ts';
import { gapContextOf, gapOfPair, heightGapOf, lengthwiseOfPair } from './gapReadings.ts';
import { largestPlanLimit, type PairTerms, pairKey, pairTermsFor } from './pairTerms.ts';
import { boundsOfSolid, planGapOf } from './planGap.ts';

/** Two solids of different parts that owe each other a gap; of parts that meet in several places, the tightest. */
export interface NearGap {
  readonly first: Solid;
  readonly second: Solid;
  readonly terms: PairTerms;
  /** As it stands in the placed movement. */
  readonly planned: GapNow;
}

/** The gap of a pair as things stand. */
export interface GapNow {
  /** mm; negative: overlap. */
  readonly asPlanted: number;
  /** At its worst with the shake of the bearings and run-out, mm. */
  readonly withShake: number;
  /** What the pair owes in the direction that decides, mm. */
  readonly wanted: number;
}

/**
 * Pairs whose gap with shake is less than what they owe and `beyond` mm, tightest first; pairs that are apart in
 * height whatever their places are left out.
 */
export function nearGapsOf(placed: PlacedMovement, beyond: number): readonly NearGap[] {
  const solids = solidsOf(placed);
  const context = gapContextOf(placed, solids);
  const termsOf = pairTermsFor(placed.movement);
  const reach = largestPlanLimit(placed.movement) + context.margin + beyond;
  const bounds = solids.map((solid) => boundsOfSolid(solid.shape === 'ring' ? sweptRing(solid) : solid));
  const tree = nearTreeOf(bounds);
  const tightest = new Map<string, { readonly gap: NearGap; readonly surplus: number }>();
  bounds.forEach((box, index) => {
    tree.near(box, reach, (other) => {
      const [first, second] = [solids[index], solids[other]];
      if (!first || !second || other <= index) return;
      const terms = termsOf(first, second);
      if (!terms) return;
      if (heightGapOf(first, second) - lengthwiseOfPair(first, second, context) >= terms.height) return;
      const planned = gapNow({ first, second, terms }, context);
      if (!planned) return;
      const surplus = planned.withShake - planned.wanted;
      const key = pairKey(first.part, second.part);
      if (surplus >= Math.min(beyond, tightest.get(key)?.surplus ?? beyond)) return;
      tightest.set(key, { gap: { first, second, terms, planned }, surplus });
    });
  });
  return [...tightest.values()].sort((a, b) => a.surplus - b.surplus).map(({ gap }) => gap);
}

/** The gap of a pair of solids, which may have been moved or changed in size; undefined for two outlines of the case. */
export function gapNow(
  { first, second, terms }: Pick<NearGap, 'first' | 'second' | 'terms'>,
  context: { readonly shake: Shake; readonly wheels: ReadonlyMap<WheelId, Wheel> },
): GapNow | undefined {
  const [a, b] = asTheyMeet(first, second);
  const plan = planGapOf(a, b);
  if (!plan) return undefined;
  const { asPlanted, withShake } = gapOfPair(a, b, plan, terms, context);
  return { asPlanted: asPlanted.gap, withShake: withShake.gap, wanted: withShake.wanted };
}
