/** The kinds of rules in words. A kind that the schema has and this table has not does not compile. */
import type { KindOfRule } from '../../movement/schema.ts';
import { bearingInWords } from './bearing.ts';
import { clearByInWords } from './clearBy.ts';
import { depthInWords } from './depth.ts';
import { distanceInWords } from './distance.ts';
import { evenSpacingInWords } from './evenSpacing.ts';
import { heldInWords } from './held.ts';
import { inLineInWords } from './inLine.ts';
import type { RuleKindInWords } from './kind.ts';
import { mirroredInWords } from './mirrored.ts';
import { onCentreLineInWords } from './onCentreLine.ts';
import { oppositeInWords } from './opposite.ts';
import { radiusInWords } from './radius.ts';
import { sameHeightInWords } from './sameHeight.ts';
import { samePlaceInWords } from './samePlace.ts';
import { sameRadiusInWords } from './sameRadius.ts';
import { shareDifferenceInWords } from './shareDifference.ts';
import { straightAboveInWords } from './straightAbove.ts';

const KINDS = {
  held: heldInWords,
  depth: depthInWords,
  distance: distanceInWords,
  radius: radiusInWords,
  bearing: bearingInWords,
  opposite: oppositeInWords,
  samePlace: samePlaceInWords,
  inLine: inLineInWords,
  mirrored: mirroredInWords,
  straightAbove: straightAboveInWords,
  sameHeight: sameHeightInWords,
  onCentreLine: onCentreLineInWords,
  shareDifference: shareDifferenceInWords,
  sameRadius: sameRadiusInWords,
  evenSpacing: evenSpacingInWords,
  clearBy: clearByInWords,
} satisfies { readonly [K in KindOfRule]: RuleKindInWords<K> };

/** How a kind is spoken of. */
export function ruleKindInWords(kind: KindOfRule): RuleKindInWords<KindOfRule> {
  return KINDS[kind] as unknown as RuleKindInWords<KindOfRule>; // the table pairs each kind with its own rules
}
