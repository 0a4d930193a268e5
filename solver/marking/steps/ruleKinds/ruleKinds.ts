/** The kinds of rules in marking out. A kind that the schema has and this table has not does not compile. */
import type { KindOfRule } from '../../../movement/schema.ts';
import { bearingOnMetal } from './bearing.ts';
import { clearByOnMetal } from './clearBy.ts';
import { depthOnMetal } from './depth.ts';
import { distanceOnMetal } from './distance.ts';
import { evenSpacingOnMetal } from './evenSpacing.ts';
import { heldOnMetal } from './held.ts';
import { inLineOnMetal } from './inLine.ts';
import type { RuleKindOnMetal } from './kind.ts';
import { mirroredOnMetal } from './mirrored.ts';
import { onCentreLineOnMetal } from './onCentreLine.ts';
import { oppositeOnMetal } from './opposite.ts';
import { radiusOnMetal } from './radius.ts';
import { sameHeightOnMetal } from './sameHeight.ts';
import { samePlaceOnMetal } from './samePlace.ts';
import { sameRadiusOnMetal } from './sameRadius.ts';
import { shareDifferenceOnMetal } from './shareDifference.ts';
import { straightAboveOnMetal } from './straightAbove.ts';

const KINDS = {
  held: heldOnMetal,
  depth: depthOnMetal,
  distance: distanceOnMetal,
  radius: radiusOnMetal,
  bearing: bearingOnMetal,
  opposite: oppositeOnMetal,
  samePlace: samePlaceOnMetal,
  inLine: inLineOnMetal,
  mirrored: mirroredOnMetal,
  straightAbove: straightAboveOnMetal,
  sameHeight: sameHeightOnMetal,
  onCentreLine: onCentreLineOnMetal,
  shareDifference: shareDifferenceOnMetal,
  sameRadius: sameRadiusOnMetal,
  evenSpacing: evenSpacingOnMetal,
  clearBy: clearByOnMetal,
} satisfies { readonly [K in KindOfRule]: RuleKindOnMetal<K> };

/** What marking out knows of a kind. */
export function ruleKindOnMetal(kind: KindOfRule): RuleKindOnMetal<KindOfRule> {
  return KINDS[kind] as unknown as RuleKindOnMetal<KindOfRule>; // the table pairs each kind with its own rules
}
