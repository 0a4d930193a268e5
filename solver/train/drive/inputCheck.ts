/** Numbers that cannot be: field, what was found, what was expected. */

/** The range in which a number makes sense; `above` and `upTo` are the ends, `above` itself excluded. */
export interface NumberRange {
  readonly kind: 'range';
  readonly above?: number;
  readonly from?: number;
  readonly upTo?: number;
  readonly whole?: boolean;
}

/** What a number of a drive should have been. Lengths in mm. */
export type Expected =
  | NumberRange
  /** Less than the barrel's own radius. */
  | { readonly kind: 'insideBarrel'; readonly below: number }
  /** Less than the length that fills the barrel. */
  | { readonly kind: 'fillsBarrel'; readonly below: number }
  | { readonly kind: 'underHalfTheTeeth'; readonly teeth: number }
  | { readonly kind: 'arborThatTurns' };

/** A number that cannot be, by the name of its field. */
export interface InputProblem {
  readonly field: string;
  /** Not a number where none could be read; absent where it is no number that was asked for. */
  readonly found?: number;
  readonly expected: Expected;
}

/** Everything that was wrong with the numbers. */
export interface Refusal {
  readonly kind: 'refused';
  readonly problems: readonly InputProblem[];
}

/** Number fields with the range that makes sense. */
export const checkNumbers = (
  fields: Readonly<Record<string, { readonly value: number } & Omit<NumberRange, 'kind'>>>,
): readonly InputProblem[] =>
  Object.entries(fields).flatMap(([field, { value, ...range }]) => {
    const { above, from, upTo, whole } = range;
    const fine =
      Number.isFinite(value) &&
      (above === undefined || value > above) &&
      (from === undefined || value >= from) &&
      (upTo === undefined || value <= upTo) &&
      (!whole || Number.isInteger(value));
    return fine ? [] : [{ field, found: value, expected: { kind: 'range', ...range } }];
  });
