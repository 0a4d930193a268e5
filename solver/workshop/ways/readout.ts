/**
 * Holes for a digital readout or two slides with dials: absolute X and Y from a chosen zero, and the way back to the first
 * hole as a check that the zero has not moved.
 */
import type { Hole } from '../drawing.ts';
import { type LengthDisplay, lengthText, unitName } from '../write/decimal.ts';

export interface ReadoutOptions {
  readonly display: LengthDisplay;
  /** The zero in the holes' own coordinates, mm, with its name in words. */
  readonly zero: readonly [number, number];
  readonly zeroSays: string;
  /** Half the diameter of an edge finder, mm: added to both readings when the zero was set with its spindle beside the edges. */
  readonly finderRadius?: number | undefined;
}

export interface ReadoutLine {
  readonly number: number;
  readonly label: string;
  readonly diameter: number;
  /** Readings, mm. */
  readonly x: number;
  readonly y: number;
  /** Move from the line before, mm: for slides without a readout. */
  readonly dx: number;
  readonly dy: number;
}

export interface ReadoutList {
  readonly lines: readonly ReadoutLine[];
  readonly allPositive: boolean;
  readonly text: string;
}

/** Zero at the lower left of the holes' own bounds less a margin, so that every reading is positive, mm. */
export function positiveZero(holes: readonly Hole[], margin = 0): readonly [number, number] {
  if (holes.length === 0) return [0, 0];
  const least = (values: readonly number[]) => values.reduce((a, b) => Math.min(a, b));
  return [least(holes.map((hole) => hole.x)) - margin, least(holes.map((hole) => hole.y)) - margin];
}

/** The list from left to right, so that the table is always approached from one side. */
export function readoutList(holes: readonly Hole[], options: ReadoutOptions): ReadoutList {
  const { zero, finderRadius = 0 } = options;
  const sorted = [...holes].sort((a, b) => a.x - b.x || a.y - b.y);
  let before = [0, 0] as readonly [number, number];
  const lines = sorted.map((hole, index): ReadoutLine => {
    const x = hole.x - zero[0] + finderRadius;
    const y = hole.y - zero[1] + finderRadius;
    const line = {
      number: index + 1,
      label: hole.label,
      diameter: hole.diameter,
      x,
      y,
      dx: x - before[0],
      dy: y - before[1],
    };
    before = [x, y];
    return line;
  });
  const allPositive = lines.every(({ x, y }) => x >= 0 && y >= 0);
  return { lines, allPositive, text: readoutText(lines, options) };
}

function readoutText(lines: readonly ReadoutLine[], { display, zeroSays, finderRadius }: ReadoutOptions): string {
  const show = (mm: number) => lengthText(mm, display);
  const finder = finderRadius ? ` Readings hold the finder's radius of ${show(finderRadius)}.` : '';
  const text = [
    `Readout, ${unitName(display)}. Zero: ${zeroSays}. Absolute; come to each hole from the lower left.${finder}`,
  ];
  for (const { number, label, diameter, x, y } of lines) {
    text.push(`${number}. X ${show(x)}  Y ${show(y)}  Ø ${show(diameter)}  ${label}`);
  }
  const [first] = lines;
  if (first) text.push(`Back to 1: X ${show(first.x)}  Y ${show(first.y)} must find the first hole again.`);
  return `${text.join('\n')}\n`;
}
