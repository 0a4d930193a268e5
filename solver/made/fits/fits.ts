/**
 * Limits and fits after ISO 286, as data: the tables do not follow the rounded formula everywhere, so they are stored.
 * Limits in micrometres, upper and lower.
 *
 * Source: ISO 286-1 and -2 for 3 to 180 mm, every cell compared with the standard's own formulas
 * (tests/published/SOURCES.md); sizes up to 3 mm, and f7, from memory of ISO 286-2, f7 compared with its formula.
 */

/** "Over 6 up to and including 10": the upper end of each range, mm. The first range begins over 0. */
const RANGE_ENDS = [3, 6, 10, 18, 30, 50, 80, 120, 180] as const;
const LARGEST = 180;

type Limits = readonly [upper: number, lower: number];
export type HoleClass = 'H7' | 'H8';
export type ShaftClass = 'f7' | 'g6' | 'h6' | 'k6' | 'p6';

const HOLES: Readonly<Record<HoleClass, readonly Limits[]>> = {
  H7: [
    [10, 0],
    [12, 0],
    [15, 0],
    [18, 0],
    [21, 0],
    [25, 0],
    [30, 0],
    [35, 0],
    [40, 0],
  ],
  H8: [
    [14, 0],
    [18, 0],
    [22, 0],
    [27, 0],
    [33, 0],
    [39, 0],
    [46, 0],
    [54, 0],
    [63, 0],
  ],
};

const SHAFTS: Readonly<Record<ShaftClass, readonly Limits[]>> = {
  f7: [
    [-6, -16],
    [-10, -22],
    [-13, -28],
    [-16, -34],
    [-20, -41],
    [-25, -50],
    [-30, -60],
    [-36, -71],
    [-43, -83],
  ],
  g6: [
    [-2, -8],
    [-4, -12],
    [-5, -14],
    [-6, -17],
    [-7, -20],
    [-9, -25],
    [-10, -29],
    [-12, -34],
    [-14, -39],
  ],
  h6: [
    [0, -6],
    [0, -8],
    [0, -9],
    [0, -11],
    [0, -13],
    [0, -16],
    [0, -19],
    [0, -22],
    [0, -25],
  ],
  k6: [
    [6, 0],
    [9, 1],
    [10, 1],
    [12, 1],
    [15, 2],
    [18, 2],
    [21, 2],
    [25, 3],
    [28, 3],
  ],
  p6: [
    [12, 6],
    [20, 12],
    [24, 15],
    [29, 18],
    [35, 22],
    [42, 26],
    [51, 32],
    [59, 37],
    [68, 43],
  ],
};

/** What a fit allows at one size. */
export interface FitLimits {
  /** Limits of the hole and the shaft, mm. */
  readonly hole: readonly [least: number, most: number];
  readonly shaft: readonly [least: number, most: number];
  /** Clearance, mm; negative: interference. */
  readonly clearance: readonly [least: number, most: number];
}

/** The limits of a fit, or why it is not in the tables. */
export type Fit =
  | { readonly kind: 'fit'; readonly hole: HoleClass; readonly shaft: ShaftClass; readonly limits: FitLimits }
  | OutsideTable;

/** A size that the standard's table does not hold: sizes above nothing up to `upTo` are in it, mm. */
export interface OutsideTable {
  readonly kind: 'outsideTable';
  readonly size: number;
  readonly upTo: number;
}

/** A standard fit of a size, mm. */
export function fitOf(size: number, hole: HoleClass, shaft: ShaftClass): Fit {
  const row = rowOf(size);
  const holeLimits = row === undefined ? undefined : HOLES[hole][row];
  const shaftLimits = row === undefined ? undefined : SHAFTS[shaft][row];
  if (!holeLimits || !shaftLimits) return outsideTable(size);
  const mm = (um: number) => um / 1000;
  const holeRange = [size + mm(holeLimits[1]), size + mm(holeLimits[0])] as const;
  const shaftRange = [size + mm(shaftLimits[1]), size + mm(shaftLimits[0])] as const;
  const clearance = [mm(holeLimits[1] - shaftLimits[0]), mm(holeLimits[0] - shaftLimits[1])] as const;
  return { kind: 'fit', hole, shaft, limits: { hole: holeRange, shaft: shaftRange, clearance } };
}

/** Limits of a hole of a standard class, mm; undefined outside the table. */
export function holeLimits(size: number, hole: HoleClass): readonly [least: number, most: number] | undefined {
  const row = rowOf(size);
  const limits = row === undefined ? undefined : HOLES[hole][row];
  return limits && [size + limits[1] / 1000, size + limits[0] / 1000];
}

/** A size that the table does not hold, mm. */
export const outsideTable = (size: number): OutsideTable => ({ kind: 'outsideTable', size, upTo: LARGEST });

/** What a standard fit is for in this trade: common practice. */
export const FIT_USES = {
  register: { hole: 'H7', shaft: 'h6' },
  pressed: { hole: 'H7', shaft: 'p6' },
  seat: { hole: 'H7', shaft: 'k6' },
  collar: { hole: 'H7', shaft: 'g6' },
  running: { hole: 'H8', shaft: 'f7' },
} as const satisfies Readonly<Record<string, { hole: HoleClass; shaft: ShaftClass }>>;
export type FitUse = keyof typeof FIT_USES;

function rowOf(size: number): number | undefined {
  if (!(size > 0) || size > LARGEST) return undefined;
  return RANGE_ENDS.findIndex((end) => size <= end);
}

/** How a hole and a shaft as made go together. */
export type FitFeel = 'press' | 'push' | 'snug' | 'sliding' | 'running' | 'loose';

/** Upper ends of the clearance for each word, mm: common practice, for diameters of some millimetres. */
const FEELS: readonly (readonly [number, FitFeel])[] = [
  [-0.008, 'press'],
  [0, 'push'],
  [0.008, 'snug'],
  [0.02, 'sliding'],
  [0.05, 'running'],
];

/** The feel of a pair as made, mm, in words (common practice, some hundredths). */
export function feelOf(hole: number, shaft: number): FitFeel {
  // A nanometre for the rounding of decimals: 2.02 over 2 slides.
  const clearance = hole - shaft - 1e-6;
  return FEELS.find(([end]) => clearance <= end)?.[1] ?? 'loose';
}

/** A bush that is pressed into a seat, mm. */
export interface PressedBush {
  /** Seat as made and outer diameter of the bush, mm. */
  readonly seat: number;
  readonly outer: number;
  /** Bore that is wanted after pressing, mm. */
  readonly bore: number;
  /** How much of the interference the bore closes (setting; default 0.8, measured by makers between 0.6 and 1). */
  readonly closing?: number | undefined;
}

/** How large a bush is bored before it is pressed, mm, or why it cannot be. */
export type PressedBore =
  /** Bored to `before`, the interference closes it by `closes`; mm. */
  | { readonly kind: 'bore'; readonly before: number; readonly interference: number; readonly closes: number }
  /** The bush is smaller than its seat by `gap`, mm, and does not hold. */
  | { readonly kind: 'loose'; readonly gap: number };

/** What to bore before pressing, so that the bush closes to the size wanted. */
export function boreBeforePressing({ seat, outer, bore, closing = 0.8 }: PressedBush): PressedBore {
  const interference = outer - seat;
  if (interference <= 0) return { kind: 'loose', gap: -interference };
  const closes = closing * interference;
  return { kind: 'bore', before: bore + closes, interference, closes };
}
