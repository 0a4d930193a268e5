/**
 * From what a gauge showed to the length itself: over or inside pins, between points, from a screw with a zero. Figures
 * that cannot be are not swallowed: they are recognised and asked about.
 */

import { MM_PER_INCH } from '../../movement/measures.ts';
import type { Reading } from '../../movement/schema.ts';
import type { Impossible, LengthDoubt, LengthSlip } from './doubt.ts';

/** ± of a gauge that states none, mm, two standard deviations: a vernier caliper in practised hands (common practice). */
export const USUAL_PLUS_MINUS = 0.04;

/** The length behind a reading, mm, or why it cannot be. */
export type TrueLength =
  | { readonly kind: 'length'; readonly length: number; readonly plusMinus: number }
  /** The figure is kept but not used until the maker answers; `meant` is the length if the suspicion is right, mm. */
  | { readonly kind: 'doubt'; readonly doubt: LengthDoubt; readonly length: number; readonly meant?: number }
  | { readonly kind: 'impossible'; readonly doubt: Impossible };

/** Factors by which a figure is off when its unit was mistaken, and what then happened. */
const SLIPS: readonly (readonly [number, LengthSlip])[] = [
  [MM_PER_INCH, 'mmAsInches'],
  [1 / MM_PER_INCH, 'inchesAsMm'],
  [10, 'pointTooFarRight'],
  [0.1, 'pointTooFarLeft'],
  [2, 'doubled'],
  [0.5, 'halved'],
];
/** A slip is only suspected where it explains the figure to this share, and the figure itself is farther off than that. */
const SLIP_FIT = 0.03;

/**
 * The length behind a reading.
 *
 * `zero` is what the gauge shows when it should show nothing. Calipers zeroed with their jaws in a hole of diameter d show
 * −d there, so their zero is −d.
 *
 * @param expected   the length as planned, mm, against which slips of unit are recognised; a figure that the maker says
 *                   is right as it stands is not doubted
 * @param jawsFactor what flat jaws read is multiplied by (they bridge two tips of an odd count)
 */
export function trueLength(reading: Reading, expected?: number, jawsFactor = 1): TrueLength {
  const { value, taken } = reading;
  if (value === undefined || !Number.isFinite(value)) {
    return { kind: 'impossible', doubt: { kind: 'noFigure', reading: reading.id } };
  }
  const shown = value - (taken?.zero ?? 0);
  const [a, b] = taken?.pins ?? [0, 0];
  const half = (a + b) / 2;
  const how = taken?.how ?? 'direct';
  if (how === 'over' && shown < half) {
    return { kind: 'impossible', doubt: { kind: 'withinPins', reading: reading.id, shown, pins: [a, b], least: half } };
  }
  const through = (figure: number): number =>
    how === 'over' ? figure - half : how === 'inside' ? figure + half : how === 'jaws' ? figure * jawsFactor : figure;
  const length = through(shown);
  const least = reading.kind === 'runOut' || reading.kind === 'endShake' ? 0 : Number.MIN_VALUE;
  if (!(length >= least)) {
    return { kind: 'impossible', doubt: { kind: 'notAboveZero', reading: reading.id, length } };
  }
  const asked = reading.stands ? undefined : expected;
  const slip =
    asked === undefined ? undefined : slipOf(value, length, asked, (figure) => through(figure - (taken?.zero ?? 0)));
  if (slip && expected !== undefined) {
    const doubt = { kind: 'slip', reading: reading.id, length, planned: expected, ...slip } as const;
    return { kind: 'doubt', length, meant: slip.meant, doubt };
  }
  return { kind: 'length', length, plusMinus: reading.plusMinus ?? USUAL_PLUS_MINUS };
}

/** The slip of unit that brings the gauge's own figure to the expected length, if one does. */
function slipOf(value: number, length: number, expected: number, lengthOf: (figure: number) => number) {
  if (!(expected > 0) || Math.abs(length / expected - 1) <= 2 * SLIP_FIT) return undefined;
  for (const [factor, slip] of SLIPS) {
    const meant = lengthOf(value / factor);
    if (Math.abs(meant / expected - 1) < SLIP_FIT) return { meant, slip };
  }
  return undefined;
}
