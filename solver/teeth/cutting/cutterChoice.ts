/**
 * Which cutter makes a wheel.
 *
 * Involute form cutters come in sets of eight; diametral-pitch sets are numbered from the rack (1 = 135 and more),
 * module sets mostly the other way (1 = 12 and 13). The range of teeth is what counts and is always given.
 * Ranges: a workshop article, "Gear Cutters 01", table 1; the module numbering is from memory.
 */
import type { Movement, Wheel } from '../../movement/schema.ts';
import { CUTTER_LEAVES } from '../sizes/clockTables.ts';
import { cycloidalRow } from '../sizes/cycloidalRow.ts';
import { rackOf } from '../sizes/involuteSize.ts';
import { moduleOf } from '../sizes/moduleOf.ts';
import { isPinion } from '../sizes/partners.ts';

/** Counts that one cutter of a set serves, and its number in either numbering. */
export interface CutterRange {
  readonly from: number;
  /** `undefined`: to the rack. */
  readonly to: number | undefined;
  readonly diametralPitchNumber: number;
  readonly moduleNumber: number | undefined;
}

export const INVOLUTE_CUTTERS: readonly CutterRange[] = [
  { from: 135, to: undefined, diametralPitchNumber: 1, moduleNumber: 8 },
  { from: 55, to: 134, diametralPitchNumber: 2, moduleNumber: 7 },
  { from: 35, to: 54, diametralPitchNumber: 3, moduleNumber: 6 },
  { from: 26, to: 34, diametralPitchNumber: 4, moduleNumber: 5 },
  { from: 21, to: 25, diametralPitchNumber: 5, moduleNumber: 4 },
  { from: 17, to: 20, diametralPitchNumber: 6, moduleNumber: 3 },
  { from: 14, to: 16, diametralPitchNumber: 7, moduleNumber: 2 },
  { from: 12, to: 13, diametralPitchNumber: 8, moduleNumber: 1 },
  // An extension of some diametral-pitch sets; module sets have no number for it.
  { from: 10, to: 11, diametralPitchNumber: 9, moduleNumber: undefined },
];

/** The form cutter for a count of teeth; `undefined` below ten. */
export const involuteCutter = (teeth: number): CutterRange | undefined =>
  INVOLUTE_CUTTERS.find(({ from, to }) => teeth >= from && (to === undefined || teeth <= to));

/** Which cutter, or what else makes the spaces. Sizes as the wheel states them; pressure angles in radians. */
export type CutterChoice =
  | {
      readonly kind: 'involute';
      readonly size: Wheel['size'];
      readonly pressureAngle: number;
      readonly range: CutterRange;
    }
  /** Fewer teeth than any form cutter of the usual sets cuts. */
  | { readonly kind: 'noFormCutter'; readonly teeth: number }
  | { readonly kind: 'clockWheel'; readonly size: Wheel['size']; readonly family: string }
  /** `leaves`: what the cutter is marked; `exact`: that is the pinion's own count. */
  | {
      readonly kind: 'clockLeaf';
      readonly size: Wheel['size'];
      readonly teeth: number;
      readonly leaves: number;
      readonly exact: boolean;
      /** Module advised for old work with thick leaves, mm. */
      readonly oldWork: number;
    }
  | { readonly kind: 'trundles' }
  /** Both in radians: between the cutter's sides, and the turn of one space that comes off. */
  | { readonly kind: 'vCutter'; readonly angle: number; readonly space: number }
  | { readonly kind: 'ring' };

/** The form cutter of an involute wheel, by its range. */
export function involuteChoice(wheel: Wheel, movement: Movement): CutterChoice {
  const range = involuteCutter(wheel.teeth);
  if (!range) return { kind: 'noFormCutter', teeth: wheel.teeth };
  return { kind: 'involute', size: wheel.size, pressureAngle: rackOf(wheel, movement).alpha, range };
}

/** The cutter of a clock wheel or of leaves. */
export function clockChoice(wheel: Wheel, movement: Movement): CutterChoice {
  const { size, teeth } = wheel;
  if (!isPinion(wheel, movement)) return { kind: 'clockWheel', size, family: cycloidalRow(wheel, movement).source };
  const exact = CUTTER_LEAVES.some((row) => row.leaves === teeth);
  const leaves = (CUTTER_LEAVES.findLast((row) => row.leaves <= teeth) ?? CUTTER_LEAVES[0])?.leaves ?? teeth;
  return { kind: 'clockLeaf', size, teeth, leaves, exact, oldWork: moduleOf(size) - THICK_LEAVES };
}

/** How much smaller the module is that is advised for old work with thick leaves, mm: common practice. */
const THICK_LEAVES = 0.05;
