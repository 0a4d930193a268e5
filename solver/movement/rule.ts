/** Rules: the things that must hold in the plane. Each kind is a file in `ruleKinds/`. */
import { z } from 'zod';
import { bearingRule } from './ruleKinds/bearing.ts';
import { clearByRule } from './ruleKinds/clearBy.ts';
import { depthRule } from './ruleKinds/depth.ts';
import { distanceRule } from './ruleKinds/distance.ts';
import { evenSpacingRule } from './ruleKinds/evenSpacing.ts';
import { heldRule } from './ruleKinds/held.ts';
import { inLineRule } from './ruleKinds/inLine.ts';
import { oppositeRule } from './ruleKinds/opposite.ts';
import { radiusRule } from './ruleKinds/radius.ts';
import { samePlaceRule } from './ruleKinds/samePlace.ts';
import { sameRadiusRule } from './ruleKinds/sameRadius.ts';

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
]);
