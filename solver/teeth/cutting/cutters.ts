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
import { moduleOf, sizeWords } from '../sizes/moduleOf.ts';
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

/** The cutter for a wheel, by the kind of its teeth. */
export type CutterChoice =
  | { readonly kind: 'involute'; readonly range: CutterRange; readonly says: string }
  | { readonly kind: 'clockWheel'; readonly family: string; readonly says: string }
  | { readonly kind: 'clockLeaf'; readonly leaves: number; readonly exact: boolean; readonly says: string }
  | { readonly kind: 'own'; readonly says: string };

/** The cutter for a wheel, in words that name the size and the range. */
export function cutterOf(wheel: Wheel, movement: Movement): CutterChoice {
  if (wheel.form === 'lantern') return { kind: 'own', says: 'No cutter: drill the shrouds for the trundles.' };
  if (wheel.form === 'triangular') {
    return {
      kind: 'own',
      says: `A V-shaped cutter or file of ${wheel.toothAngle ?? 60}° between its sides, less the turn of one space (${(360 / wheel.teeth).toFixed(2)}°).`,
    };
  }
  if (wheel.internal)
    return { kind: 'own', says: 'A ring: cut with a shaper cutter or a flycutter ground to the space.' };
  return wheel.form === 'involute' ? involuteChoice(wheel, movement) : clockChoice(wheel, movement);
}

function involuteChoice(wheel: Wheel, movement: Movement): CutterChoice {
  const range = involuteCutter(wheel.teeth);
  const size = sizeWords(wheel.size);
  const angle = Number(((rackOf(wheel, movement).alpha * 180) / Math.PI).toPrecision(6));
  if (!range) {
    return {
      kind: 'own',
      says: `No form cutter of the usual sets cuts ${wheel.teeth} teeth (they begin at 12, some at 10): hob it, or grind a flycutter.`,
    };
  }
  const teeth = range.to === undefined ? `${range.from} teeth to rack` : `${range.from} to ${range.to} teeth`;
  const numbers =
    range.moduleNumber === undefined
      ? `No. ${range.diametralPitchNumber} of a diametral-pitch set, where it has one`
      : `No. ${range.diametralPitchNumber} of a diametral-pitch set, No. ${range.moduleNumber} of most module sets`;
  return {
    kind: 'involute',
    range,
    says: `${size}, ${angle}°: the cutter marked ${teeth} (${numbers}; go by the range).`,
  };
}

function clockChoice(wheel: Wheel, movement: Movement): CutterChoice {
  const size = sizeWords(wheel.size);
  if (!isPinion(wheel, movement)) {
    const family = cycloidalRow(wheel, movement).source;
    return { kind: 'clockWheel', family, says: `${size} wheel cutter (${family}).` };
  }
  const exact = CUTTER_LEAVES.some((row) => row.leaves === wheel.teeth);
  const leaves =
    (CUTTER_LEAVES.findLast((row) => row.leaves <= wheel.teeth) ?? CUTTER_LEAVES[0])?.leaves ?? wheel.teeth;
  const near = exact
    ? ''
    : ` There is none for ${wheel.teeth} leaves: it is the nearest below; test it on a spare blank.`;
  const smaller = (moduleOf(wheel.size) - 0.05).toFixed(2);
  return {
    kind: 'clockLeaf',
    leaves,
    exact,
    says: `${size} pinion cutter for ${leaves} leaves.${near} For old work with thick leaves a cutter of module ${smaller} is advised.`,
  };
}
