/**
 * Holes for a digital readout or two slides with dials: absolute X and Y from a chosen zero, and the way back to the first
 * hole as a check that the zero has not moved.
 */

import { decimalFixed, decimalLengthText, type LengthDisplay, lengthPlaces, unitName } from '../../movement/decimal.ts';
import { MM_PER_INCH } from '../../movement/measures.ts';
import type { Hole } from '../marks.ts';

/** How the readout is set up. */
export interface ReadoutOptions {
  readonly display: LengthDisplay;
  /** The zero in the holes' own coordinates, mm, with its name in words. */
  readonly zero: readonly [number, number];
  readonly zeroSays: string;
  /** What the readout is set to there, mm (default 0, 0): so that every reading comes out positive, say. */
  readonly preset?: readonly [number, number] | undefined;
  /** Half the diameter of an edge finder, mm: the zero is set with its spindle beside the edges, not over them. */
  readonly finderRadius?: number | undefined;
  /** On which side the finder stands: +1 left of an upright edge or below a level one (the usual), −1 beyond it. */
  readonly finderSide?: readonly [number, number] | undefined;
  /** Also tell each move from the hole before, for slides with dials (default false). */
  readonly moves?: boolean | undefined;
}

/** The reading at one hole. */
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

/** Holes in the order of working, as data and as text. */
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

/**
 * What to set a readout to at a chosen zero so that no hole reads below nothing: whole tens of millimetres or whole
 * inches, which are easily keyed in.
 */
export function positivePreset(
  holes: readonly Hole[],
  zero: readonly [number, number],
  { unit }: LengthDisplay,
): readonly [number, number] {
  const [x, y] = positiveZero(holes);
  const step = unit === 'inch' ? MM_PER_INCH : 10;
  // A hair above a whole step is that step.
  const up = (short: number): number => (short > 1e-9 ? step * Math.ceil(short / step - 1e-9) : 0);
  return [up(zero[0] - x), up(zero[1] - y)];
}

/** The list from left to right, so that the table is always approached from one side. */
export function readoutList(holes: readonly Hole[], options: ReadoutOptions): ReadoutList {
  const { zero, finderRadius = 0, finderSide = [1, 1], preset = [0, 0] } = options;
  const sorted = [...holes].sort((a, b) => a.x - b.x || a.y - b.y);
  let before = [0, 0] as readonly [number, number];
  const lines = sorted.map((hole, index): ReadoutLine => {
    const x = hole.x - zero[0] + preset[0] + finderSide[0] * finderRadius;
    const y = hole.y - zero[1] + preset[1] + finderSide[1] * finderRadius;
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

function readoutText(lines: readonly ReadoutLine[], options: ReadoutOptions): string {
  const { display, zeroSays, finderRadius, preset = [0, 0] } = options;
  const show = (mm: number) => decimalLengthText(mm, display);
  const finder = finderRadius ? ` Readings hold the finder's radius of ${show(finderRadius)}.` : '';
  const set = preset.some((mm) => mm !== 0) ? ` Set X ${show(preset[0])} Y ${show(preset[1])} there.` : '';
  const text = [
    `Readout, ${unitName(display)}. Zero: ${zeroSays}.${set} Absolute; come to each hole from the lower left.${finder}`,
  ];
  for (const { number, label, diameter, x, y } of lines) {
    text.push(`${number}. X ${show(x)}  Y ${show(y)}  Ø ${show(diameter)}  ${label}`);
  }
  const [first] = lines;
  if (options.moves) text.push(...movesText(lines, display));
  if (first) text.push(`Back to 1: X ${show(first.x)}  Y ${show(first.y)} must find the first hole again.`);
  return `${text.join('\n')}\n`;
}

/** Moves between the printed readings, so that their rounding does not add up; the last one leads back to the first hole. */
function movesText(lines: readonly ReadoutLine[], display: LengthDisplay): string[] {
  const [first] = lines;
  if (!first) return [];
  const printed = (mm: number) => Number(decimalLengthText(mm, display));
  const signed = (from: number, to: number): string => {
    const move = printed(to) - printed(from);
    return `${move < 0 ? '-' : '+'}${decimalFixed(Math.abs(move), lengthPlaces(display))}`;
  };
  const text = ['In moves, each from the hole before, the first from zero:'];
  let [x, y] = [0, 0];
  for (const line of [...lines, first]) {
    const back = text.length > lines.length ? 'Back to ' : '';
    text.push(`${back}${line.number}: move X ${signed(x, line.x)}  Y ${signed(y, line.y)}  ${line.label}`);
    [x, y] = [line.x, line.y];
  }
  return text;
}
