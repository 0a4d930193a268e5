/** The same holes by another way: what the maker chooses, and the list it gives. */
import type { PlacedMovement } from '../../../solver/planting/index.ts';
import {
  buttonList,
  chordList,
  edgeOffsets,
  type Face,
  type Hole,
  holesOf,
  plateViewOf,
  positiveZero,
  readoutList,
  rotaryList,
  seenHoles,
  type TableError,
} from '../../../solver/workshop/index.ts';

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

export interface WayChoice {
  readonly way: Way;
  readonly plate: string | undefined;
  readonly face: Face | undefined;
  /** Id of the hole at zero, in the middle, or the first base; lowest readings or first hole when none. */
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
  readonly errors: readonly TableError[];
}

/** Holes of a plate's face, as seen. */
export function holesSeen(placed: PlacedMovement, plate: string | undefined, face: Face | undefined): readonly Hole[] {
  return seenHoles(plateViewOf(placed.movement, plate, face), holesOf(placed, plate));
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
    const chosen = holes.find((hole) => hole.id === choice.first);
    const zero = chosen ? ([chosen.x, chosen.y] as const) : positiveZero(holes);
    const zeroSays = chosen?.label ?? 'the lowest X and the lowest Y of all holes, so that every reading is positive';
    return list(readoutList(holes, { display, zero, zeroSays, finderRadius: choice.finder / 2 }).text);
  }
  if (choice.way === 'rotary') {
    const { ratio, zeroDeg, errors } = choice;
    const sense = choice.clockwise ? 'clockwise' : 'counter-clockwise';
    const centre = [first.x, first.y] as const;
    return list(rotaryList(holes, { display, centre, centreSays: first.label, ratio, zeroDeg, sense, errors }).text);
  }
  if (choice.way === 'edges') {
    const offsets = edgeOffsets(holes, view, display);
    return offsets ? list(offsets.text) : none('This plate has no upright and level straight edge to measure from.');
  }
  const second = holeOf(choice.second, 1);
  if (!second || second === first) return none('Two different holes are needed to measure from: choose another.');
  if (choice.way === 'dividers') return list(chordList(holes, first, second, display).text);
  const { button } = choice;
  return list(buttonList(holes, first, second, display, button > 0 ? () => button : undefined).text);
}

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
