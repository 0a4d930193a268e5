/**
 * What the document has to know of one kind of rule besides its schema. Each kind is one file here; `ruleKinds.ts` joins
 * them, and whoever wants to know something of a rule asks that table instead of its kind's name.
 */

import type { Fault } from '../checks/fault.ts';
import type { PointId } from '../ids.ts';
import type { Collection } from '../references/collections.ts';

/** Fields that hold one id or a list of ids, with the lists in which what they name may stand. */
export type NamingFields = Readonly<Record<string, readonly Collection[]>>;

/** A thing named by a rule: where in the rule, and its id. */
export interface NamedThing {
  readonly keys: readonly (string | number)[];
  readonly id: string;
}

/** The one number that a rule can be given. */
export interface NumberField {
  /** The field that holds it. */
  readonly field: string;
  /** mm between two places; mm between two outlines, which may be nothing; degrees; or the coordinates of a place. */
  readonly measures: 'length' | 'gap' | 'angle' | 'place';
  /** The least that it may be. */
  readonly least?: number;
  /** What else is set where a maker gives the number. */
  readonly sets?: Readonly<Record<string, unknown>>;
  /** The rule has other numbers beside it, and need not use this one. */
  readonly isOneOfSeveral?: true;
}

/** Reports something wrong within a rule, at a place in it. */
export type TellFault = (keys: readonly (string | number)[], fault: Omit<Fault, 'path' | 'id'>) => void;

/** One kind of rule in the document. `R` is the rule as the schema reads it. */
export interface RuleKindInDocument<R> {
  /** How ids of new rules of the kind begin. */
  readonly stem: string;
  /** Its fields that name parts, in the order in which they are told. */
  readonly names: NamingFields;
  /** Fields of a record within the rule that name things. */
  readonly namesWithin?: Readonly<Record<string, NamingFields>>;
  readonly number?: NumberField;
  /** Groups of things that must be different ones; where absent, all that it names. */
  readonly differ?: (rule: R) => readonly (readonly NamedThing[])[];
  /** Groups that must also stand at different places; where absent, those that must differ. */
  readonly apart?: (rule: R) => readonly (readonly NamedThing[])[];
  /** What `apart` wants, as an error of reading says it; where absent, "points at different places". */
  readonly apartSays?: string;
  /** Reports what else is wrong within the rule. */
  readonly faults?: (rule: R, tell: TellFault) => void;
  /** The rule without things that are gone; where absent, it goes with any of them. */
  readonly without?: (rule: R, isGone: (id: string | undefined) => boolean) => R | undefined;
  /** The same text for two rules that say the same, whatever their number; undefined where every rule is its own. */
  readonly subject: (rule: Omit<R, 'id' | 'leaveOut'>) => string | undefined;
  /** Two points that it puts at one place. */
  readonly joins?: (rule: R) => readonly [PointId, PointId];
}

/** The ids of a list in one order, to compare rules that name the same things. */
export const inAnyOrder = (ids: readonly string[]): string => [...ids].sort().join(' ');

/** What a rule names in the given fields, in their order. */
export function namedIn(rule: object, fields: readonly string[]): readonly NamedThing[] {
  return fields.flatMap((field): NamedThing[] => {
    const value: unknown = Object.hasOwn(rule, field) ? Reflect.get(rule, field) : undefined;
    if (typeof value === 'string') return [{ keys: [field], id: value }];
    if (!Array.isArray(value)) return [];
    return value.flatMap((id: unknown, index) => (typeof id === 'string' ? [{ keys: [field, index], id }] : []));
  });
}
