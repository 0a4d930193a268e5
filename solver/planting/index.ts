/**
 * Planting: every arbor, post and mark gets its place from the rules of the movement.
 *
 * Read in this order: `placed.ts` (what planting gives), `front/plantMovement.ts` and `front/networkOf.ts` (rules of the
 * movement as rules between points), `network.ts` with `kernel/` (how they are solved), `front/sensitivity.ts` (how far a
 * ± moves a place), `front/disagreements.ts` (rules that cannot hold together).
 *
 * @example
 * const placed = plantMovement(movement);
 * const { x, y, state } = placed.places.get(arborId);
 * const drag = startDrag(placed, arborId);
 * const moved = drag.to(x + 1, y); // the nearest place that keeps every rule
 * applyEdit(movement, drag.release());
 */
export type {
  CheckOver,
  Disagreement,
  DisagreementCause,
  ImpliedRule,
  LengthCure,
  LociMiss,
  LocusTold,
  NotKeptCause,
  SetFails,
} from './disagreement.ts';
export { type Body, bodiesOf } from './front/bodies.ts';
export { type CrossingCure, crossingCure } from './front/crossingCure.ts';
export { type DragSession, startDrag } from './front/drag.ts';
export { gapRule } from './front/gapRules.ts';
export { networkOf } from './front/networkOf.ts';
export { type OtherCrossing, otherCrossing } from './front/otherCrossing.ts';
export { type Moves, movesTo, type PlaceInstead, placeInstead } from './front/placeInstead.ts';
export { plantMovement } from './front/plantMovement.ts';
export type { DraftRule, StruckLocus } from './front/ruleKinds/kind.ts';
export { locusStruck, ruleMissAt, ruleValueAt, ruleValueNow } from './front/ruleValue.ts';
export { settlingRules } from './front/settlingRules.ts';
export { type ToSettle, toSettle } from './front/toSettle.ts';
export { type PlantingTrace, tracePlanting } from './front/trace.ts';
export { plantNetwork } from './kernel/plant.ts';
export { type Network, PointState, RuleKind } from './network.ts';
