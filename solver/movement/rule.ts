/** Rules: the things that must hold in the plane. Each kind is a file in `ruleKinds/`. */
import { z } from 'zod';
import { bearingRule } from './ruleKinds/bearing.ts';
import { clearByRule } from './ruleKinds/clearBy.ts';
import { depthRule } from './ruleKinds/depth.ts';
import { distanceRule } from './ruleKinds/distance.ts';
import { evenSpacingRule } from './ruleKinds/evenSpacing.ts';
import { heldRule } from './ruleKinds/held.ts';
import { inLineRule } from './ruleKinds/inLine.ts';
import { mirroredRule } from './ruleKinds/mirrored.ts';
import { onCentreLineRule } from './ruleKinds/onCentreLine.ts';
import { oppositeRule } from './ruleKinds/opposite.ts';
import { radiusRule } from './ruleKinds/radius.ts';
import { sameHeightRule } from './ruleKinds/sameHeight.ts';
import { samePlaceRule } from './ruleKinds/samePlace.ts';
import { sameRadiusRule } from './ruleKinds/sameRadius.ts';
import { shareDifferenceRule } from './ruleKinds/shareDifference.ts';
import { straightAboveRule } from './ruleKinds/straightAbove.ts';

/** Any rule. */
export const rule = z.discriminatedUnion('kind', [
  heldRule,
  depthRule,
  distanceRule,
  radiusRule,
  bearingRule,
  oppositeRule,
  samePlaceRule,
  inLineRule,
  sameRadiusRule,
  evenSpacingRule,
  clearByRule,
  mirroredRule,
  straightAboveRule,
  sameHeightRule,
  onCentreLineRule,
  shareDifferenceRule,
]);
