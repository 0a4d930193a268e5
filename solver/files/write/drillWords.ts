/** The settings of a drill program with the usual values filled in, and its numbers as words. */

import { trimmed, WORD_PLACES } from '../../movement/decimal.ts';
import { drilling } from '../../movement/index.ts';
import { MM_PER_INCH } from '../../movement/measures.ts';
import type { Drilling } from '../../movement/schema.ts';
import type { DrillPass } from './drillPasses.ts';

/** What the maker chose, and what the plate gives. */
export interface DrillOptions extends Partial<Omit<Drilling, 'corner' | 'zeroAt'>> {
  /** Names for the header. */
  readonly title?: string | undefined;
  readonly face?: string | undefined;
  /** Plate thickness, mm (default 3). */
  readonly thickness?: number | undefined;
  /** Work zero in the drawing's coordinates, mm (default 0, 0), and where that is, in words. */
  readonly zero?: readonly [number, number] | undefined;
  readonly zeroSays?: string | undefined;
  /** Whether the movement is buildable as drawn, and what is against it, in sentences. */
  readonly buildable?: readonly string[] | undefined;
  /** Include holes that are drilled already (default false). */
  readonly again?: boolean | undefined;
}

type Given = 'title' | 'face' | 'thickness' | 'zero' | 'zeroSays' | 'buildable' | 'again';

/** Options with every usual value filled in. */
export type SettledDrill = Omit<Drilling, 'corner' | 'zeroAt'> & {
  readonly [Key in Given]-?: NonNullable<DrillOptions[Key]>;
};

/** The movement's own defaults: one place for them. */
const USUAL: SettledDrill = {
  ...(drilling.parse({}) as Drilling), // the schema's own output, without the fields that it does not know
  title: 'Plate',
  face: 'marked face',
  thickness: 3,
  zero: [0, 0],
  zeroSays: 'the origin of the drawing',
  buildable: [],
  again: false,
};

/** The options with what they leave open. */
export function settledDrill(options: DrillOptions): SettledDrill {
  const given = Object.fromEntries(
    Object.entries(options).filter(([, value]: [string, unknown]) => value !== undefined),
  );
  return { ...USUAL, ...given };
}

/** A length in the program's unit. */
export const word = (mm: number, { units }: Pick<SettledDrill, 'units'>): string =>
  trimmed(units === 'inch' ? mm / MM_PER_INCH : mm, WORD_PLACES, 1);

/** Height to which a pass goes, mm: below the face, so negative. */
export function bottomOf(work: DrillPass['work'], { spotDepth, depth, thickness, breakThrough }: SettledDrill): number {
  return work === 'spot' ? -spotDepth : -(depth ?? thickness + breakThrough);
}

/** Feed, mm a minute. */
export const feedOf = ({ work, feed }: DrillPass, settled: SettledDrill): number =>
  feed ?? (work === 'ream' ? settled.reamFeed : settled.drillFeed);

/** Turns a minute. */
export const speedOf = ({ work, speed }: DrillPass, settled: SettledDrill): number =>
  speed ?? (work === 'ream' ? settled.reamSpeed : settled.drillSpeed);
