/** The same holes by another way: what the maker chooses, and the list it gives. */

import { seenHoles } from '../../solver/files/index.ts';
import {
  centreZero,
  cornersOf,
  cornerZero,
  type Face,
  type Hole,
  holesOf,
  type PlateView,
  plateViewOf,
  type Zero,
} from '../../solver/marking/index.ts';
import {
  buttonList,
  chordList,
  edgeOffsets,
  positivePreset,
  positiveZero,
  readoutList,
  rotaryList,
  type TableError,
} from '../../solver/marking/ways/index.ts';
import type { LengthDisplay } from '../../solver/movement/decimal.ts';
import type { PlacedMovement } from '../../solver/planting/placed.ts';

export const WAYS = {
  readout: 'Readout or slides',
  rotary: 'Rotary table',
  dividers: 'Dividers from two holes',
  buttons: 'Over buttons and pins',
  edges: 'From the edges',
} as const;
export type Way = keyof typeof WAYS;

/** Turns of the handle for one of the table that are common. */
export const RATIOS = [40, 60, 72, 90] as const;

/** What the maker chose. */
export interface WayChoice {
  readonly way: Way;
  readonly plate: string | undefined;
  readonly face: Face | undefined;
  /** Id of the hole at zero, in the middle, or the first base, or the key of a zero; lowest readings or first hole when none. */
  readonly first: string | undefined;
  /** Second base hole. */
  readonly second: string | undefined;
  readonly ratio: number;
  readonly zeroDeg: number;
  readonly clockwise: boolean;
  /** Diameter of the edge finder, mm; 0 without. */
  readonly finder: number;
  /** Diameter of buttons, mm; each hole's own diameter when 0. */
  readonly button: number;
  /** Diameters of the pins or buttons that stand for single holes, mm, by the holes' ids. */
  readonly pins?: Readonly<Record<string, number>> | undefined;
  /** The readout is set at zero so that every reading comes out positive. */
  readonly positive?: boolean | undefined;
  /** The moves from hole to hole are told as well. */
  readonly moves?: boolean | undefined;
  /** Names of the edges to measure from. */
  readonly edges?: readonly string[] | undefined;
  readonly errors: readonly TableError[];
}

/** Holes of a plate's face, as seen. */
export function holesSeen(placed: PlacedMovement, plate: string | undefined, face: Face | undefined): readonly Hole[] {
  return seenHoles(plateViewOf(placed.movement, plate, face), holesOf(placed, plate));
}

/** A zero that the readout can be set at: no hole's id begins with a blank. */
export interface OfferedZero {
  readonly key: string;
  readonly says: string;
  readonly zero: Zero;
}

/** Corners and centre of a plate, then the lowest readings of all holes, then the holes themselves. */
export function zerosOf(view: PlateView, holes: readonly Hole[]): readonly OfferedZero[] {
  const corners = cornersOf(view).flatMap((corner): OfferedZero[] => {
    const zero = cornerZero(view, corner);
    return zero ? [{ key: ` ${corner}`, says: `${corner} corner`, zero }] : [];
  });
  const centre = centreZero(view);
  const lowest: Zero = {
    at: positiveZero(holes),
    says: 'the lowest X and the lowest Y of all holes, so that every reading is positive',
    side: [0, 0],
  };
  return [
    ...corners,
    ...(centre ? [{ key: ' centre', says: 'centre of the plate', zero: centre }] : []),
    { key: ' lowest', says: 'lowest X and Y of the holes', zero: lowest },
    ...holes.map((hole): OfferedZero => {
      const zero: Zero = { at: [hole.x, hole.y], says: hole.label, side: [0, 0] };
      return { key: hole.id, says: hole.label, zero };
    }),
  ];
}

/** The list, or why there is none. */
export function wayText(
  placed: PlacedMovement,
  choice: WayChoice,
): { readonly text: string; readonly isList: boolean } {
  const view = plateViewOf(placed.movement, choice.plate, choice.face);
  const holes = holesSeen(placed, choice.plate, choice.face);
  const { display } = placed.movement;
  const holeOf = (id: string | undefined, otherwise: number): Hole | undefined =>
    holes.find((hole) => hole.id === id) ?? holes[otherwise];
  const list = (text: string) => ({ text: `${view.faceLabel}\n${text}`, isList: true });
  const none = (text: string) => ({ text, isList: false });
  const first = holeOf(choice.first, 0);
  if (!first) return none('This plate has no settled holes yet.');
  if (choice.way === 'readout') {
    return list(readoutText(view, holes, choice, display));
  }
  if (choice.way === 'rotary') {
    const { ratio, zeroDeg, errors } = choice;
    const sense = choice.clockwise ? 'clockwise' : 'anticlockwise';
    const centre = [first.x, first.y] as const;
    return list(rotaryList(holes, { display, centre, centreSays: first.label, ratio, zeroDeg, sense, errors }).text);
  }
  if (choice.way === 'edges') {
    const offsets = edgeOffsets(holes, view, display, choice.edges);
    return offsets ? list(offsets.text) : none('This plate has no upright and level straight edge to measure from.');
  }
  const second = holeOf(choice.second, 1);
  if (!second || second === first) return none('Two different holes are needed to measure from: choose another.');
  if (choice.way === 'dividers') return list(chordList(holes, first, second, display).text);
  const { button, pins } = choice;
  const pinOf = (hole: Hole): number => pins?.[hole.id] || button || hole.diameter;
  return list(buttonList(holes, first, second, display, pinOf).text);
}

function readoutText(view: PlateView, holes: readonly Hole[], choice: WayChoice, display: LengthDisplay): string {
  const zeros = zerosOf(view, holes);
  const chosen = zeros.find(({ key }) => key === choice.first) ?? zeros.find(({ key }) => key === ' lowest');
  const { at, says, side } = chosen?.zero ?? { at: [0, 0], says: 'the origin of the drawing', side: [0, 0] };
  return readoutList(holes, {
    display,
    zero: at,
    zeroSays: says,
    // A finder stands beside edges only; over a hole the spindle is centred.
    finderRadius: side[0] === 0 ? 0 : choice.finder / 2,
    finderSide: side,
    moves: choice.moves,
    preset: choice.positive ? positivePreset(holes, at, display) : undefined,
  }).text;
}

/** The table of errors that was typed, or which line is wrong. */
export type ErrorsRead =
  | { readonly kind: 'errors'; readonly errors: readonly TableError[] }
  | { readonly kind: 'problem'; readonly says: string };

/** Reads an error table: on each line the true angle and how much too high the table reads there, both in degrees. */
export function readErrors(text: string): ErrorsRead {
  const errors: TableError[] = [];
  for (const line of text.split('\n').filter((each) => each.trim() !== '')) {
    const [atDeg = Number.NaN, readsHighDeg = Number.NaN, ...more] = line
      .trim()
      .split(/[\s;]+/)
      .map(Number);
    const isGood = atDeg >= 0 && atDeg < 360 && Math.abs(readsHighDeg) < 1 && more.length === 0;
    if (!isGood) {
      return {
        kind: 'problem',
        says: `"${line.trim()}": an angle from 0 to 360 and the error there, under 1, are wanted, both in degrees: 90 0.012`,
      };
    }
    errors.push({ atDeg, readsHighDeg });
  }
  return { kind: 'errors', errors };
}
