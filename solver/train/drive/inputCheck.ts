/** Bad numbers told in words: field, found, expected. */

/** A number that cannot be, by the name of its field. */
export interface InputProblem {
  readonly field: string;
  readonly says: string;
}

/** Everything that was wrong with the numbers. */
export interface Refusal {
  readonly kind: 'refused';
  readonly problems: readonly InputProblem[];
}

/** Number fields with the range that makes sense; `above` and `upTo` are the ends, `above` itself excluded. */
export const checkNumbers = (
  fields: Readonly<
    Record<
      string,
      {
        readonly value: number;
        readonly above?: number;
        readonly from?: number;
        readonly upTo?: number;
        readonly whole?: boolean;
      }
    >
  >,
): readonly InputProblem[] =>
  Object.entries(fields).flatMap(([field, { value, above, from, upTo, whole }]) => {
    const fine =
      Number.isFinite(value) &&
      (above === undefined || value > above) &&
      (from === undefined || value >= from) &&
      (upTo === undefined || value <= upTo) &&
      (!whole || Number.isInteger(value));
    if (fine) return [];
    const range = [
      whole ? 'a whole number' : 'a number',
      above === undefined ? '' : `greater than ${above}`,
      from === undefined ? '' : `from ${from}`,
      upTo === undefined ? '' : `up to ${upTo}`,
    ];
    return [{ field, says: `${field}: found ${value}, expected ${range.filter((word) => word !== '').join(' ')}.` }];
  });
