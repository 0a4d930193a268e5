/** Why an edit does not apply: a kind with ids and numbers. The sentence is made in `solver/words`. */
import type { Problem } from '../read/problem.ts';

/** What stands against an edit. Ids are as in the edit; lists count from 0. */
export type EditRefusal =
  /** What it would make is no sound movement; at least one problem. */
  | { readonly kind: 'unsound'; readonly problems: readonly Problem[] }
  /** Nothing in the movement has this id; `near` is one that is spelled much like it. */
  | { readonly kind: 'unknownPart'; readonly id: string; readonly near?: string }
  | { readonly kind: 'tooManyArbors'; readonly most: number }
  /** No item can stand at this place of a list that is so long. */
  | { readonly kind: 'noSuchTurn'; readonly place: number; readonly length: number }
  /** Ids are changed by the edit that renames, so that what refers to them follows. */
  | { readonly kind: 'idByRenaming'; readonly part: string }
  | { readonly kind: 'sameName'; readonly part: string }
  | { readonly kind: 'nameTaken'; readonly wanted: string }
  /** A wheel, a rule and the like: it stands where something else stands. */
  | { readonly kind: 'noPlaceOfItsOwn'; readonly part: string }
  | { readonly kind: 'notAPoint'; readonly part: string }
  | { readonly kind: 'noValue'; readonly rule: string }
  | { readonly kind: 'notADepth'; readonly rule: string }
  /** The arbor has fewer bearings than the one that was to be removed. */
  | { readonly kind: 'noSuchBearing'; readonly arbor: string; readonly bearings: number }
  | { readonly kind: 'nothingToPaste' }
  /** A field of the document that the edit which describes it does not change. */
  | { readonly kind: 'notDescribed'; readonly field: string }
  | { readonly kind: 'notDrilled'; readonly point: string }
  | { readonly kind: 'notMade'; readonly point: string }
  | { readonly kind: 'notAccepted' };
