/** Lengths of a stack between its plates, and what they may be off. */
import type { PartId } from '../../movement/ids.ts';

/** One length of the stack, mm. */
export interface StackPiece {
  /** The wheel that it belongs to; the arbor itself for collars and bare lengths. */
  readonly part: PartId;
  readonly kind: 'wheel' | 'hub' | 'collar' | 'bare';
  readonly from: number;
  readonly to: number;
  /** Its own ±, mm; the tolerance of every piece where none is stated. */
  readonly plusMinus?: number;
}

/** What the pieces of a stack may be off. */
export interface StackTolerance {
  /** ± of each piece's length and of the distance of the plates, mm. */
  readonly piece: number;
  readonly plates: number;
}

/** Least and greatest of a length, mm. */
export type Range = readonly [number, number];

/** The two sums of a stack round the end shake that it leaves: all errors at their worst, and as a rule. */
export function sumsOf(
  left: number,
  errors: readonly number[],
): { readonly worst: Range; readonly statistical: Range } {
  const worst = errors.reduce((sum, error) => sum + error, 0);
  const likely = Math.hypot(...errors);
  return { worst: [left - worst, left + worst], statistical: [left - likely, left + likely] };
}
