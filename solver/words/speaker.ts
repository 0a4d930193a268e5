/** Whoever speaks for a document: its unit, its decimals, its names. Every sentence takes one, and no other strings. */

import { namer } from '../marking/index.ts';
import type { Movement } from '../movement/schema.ts';
import { digitsOf, type Rational } from '../train/turning/rational.ts';
import {
  angleFigure,
  type Display,
  directionFigure,
  lengthFigure,
  type Minus,
  numberFigure,
  plainFigure,
  unitOf,
  withMinus,
} from './figures.ts';
import { indicationNamesOf } from './indications.ts';
import { ruleNamesOf } from './rules.ts';

/** Figures and names of one document. Lengths in mm and angles in radians go in, words come out. */
export interface Speaker {
  readonly movement: Movement;
  readonly display: Display;
  /** "31.270 mm" */
  readonly length: (mm: number) => string;
  /** "31.270", for rows under a head that names the unit */
  readonly figure: (mm: number) => string;
  /** "31.27 mm": a figure that is only estimated, with one decimal less than the document's */
  readonly about: (mm: number) => string;
  /** "4.6°": a turn or an opening */
  readonly angle: (radians: number, decimals?: number) => string;
  /** "324.6°": where something lies, 0 up to 360, anticlockwise from the stated zero */
  readonly direction: (radians: number, decimals?: number) => string;
  /** A number that is no length, with so many decimals, more where they would not show it. */
  readonly number: (value: number, decimals: number) => string;
  /** A stated number as short as it is: "0.8". */
  readonly plain: (value: number, digits?: number) => string;
  /** An exact number in so many digits (ten), fewer where it ends early: "29.53058885". */
  readonly exact: (value: Rational, digits?: number) => string;
  /** A part: its name, else what it is. */
  readonly name: (partId: string) => string;
  /** A rule: its name, else what it asks. */
  readonly rule: (ruleId: string) => string;
  /** A hand, ring or ball: its name, else where it stands. */
  readonly indication: (indicationId: string) => string;
}

/**
 * @param minus the sign of negative figures: the true one unless plain text is wanted
 */
export function speakerOf(movement: Movement, { minus = '−' as Minus } = {}): Speaker {
  const { display } = movement;
  const unit = unitOf(display);
  const figure = (mm: number): string => lengthFigure(mm, display, { minus });
  return {
    movement,
    display,
    figure,
    length: (mm) => `${figure(mm)} ${unit}`,
    about: (mm) => `${lengthFigure(mm, display, { minus, fewer: 1 })} ${unit}`,
    angle: (radians, decimals) => angleFigure(radians, decimals, minus),
    direction: directionFigure,
    number: (value, decimals) => numberFigure(value, decimals, minus),
    plain: (value, digits) => plainFigure(value, digits, minus),
    exact: (value, digits) => withMinus(digitsOf(value, digits), minus),
    name: namer(movement),
    rule: (ruleId) => ruleNamesOf(movement).get(ruleId) ?? ruleId,
    indication: (id) => indicationNamesOf(movement).get(id) ?? id,
  };
}
