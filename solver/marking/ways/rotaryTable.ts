/**
 * Holes by rotary table: radius and angle about a chosen arbor that is centred under the spindle, as turns of the handle
 * with degrees, minutes and seconds, always turned one way.
 */

import { decimalFixed, decimalLengthText, type LengthDisplay, unitName } from '../../movement/decimal.ts';
import { ONE_PLACE } from '../../tolerances.ts';
import type { Hole } from '../marks.ts';

/** One line of the maker's own error table: at this true angle the table reads this much too high, degrees. */
export interface TableError {
  readonly atDeg: number;
  readonly readsHighDeg: number;
}

/** How the table is set up. */
export interface RotaryOptions {
  readonly display: LengthDisplay;
  /** Centre in the holes' own coordinates, mm, and its name. */
  readonly centre: readonly [number, number];
  readonly centreSays: string;
  /** Turns of the handle for one turn of the table: 40, 60, 72 or 90. */
  readonly ratio: number;
  /** Direction of zero, degrees anticlockwise from the right (3 o'clock); default 0. */
  readonly zeroDeg?: number | undefined;
  /** Which way the angles on the table grow, as seen from above; default anticlockwise. */
  readonly sense?: 'anticlockwise' | 'clockwise' | undefined;
  /** The maker's error table; none when left out. */
  readonly errors?: readonly TableError[] | undefined;
}

/** The setting for one hole. */
export interface RotaryLine {
  readonly number: number;
  readonly label: string;
  readonly diameter: number;
  /** Distance from the centre, mm. */
  readonly radius: number;
  /** True angle from zero in the table's sense, degrees in [0, 360). */
  readonly angleDeg: number;
  /** What the table must read for it, its own error put in, degrees. */
  readonly readingDeg: number;
  readonly turns: number;
  readonly degrees: number;
  readonly minutes: number;
  /** Whole seconds. */
  readonly seconds: number;
  /** How far the hole moves for 0.01°, mm. */
  readonly movedByHundredthDeg: number;
}

/** Holes in the order of working, as data and as text. */
export interface RotaryList {
  readonly lines: readonly RotaryLine[];
  readonly text: string;
}

const SECONDS_A_TURN = 360 * 3600;

/** The list sorted one way round; the hole at the centre itself, if any, is left to the spindle. */
export function rotaryList(holes: readonly Hole[], options: RotaryOptions): RotaryList {
  const { centre, ratio, zeroDeg = 0 } = options;
  if (!(ratio > 0) || !Number.isInteger(ratio)) throw new RangeError(`ratio ${ratio}: expected a whole number above 0`);
  const way = options.sense === 'clockwise' ? -1 : 1;
  const polar = holes.map((hole) => {
    const dx = hole.x - centre[0];
    const dy = hole.y - centre[1];
    const angle = way * ((Math.atan2(dy, dx) * 180) / Math.PI - zeroDeg);
    return { hole, radius: Math.hypot(dx, dy), angleDeg: wholeSecondDown(((angle % 360) + 360) % 360) };
  });
  const round = polar
    .filter(({ radius }) => radius > ONE_PLACE)
    .sort((a, b) => a.angleDeg - b.angleDeg || a.radius - b.radius);
  const lines = round.map(({ hole, radius, angleDeg }, index): RotaryLine => {
    // A dial has no negative readings.
    const readingDeg = (angleDeg + readsHighAt(options.errors ?? [], angleDeg) + 360) % 360;
    return {
      number: index + 1,
      label: hole.label,
      diameter: hole.diameter,
      radius,
      angleDeg,
      readingDeg,
      ...handleOf(readingDeg, ratio),
      movedByHundredthDeg: (radius * 0.01 * Math.PI) / 180,
    };
  });
  return { lines, text: rotaryText(lines, options) };
}

/** An angle a hair below a full turn is the full turn's zero. */
const wholeSecondDown = (angleDeg: number): number => (360 - angleDeg < 1e-9 ? 0 : angleDeg);

/** A reading as turns of the handle, and what is left in degrees, minutes and whole seconds on its dial. */
function handleOf(readingDeg: number, ratio: number): Pick<RotaryLine, 'turns' | 'degrees' | 'minutes' | 'seconds'> {
  const all = Math.round(readingDeg * 3600);
  const aTurn = SECONDS_A_TURN / ratio;
  const turns = Math.floor((all + 1e-9) / aTurn);
  const rest = Math.round(all - turns * aTurn);
  return { turns, degrees: Math.floor(rest / 3600), minutes: Math.floor((rest % 3600) / 60), seconds: rest % 60 };
}

/** The table's error at an angle: straight between the maker's lines, round through 360°. */
export function readsHighAt(errors: readonly TableError[], angleDeg: number): number {
  const sorted = [...errors].sort((a, b) => a.atDeg - b.atDeg);
  const last = sorted.at(-1);
  const [first] = sorted;
  if (!first || !last) return 0;
  const ring = [{ ...last, atDeg: last.atDeg - 360 }, ...sorted, { ...first, atDeg: first.atDeg + 360 }];
  for (let index = 1; index < ring.length; index++) {
    const [low, high] = [ring[index - 1], ring[index]];
    if (!low || !high || angleDeg > high.atDeg) continue;
    const span = high.atDeg - low.atDeg;
    const part = span === 0 ? 0 : (angleDeg - low.atDeg) / span;
    return low.readsHighDeg + part * (high.readsHighDeg - low.readsHighDeg);
  }
  return 0;
}

function rotaryText(lines: readonly RotaryLine[], options: RotaryOptions): string {
  const { display, ratio, zeroDeg = 0, sense = 'anticlockwise' } = options;
  const show = (mm: number) => decimalLengthText(mm, display);
  const errors = options.errors && options.errors.length > 0 ? ' The errors of the table are put in.' : '';
  const text = [
    `Rotary table ${ratio}:1, ${unitName(display)}. Centre: ${options.centreSays}. Zero at ${decimalFixed(zeroDeg, 4)}° from the right; turn the reading ${sense} only.${errors}`,
  ];
  for (const line of lines) {
    const { number, radius, turns, degrees, minutes, seconds, movedByHundredthDeg, diameter, label } = line;
    const dial = `${turns} turns ${degrees}° ${minutes}′ ${seconds}″`;
    text.push(
      `${number}. r ${show(radius)}  ${decimalFixed(line.readingDeg, 4)}°  ${dial}  0.01° moves it ${show(movedByHundredthDeg)}  Ø ${show(diameter)}  ${label}`,
    );
  }
  if (lines.length > 0) text.push(`Close: ${ratio} turns 0° 0′ 0″ must find zero again.`);
  return `${text.join('\n')}\n`;
}
