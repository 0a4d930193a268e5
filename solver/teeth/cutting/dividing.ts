/** Dividing: what a maker divides with, and the ways to a count. Fractions are exact. */

/** A dividing head or rotary table: crank turns for one turn of the spindle, and the circles of holes on each plate. */
export interface DividingHead {
  readonly name: string;
  readonly ratio: number;
  readonly plates: readonly (readonly number[])[];
}

/** What the maker has. */
export interface DividingKit {
  readonly heads: readonly DividingHead[];
  /** Plain plates on the spindle itself: circles of holes. */
  readonly plainPlates: readonly (readonly number[])[];
  /** Change wheels for differential dividing. */
  readonly changeWheels: readonly number[];
}

/** Three plates: 15–20, 21–33, 37–49 (published; tests/published/workshopValues.json, set A). */
export const PLATES_A: readonly (readonly number[])[] = [
  [15, 16, 17, 18, 19, 20],
  [21, 23, 27, 29, 31, 33],
  [37, 39, 41, 43, 47, 49],
];
/** One reversible plate, its two sides (published in US Army OD1644, fig. 11). */
export const PLATES_B: readonly (readonly number[])[] = [
  [24, 25, 28, 30, 34, 37, 38, 39, 41, 42, 43],
  [46, 47, 49, 51, 53, 54, 57, 58, 59, 62, 66],
];
/** Change wheels usual with universal heads (common practice). */
export const USUAL_CHANGE_WHEELS: readonly number[] = [24, 24, 28, 32, 40, 44, 48, 56, 64, 72, 86, 100];

/** Heads of 40, 60, 72 and 90 to 1 with the plates of set A: a start until the maker states his own. */
export const USUAL_KIT: DividingKit = {
  heads: [40, 60, 72, 90].map((ratio) => ({ name: `${ratio}:1`, ratio, plates: PLATES_A })),
  plainPlates: [],
  changeWheels: USUAL_CHANGE_WHEELS,
};

/** A move of the crank: whole turns and holes on a circle (a negative count goes back). */
export interface CrankMove {
  readonly turns: number;
  readonly holes: number;
  readonly circle: number;
}

/** One way to divide a circle, by what does it. */
export type DividingWay =
  | { readonly kind: 'direct'; readonly circle: number; readonly holes: number }
  | { readonly kind: 'simple'; readonly head: string; readonly moves: readonly CrankMove[] }
  | {
      readonly kind: 'compound';
      readonly head: string;
      /** The crank moves by the first; then crank and plate together move by the second, against the back pin. */
      readonly first: CrankMove;
      readonly second: CrankMove;
    }
  | {
      readonly kind: 'differential';
      readonly head: string;
      /** Set the head for this count and let the change wheels turn the plate. */
      readonly as: number;
      readonly move: CrankMove;
      /** Spindle to plate: driving wheels, driven wheels. */
      readonly driving: readonly number[];
      readonly driven: readonly number[];
      /** Whether the plate turns with the crank. */
      readonly sense: 'with' | 'against';
    };

/** A way that only comes near, with the spacing error. */
export type NearWay = {
  /** Largest error of a tooth's place, and of the space between two neighbours, radians. */
  readonly placeError: number;
  readonly spacingError: number;
} & (
  | { readonly kind: 'nearestHole'; readonly head: string; readonly circle: number }
  | {
      readonly kind: 'nearCompound';
      readonly head: string;
      readonly first: CrankMove;
      readonly second: CrankMove;
      /** Teeth moved at once, and how often it goes round for them; 1 is every tooth. */
      readonly skip: number;
      /** Error of one move, radians. */
      readonly step: number;
    }
  /** By the scale of a rotary table. */
  | { readonly kind: 'angle' }
);

/** Greatest common divisor of two whole numbers. */
export function gcd(a: number, b: number): number {
  return b === 0 ? Math.abs(a) : gcd(b, a % b);
}
