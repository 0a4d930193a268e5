/** Mutants that were looked at and change nothing that can be told: each with the reason. */

/** A mutant by what it does to which text. */
export interface Harmless {
  readonly file: string;
  /** The line that is mutated, without the spaces around it. */
  readonly line: string;
  readonly replacement: string;
  readonly why: string;
}

/** Kept by hand; a mutant that is not in the sample any more may be taken out. */
export const CHANGES_NOTHING: readonly Harmless[] = [];
