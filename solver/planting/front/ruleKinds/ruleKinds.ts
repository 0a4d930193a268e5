/**
 * The kinds of rules in planting, those that are likeliest to settle a point first. A kind that the schema has and this
 * table has not does not compile.
 */
import type { KindOfRule } from '../../../movement/schema.ts';
import { bearingInPlanting } from './bearing.ts';
import { clearByInPlanting } from './clearBy.ts';
import { depthInPlanting } from './depth.ts';
import { distanceInPlanting } from './distance.ts';
import { evenSpacingInPlanting } from './evenSpacing.ts';
import { heldInPlanting } from './held.ts';
import { inLineInPlanting } from './inLine.ts';
import type { RuleKindInPlanting } from './kind.ts';
import { mirroredInPlanting } from './mirrored.ts';
import { onCentreLineInPlanting } from './onCentreLine.ts';
import { oppositeInPlanting } from './opposite.ts';
import { radiusInPlanting } from './radius.ts';
import { sameHeightInPlanting } from './sameHeight.ts';
import { samePlaceInPlanting } from './samePlace.ts';
import { sameRadiusInPlanting } from './sameRadius.ts';
import { shareDifferenceInPlanting } from './shareDifference.ts';
import { straightAboveInPlanting } from './straightAbove.ts';

const KINDS = {
  depth: depthInPlanting,
  radius: radiusInPlanting,
  distance: distanceInPlanting,
  bearing: bearingInPlanting,
  inLine: inLineInPlanting,
  clearBy: clearByInPlanting,
  held: heldInPlanting,
  opposite: oppositeInPlanting,
  samePlace: samePlaceInPlanting,
  mirrored: mirroredInPlanting,
  straightAbove: straightAboveInPlanting,
  sameHeight: sameHeightInPlanting,
  onCentreLine: onCentreLineInPlanting,
  shareDifference: shareDifferenceInPlanting,
  sameRadius: sameRadiusInPlanting,
  evenSpacing: evenSpacingInPlanting,
} satisfies { readonly [K in KindOfRule]: RuleKindInPlanting<K> };

/** Any kind, asked with rules of its own. */
export type AnyKindInPlanting = RuleKindInPlanting<KindOfRule>;

/** What planting knows of a kind. */
export function ruleKindInPlanting(kind: KindOfRule): AnyKindInPlanting {
  return KINDS[kind] as unknown as AnyKindInPlanting; // the table pairs each kind with its own rules
}

/** Every kind, the likeliest to settle a point first. */
export const RULE_KINDS_IN_PLANTING = Object.values(KINDS) as unknown as readonly AnyKindInPlanting[]; // as above
