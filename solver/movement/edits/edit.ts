/**
 * Edits: everything that the bench can do to a movement, as plain data that can be logged, tested and replayed.
 * Angles and lengths are as in the file: degrees and mm.
 */
import type { z } from 'zod';
import type { Collection } from '../references/collections.ts';
import type { Movement, movementSchema } from '../schema.ts';
import type { EditRefusal } from './refusal.ts';

type Input = z.input<typeof movementSchema>;
type ItemOf<L> = NonNullable<L> extends readonly (infer Item)[] ? Item : never;
/** An item as a file would hold it: fields with a default may be absent. */
export type ItemInput<C extends Collection> = ItemOf<Input[C]>;

/** Adds an item at the end of its list, or before the one at `at`. */
export type AddEdit = {
  [C in Collection]: { readonly kind: 'add'; readonly to: C; readonly item: ItemInput<C>; readonly at?: number };
}[Collection];

/** Items of several lists, as copied. */
export type Parts = { readonly [C in Collection]?: readonly ItemInput<C>[] };

/** Everything that can be done to a movement, one member a way of changing it. */
export type Edit =
  | AddEdit
  /** Sets and removes fields of one item; an id is changed by `rename`. */
  | {
      readonly kind: 'change';
      readonly id: string;
      readonly set?: Readonly<Record<string, unknown>>;
      readonly unset?: readonly string[];
    }
  /** Removes items with everything that cannot be without them: wheels on an arbor, rules on a point, readings of a part. */
  | { readonly kind: 'remove'; readonly ids: readonly string[] }
  /** Removes a bearing, counted from 0, with the readings of its pivot and hole; those of the others stay theirs. */
  | { readonly kind: 'removeBearing'; readonly arbor: string; readonly bearing: number }
  /** New sketch places of points. */
  | {
      readonly kind: 'move';
      readonly places: readonly { readonly id: string; readonly at: readonly [number, number] }[];
    }
  /** The value of a rule: a length, a gap, an angle in degrees, or a place; for a depth the held value, which it then uses. */
  | { readonly kind: 'setValue'; readonly rule: string; readonly value: number | readonly [number, number] }
  /** A measured depth, which the rule then uses. */
  | {
      readonly kind: 'setMeasured';
      readonly rule: string;
      readonly value: number;
      readonly plusMinus?: number;
      readonly reading?: string;
    }
  | { readonly kind: 'useDepth'; readonly rule: string; readonly use: 'calculated' | 'measured' | 'held' }
  | { readonly kind: 'leaveOut'; readonly rules: readonly string[]; readonly leaveOut: boolean }
  /** Tells rules to check, so that they never place, or leaves their duty to the order again; all or none. */
  | { readonly kind: 'setDuty'; readonly rules: readonly string[]; readonly duty: 'checks' | 'byOrder' }
  /** Records which crossing is meant, or forgets it. */
  | {
      readonly kind: 'setCrossing';
      readonly point: string;
      readonly crossing?: z.input<typeof import('../points.ts').crossing>;
    }
  /** A new id; everything that refers to the old one follows. */
  | { readonly kind: 'rename'; readonly from: string; readonly to: string }
  /** Title, note, revision, date, display, limits, centre line, drilling and drive, and fields of the document that this version does not know. */
  | { readonly kind: 'describe'; readonly set?: Readonly<Record<string, unknown>>; readonly unset?: readonly string[] }
  /** Copies of items, with fresh ids where an id is taken; references among them follow, others stay. */
  | { readonly kind: 'paste'; readonly parts: Parts; readonly by?: readonly [number, number] }
  | { readonly kind: 'reorder'; readonly id: string; readonly to: number }
  /** The made state of a point (on a plate); the one before it is replaced. */
  | { readonly kind: 'setMade'; readonly made: ItemOf<Input['made']> }
  | { readonly kind: 'clearMade'; readonly point: string; readonly plate?: string }
  /** Lets rules stand that miss because of a drilled place, until that place changes; or asks them again. */
  | {
      readonly kind: 'letStand';
      readonly point: string;
      readonly plate?: string;
      readonly rules: readonly string[];
      readonly stands: boolean;
    }
  /** Accepts a finding, with the reason; the same finding accepted before is replaced. */
  | { readonly kind: 'accept'; readonly accepted: ItemOf<Input['accepted']> }
  | { readonly kind: 'withdraw'; readonly finding: string; readonly parts: readonly string[] }
  /** All of them, or none. */
  | { readonly kind: 'several'; readonly edits: readonly Edit[] };

export type EditKind = Edit['kind'];
/** The edits of one kind. */
export type EditOf<K extends EditKind> = Extract<Edit, { readonly kind: K }>;

/** An edit that does not apply, and why. */
export interface Refused {
  readonly kind: 'refused';
  readonly why: EditRefusal;
}

/** What an edit leads to: the changed movement, or why it was refused. */
export type EditResult = { readonly kind: 'edited'; readonly movement: Movement } | Refused;
