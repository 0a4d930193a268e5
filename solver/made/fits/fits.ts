/**
 * Limits and fits after ISO 286, as data: the tables do not follow the rounded formula everywhere, so they are stored.
 * Limits in micrometres, upper and lower.
 *
 * Source: ISO 286-1 and -2 for 3 to 180 mm, as tabulated in the project's check values (section D, every cell compared
 * with the standard's own formulas there); sizes up to 3 mm, and f7, from memory of ISO 286-2, f7 compared with its formula.
 */

/** "Over 6 up to and including 10": the upper end of each range, mm. The first range begins over 0. */
const RANGE_ENDS = [3, 6, 10, 18, 30, 50, 80, 120, 180] as const;
const RANGE_START = 0;

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
  readonly says: string;
}

/** The limits of a fit, or why it is not in the tables. */
export type Fit =
  | { readonly kind: 'fit'; readonly limits: FitLimits }
  | { readonly kind: 'none'; readonly says: string };

/** A standard fit of a size, mm. */
export function fitOf(size: number, hole: HoleClass, shaft: ShaftClass): Fit {
  const row = rowOf(size);
  const holeLimits = row === undefined ? undefined : HOLES[hole][row];
  const shaftLimits = row === undefined ? undefined : SHAFTS[shaft][row];
  if (!holeLimits || !shaftLimits) {
    return {
      kind: 'none',
      says: outsideTable(size),
    };
  }
  const mm = (um: number) => um / 1000;
  const holeRange = [size + mm(holeLimits[1]), size + mm(holeLimits[0])] as const;
  const shaftRange = [size + mm(shaftLimits[1]), size + mm(shaftLimits[0])] as const;
  const clearance = [mm(holeLimits[1] - shaftLimits[0]), mm(holeLimits[0] - shaftLimits[1])] as const;
  return {
    kind: 'fit',
    limits: { hole: holeRange, shaft: shaftRange, clearance, says: `${hole}/${shaft}: ${spanWords(clearance)}` },
  };
}

/** Limits of a hole of a standard class, mm; undefined outside the table. */
export function holeLimits(size: number, hole: HoleClass): readonly [least: number, most: number] | undefined {
  const row = rowOf(size);
  const limits = row === undefined ? undefined : HOLES[hole][row];
  return limits && [size + limits[1] / 1000, size + limits[0] / 1000];
}

/** Words for a size that the table does not hold. */
export const outsideTable = (size: number): string =>
  `${size} mm: the table holds sizes above ${RANGE_START} up to ${RANGE_ENDS.at(-1)} mm.`;

/** What a standard fit is for in this trade: common practice. */
export const FIT_USES = {
  register: { says: 'a register that finds its place again', hole: 'H7', shaft: 'h6' },
  pressed: { says: 'a bush to press in', hole: 'H7', shaft: 'p6' },
  seat: { says: 'a wheel on its seat, pushed on', hole: 'H7', shaft: 'k6' },
  collar: { says: 'a collar that slides and is fixed', hole: 'H7', shaft: 'g6' },
  running: { says: 'an arbor or stud that runs in oil', hole: 'H8', shaft: 'f7' },
} as const satisfies Readonly<Record<string, { says: string; hole: HoleClass; shaft: ShaftClass }>>;
export type FitUse = keyof typeof FIT_USES;

function rowOf(size: number): number | undefined {
  if (!(size > RANGE_START) || size > 180) return undefined;
  return RANGE_ENDS.findIndex((end) => size <= end);
}

function spanWords([least, most]: readonly [number, number]): string {
  if (least >= 0) return `always free, ${um(least)} to ${um(most)} µm`;
  return most <= 0
    ? `always tight, ${um(-most)} to ${um(-least)} µm`
    : `from ${um(-least)} µm tight to ${um(most)} µm free`;
}

const um = (mm: number): string => String(Math.round(mm * 1000));

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
  | { readonly kind: 'bore'; readonly before: number; readonly interference: number; readonly says: string }
  | { readonly kind: 'loose'; readonly says: string };

/** What to bore before pressing, so that the bush closes to the size wanted. */
export function boreBeforePressing({ seat, outer, bore, closing = 0.8 }: PressedBush): PressedBore {
  const interference = outer - seat;
  if (interference <= 0) {
    return {
      kind: 'loose',
      says: `The bush is ${um(-interference)} µm smaller than its seat: it will not hold by pressing. Soft solder wants a gap of 50 to 100 µm all told, a retaining compound 20 to 50 (common practice; follow its maker's sheet).`,
    };
  }
  const before = bore + closing * interference;
  return {
    kind: 'bore',
    before,
    interference,
    says: `Bore ${before.toFixed(3)} before pressing: ${um(interference)} µm of interference close it by about ${um(closing * interference)} µm. Press with a guided arbor, eyes covered and hands clear.`,
  };
}
