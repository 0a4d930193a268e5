/**
 * Holes by distances between them: dividers set to chords, calipers over pins or buttons, and the table of all
 * hole-to-hole distances as a check of everything.
 */

import { decimalLengthText, type LengthDisplay, unitName } from '../../movement/decimal.ts';
import { ONE_PLACE } from '../../tolerances.ts';
import type { Hole } from '../marks.ts';

/** A hole told by its distances from two others, and the side on which it lies. */
export interface ChordLine {
  readonly label: string;
  readonly diameter: number;
  /** Distances from the first and the second base hole, mm. */
  readonly first: number;
  readonly second: number;
  /** Of the line from the first to the second base hole, as seen. */
  readonly side: 'left' | 'right' | 'on the line';
}

/** Holes by their distances from two base holes. */
export interface ChordList {
  /** Distance between the two base holes, mm. */
  readonly base: number;
  readonly lines: readonly ChordLine[];
  readonly text: string;
}

/** Below this share of the base a hole counts as on the line through both: the side says nothing there. */
const ON_LINE = 1e-9;

/** Divider settings of every hole from two base holes. */
export function chordList(holes: readonly Hole[], first: Hole, second: Hole, display: LengthDisplay): ChordList {
  const base = apart(first, second);
  const rest = holes.filter((hole) => apart(hole, first) > ONE_PLACE && apart(hole, second) > ONE_PLACE);
  const lines = rest.map((hole): ChordLine => {
    const turn = (second.x - first.x) * (hole.y - first.y) - (second.y - first.y) * (hole.x - first.x);
    const side = Math.abs(turn) <= ON_LINE * base * base ? 'on the line' : turn > 0 ? 'left' : 'right';
    return { label: hole.label, diameter: hole.diameter, first: apart(hole, first), second: apart(hole, second), side };
  });
  const show = (mm: number) => decimalLengthText(mm, display);
  const text = [
    `Dividers, ${unitName(display)}. Base: ${first.label} to ${second.label}, ${show(base)} apart.`,
    ...lines.map(
      (line) =>
        `${line.label}: ${show(line.first)} from ${first.label}, ${show(line.second)} from ${second.label}, ${sideWords(line.side)}`,
    ),
  ];
  return { base, lines, text: `${text.join('\n')}\n` };
}

const sideWords = (side: ChordLine['side']): string => (side === 'on the line' ? side : `on the ${side}`);

/** One measurement over or inside two pins that stand in two holes. */
export interface PinLine {
  readonly from: string;
  readonly to: string;
  readonly pins: readonly [number, number];
  /** Outside over both pins, inside between them, mm; the inside is left out where the pins touch. */
  readonly over: number;
  readonly inside?: number;
  readonly distance: number;
}

/** Readings over pins of stated diameters in two holes. */
export function overPins(a: Hole, b: Hole, pins: readonly [number, number]): PinLine {
  const distance = apart(a, b);
  const half = (pins[0] + pins[1]) / 2;
  const inside = distance - half;
  return { from: a.label, to: b.label, pins, over: distance + half, distance, ...(inside > 0 ? { inside } : {}) };
}

/**
 * Buttons set from two holes that are there: what the calipers must read over a pin in each base hole and the button.
 *
 * @param pinOf diameter of the pin or button that stands for a hole, mm; its own diameter when left out
 */
export function buttonList(
  holes: readonly Hole[],
  first: Hole,
  second: Hole,
  display: LengthDisplay,
  pinOf: (hole: Hole) => number = (hole) => hole.diameter,
): { readonly lines: readonly (readonly [PinLine, PinLine])[]; readonly text: string } {
  const rest = holes.filter((hole) => apart(hole, first) > ONE_PLACE && apart(hole, second) > ONE_PLACE);
  const lines = rest.map((hole) => {
    const button = pinOf(hole);
    return [overPins(hole, first, [button, pinOf(first)]), overPins(hole, second, [button, pinOf(second)])] as const;
  });
  const show = (mm: number) => decimalLengthText(mm, display);
  const base = overPins(first, second, [pinOf(first), pinOf(second)]);
  const text = [
    `Over buttons and pins, ${unitName(display)}. Pins: ${show(pinOf(first))} in ${first.label}, ${show(pinOf(second))} in ${second.label}.`,
    `Over both pins first: ${show(base.over)} must be read from ${first.label} to ${second.label}.`,
  ];
  for (const [a, b] of lines) {
    text.push(`${a.from}, button ${show(a.pins[0])}: over ${show(a.over)} to ${a.to}, over ${show(b.over)} to ${b.to}`);
  }
  return { lines, text: `${text.join('\n')}\n` };
}

/** Distances between all pairs of holes, mm: entry [i][j]. */
export function distanceTable(holes: readonly Hole[]): readonly (readonly number[])[] {
  return holes.map((a) => holes.map((b) => apart(a, b)));
}

const apart = (a: Hole, b: Hole): number => Math.hypot(a.x - b.x, a.y - b.y);
