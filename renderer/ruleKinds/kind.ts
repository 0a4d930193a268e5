/**
 * What the window has to know of one kind of rule: where it is offered among chosen parts, and what a dragged point can
 * settle on. Each kind is one file here; `ruleKinds.ts` joins them.
 */
import type { PartId, PointId } from '../../solver/movement/ids.ts';
import type { DraftRule } from '../../solver/planting/index.ts';
import type { PlacedMovement } from '../../solver/planting/placed.ts';
import type { SnapCandidate } from '../gestures/snap.ts';
import type { SnapQuestion } from '../gestures/snapQuestion.ts';
import type { SnapScene } from '../gestures/snapScene.ts';

/** Two chosen parts that stand at two points. */
export interface ChosenPair {
  readonly placed: PlacedMovement;
  readonly parts: readonly [PartId, PartId];
  readonly points: readonly [PointId, PointId];
}

/** How willingly a snap is taken: depths first, a round radius only when the pointer is almost on it. */
export const WEIGHT = {
  depth: 1.6,
  place: 1.2,
  length: 1,
  line: 0.7,
  round: 0.35,
};

/** One kind of rule on the bench. Numbers of offered rules are set to what they measure now. */
export interface RuleKindOnBench {
  /** Offered first for a pair. */
  readonly between?: (pair: ChosenPair) => readonly DraftRule[];
  /** Offered for each of a pair about the other. */
  readonly about?: (point: PointId, centre: PointId) => DraftRule;
  /** Offered last for a pair. */
  readonly beside?: (pair: ChosenPair) => readonly DraftRule[];
  /** Offered for a part and a wall, which has no point of its own. */
  readonly toWall?: (part: PartId, wall: PartId) => DraftRule;
  /** Offered for each of three with the two others. */
  readonly ofThree?: (one: PointId, first: PointId, second: PointId) => DraftRule;
  /** Offered for three or more about each of them. */
  readonly aboutMany?: (placed: PlacedMovement, centre: PointId, others: readonly PointId[]) => DraftRule;
  /** Made once for a drag: finds what could be kept near a target. */
  readonly snaps?: (scene: SnapScene) => (question: SnapQuestion) => readonly SnapCandidate[];
}
