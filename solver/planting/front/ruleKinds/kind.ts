/**
 * What planting has to know of one kind of rule: what it asks of the network, what it measures, how its place is struck,
 * and where it is offered. Each kind is one file here; `ruleKinds.ts` joins them.
 */
import type { Curve, Point } from '../../../geometry/index.ts';
import type { PartId, PointId, WheelId } from '../../../movement/ids.ts';
import type { KindOfRule, Movement, Rule, RuleOf, Wheel } from '../../../movement/schema.ts';
import type { LocusTold } from '../../disagreement.ts';
import type { Place, PlacedMovement } from '../../placed.ts';
import type { Body } from '../bodies.ts';
import type { NetworkBuilder } from '../networkBuilder.ts';

type WithoutId<R> = R extends Rule ? Omit<R, 'id' | 'leaveOut'> : never;
/** A rule that is not yet in the movement. */
export type DraftRule = WithoutId<Rule>;
/** The drafts of one kind. */
export type DraftOf<K extends KindOfRule> = WithoutId<RuleOf<K>>;

/** A value by what it measures. */
export type RuleValue =
  /** A centre distance, mm. */
  | { readonly kind: 'length'; readonly value: number }
  /** The gap between two outlines, mm; negative where they overlap. */
  | { readonly kind: 'gap'; readonly value: number }
  /** Degrees in [0, 360), and the arm that they are taken at, mm. */
  | { readonly kind: 'angle'; readonly value: number; readonly arm: number }
  /** Rules without a number: how far the places are from what they ask, mm. */
  | { readonly kind: 'off'; readonly value: number };

/** What the translation of a rule may ask. */
export interface Translation {
  readonly movement: Movement;
  readonly builder: NetworkBuilder;
  readonly wheelOf: (id: WheelId) => Wheel | undefined;
  readonly bodyOf: (part: PartId) => Body | undefined;
  readonly sketchOf: (point: PointId) => Point;
  /** Do two points of the network share a place, by a pipe or a rule? */
  readonly isOnePlace: (a: number, b: number) => boolean;
}

/** Where things are, for measuring a rule. */
export interface Measured {
  readonly movement: Movement;
  /** The place of a point, undefined for one that is not there. */
  readonly placeOf: (id: PointId) => Point | undefined;
}

/** Where a point that a rule names may lie, and the point on the metal that the locus is struck from. */
export interface StruckLocus {
  readonly from: PointId;
  readonly locus: Curve;
}

/** A rule that might settle a loose point. */
export interface SettlingCandidate {
  readonly rule: DraftRule;
  /** Unit direction in which the rule holds the point; undefined for a rule that fixes the whole place. */
  readonly across: Point | undefined;
  /** For a depth: the distance that it would set, mm. */
  readonly calculated?: number;
}

/** A loose point and the planted points near it, the nearest first. */
export interface SettlingGround {
  readonly placed: PlacedMovement;
  readonly point: Place;
  readonly near: readonly Place[];
  /** Whether rules or sliding posts use a point as their centre. */
  readonly isCentre: (id: PointId) => boolean;
}

/** Tells the planting what a sliding post need not keep by itself. */
export interface RadiusSet {
  /** The distance of two points follows from the rule. */
  readonly pair: (a: string, b: string) => void;
  /** The place of a part follows from another's. */
  readonly place: (part: string) => void;
  /** Is the part a round one of the case? */
  readonly isRound: (part: string) => boolean;
}

/** What a kind asks of the network, measures, strikes and offers; each function is given rules of its kind. */
export interface RuleKindInPlanting<K extends KindOfRule> {
  /**
   * When it is asked: ties before all that is no tie, whatever the order of the document; what shares the difference of
   * other rules after them. Where absent, with the rules.
   */
  readonly turn?: 'ties' | 'rules' | 'shares';
  /** Adds a rule that counts to the network. None where it is not asked there: a place is held instead. */
  readonly ask?: (to: Translation, rule: RuleOf<K>) => void;
  /** The place that a rule holds by itself. */
  readonly holds?: (rule: RuleOf<K>) => { readonly point: PointId; readonly at: Point };
  /** Notes what can still be read of a rule that is left out. */
  readonly note?: (to: Translation, rule: RuleOf<K>) => void;
  /** What it measures; undefined where a part is missing, or an angle is asked about one and the same place. */
  readonly measure: (now: Measured, rule: DraftOf<K>) => RuleValue | undefined;
  /**
   * Where it keeps one of its points; none for rules that fix a place outright.
   *
   * @param length the length that it asks for, mm; as it stands where it has none
   */
  readonly struck?: (now: Measured, rule: RuleOf<K>, point: PointId, length?: number) => StruckLocus | undefined;
  /** Its locus where two loci miss each other; where absent, an arc from its other point. */
  readonly told?: (rule: RuleOf<K>) => LocusTold;
  /** What it sets that a sliding post would keep otherwise. */
  readonly sets?: (rule: RuleOf<K>, set: RadiusSet) => void;
  /** Rules of the kind that would take freedom from a loose point. */
  readonly settles?: (ground: SettlingGround) => readonly SettlingCandidate[];
}
