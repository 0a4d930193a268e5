/**
 * The kinds of rules on the bench, in the order in which they are offered. A kind that the schema has and this table has
 * not does not compile.
 */
import type { KindOfRule } from '../../solver/movement/schema.ts';
import { bearingOnBench } from './bearing.ts';
import { clearByOnBench } from './clearBy.ts';
import { depthOnBench } from './depth.ts';
import { distanceOnBench } from './distance.ts';
import { evenSpacingOnBench } from './evenSpacing.ts';
import { heldOnBench } from './held.ts';
import { inLineOnBench } from './inLine.ts';
import type { RuleKindOnBench } from './kind.ts';
import { mirroredOnBench } from './mirrored.ts';
import { onCentreLineOnBench } from './onCentreLine.ts';
import { oppositeOnBench } from './opposite.ts';
import { radiusOnBench } from './radius.ts';
import { sameHeightOnBench } from './sameHeight.ts';
import { samePlaceOnBench } from './samePlace.ts';
import { sameRadiusOnBench } from './sameRadius.ts';
import { shareDifferenceOnBench } from './shareDifference.ts';
import { straightAboveOnBench } from './straightAbove.ts';

const KINDS = {
  depth: depthOnBench,
  distance: distanceOnBench,
  radius: radiusOnBench,
  inLine: inLineOnBench,
  opposite: oppositeOnBench,
  bearing: bearingOnBench,
  clearBy: clearByOnBench,
  samePlace: samePlaceOnBench,
  mirrored: mirroredOnBench,
  straightAbove: straightAboveOnBench,
  sameHeight: sameHeightOnBench,
  onCentreLine: onCentreLineOnBench,
  shareDifference: shareDifferenceOnBench,
  sameRadius: sameRadiusOnBench,
  evenSpacing: evenSpacingOnBench,
  held: heldOnBench,
} satisfies { readonly [K in KindOfRule]: RuleKindOnBench };

/** Every kind, in the order in which they are offered. */
export const RULE_KINDS_ON_BENCH: readonly RuleKindOnBench[] = Object.values(KINDS);
