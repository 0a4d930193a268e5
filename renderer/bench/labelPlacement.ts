/**
 * Lettering that keeps out of its own way.
 *
 * Each label offers places in order of preference; the more important label chooses first, and keeps the place it
 * had while that one is free, so that labels do not jump during a drag. A label without a free place is left out,
 * unless it must be shown. Everything here is CSS pixels; no drawing.
 */
import type { Point } from '../../solver/geometry/index.ts';

/** A place where a label may stand, CSS pixels. */
export interface LabelPlace {
  /** Middle of the lettering. */
  readonly at: Point;
  /** Radians, anticlockwise on the screen; lettering is never upside down. */
  readonly turn: number;
}

/** Lettering that looks for a place, sizes in CSS pixels. */
export interface Label {
  readonly key: string;
  readonly text: string;
  readonly width: number;
  readonly height: number;
  /** Higher chooses first. */
  readonly rank: number;
  /** Shown even where it covers something. */
  readonly must: boolean;
  readonly places: readonly LabelPlace[];
}

/** A label at the place it was given. */
export interface PlacedLabel<Kind extends Label = Label> {
  readonly label: Kind;
  readonly place: LabelPlace;
  /** Index of the place chosen. */
  readonly choice: number;
}

/** An upright box: [left, top, right, bottom]. */
export type LabelBox = readonly [number, number, number, number];

/** Air round a label, px. */
const AIR = 3;
/** Side of a cell of the grid in which boxes are looked up, px; about the size of a label. */
const CELL = 64;

/** The upright box round turned lettering. */
export function boxOf(place: LabelPlace, width: number, height: number): LabelBox {
  const c = Math.abs(Math.cos(place.turn));
  const s = Math.abs(Math.sin(place.turn));
  const halfAcross = (width * c + height * s) / 2 + AIR;
  const halfUp = (width * s + height * c) / 2 + AIR;
  return [place.at.x - halfAcross, place.at.y - halfUp, place.at.x + halfAcross, place.at.y + halfUp];
}

/** Boxes already taken, by cells of a grid over the window; a box that reaches outside lies in the cells of the rim. */
class Taken {
  private readonly cells: (LabelBox[] | undefined)[] = [];
  private readonly left: number;
  private readonly top: number;
  private readonly lastColumn: number;
  private readonly lastRow: number;

  constructor([left, top, right, bottom]: LabelBox) {
    this.left = left;
    this.top = top;
    this.lastColumn = Math.max(0, Math.floor((right - left) / CELL));
    this.lastRow = Math.max(0, Math.floor((bottom - top) / CELL));
  }

  add(box: LabelBox): void {
    const [first, last] = [this.columnOf(box[0]), this.columnOf(box[2])];
    const end = this.rowOf(box[3]);
    for (let row = this.rowOf(box[1]); row <= end; row++) {
      for (let column = first; column <= last; column++) {
        const at = row * (this.lastColumn + 1) + column;
        const cell = this.cells[at];
        if (cell) cell.push(box);
        else this.cells[at] = [box];
      }
    }
  }

  meets(box: LabelBox): boolean {
    const [first, last] = [this.columnOf(box[0]), this.columnOf(box[2])];
    const end = this.rowOf(box[3]);
    for (let row = this.rowOf(box[1]); row <= end; row++) {
      for (let column = first; column <= last; column++) {
        const cell = this.cells[row * (this.lastColumn + 1) + column];
        if (cell && overlapsAny(box, cell)) return true;
      }
    }
    return false;
  }

  private columnOf(x: number): number {
    return Math.min(this.lastColumn, Math.max(0, Math.floor((x - this.left) / CELL)));
  }

  private rowOf(y: number): number {
    return Math.min(this.lastRow, Math.max(0, Math.floor((y - this.top) / CELL)));
  }
}

function overlapsAny(box: LabelBox, others: readonly LabelBox[]): boolean {
  for (const other of others) {
    if (box[0] < other[2] && other[0] < box[2] && box[1] < other[3] && other[1] < box[3]) return true;
  }
  return false;
}

/** Boxes of a label's places; a label that is the same from frame to frame has them found once. */
const boxesKnown = new WeakMap<Label, (LabelBox | undefined)[]>();

function boxAt(label: Label, index: number, place: LabelPlace): LabelBox {
  const known = boxesKnown.get(label);
  const boxes = known ?? [];
  if (!known) boxesKnown.set(label, boxes);
  const box = boxes[index] ?? boxOf(place, label.width, label.height);
  boxes[index] = box;
  return box;
}

/**
 * Chooses a place for each label.
 *
 * @param blocked  boxes that no label may cover (signs, balloons, the title block)
 * @param window   the bench; a place that leaves it is not taken
 * @param before   key → index of the place chosen in the last frame
 */
export function placeBenchLabels<Kind extends Label>(
  labels: readonly Kind[],
  blocked: readonly LabelBox[],
  window: LabelBox,
  before: ReadonlyMap<string, number> = new Map(),
): PlacedLabel<Kind>[] {
  const taken = new Taken(window);
  for (const box of blocked) taken.add(box);
  const placed: PlacedLabel<Kind>[] = [];
  const inOrder = [...labels].sort((a, b) => b.rank - a.rank || (a.key < b.key ? -1 : 1));
  for (const label of inOrder) {
    const choice = chooseFor(label, taken, window, before.get(label.key));
    if (choice === undefined) continue;
    const place = label.places[choice];
    if (!place) continue;
    taken.add(boxAt(label, choice, place));
    placed.push({ label, place, choice });
  }
  return placed;
}

function chooseFor(label: Label, taken: Taken, window: LabelBox, last: number | undefined): number | undefined {
  const isFree = (index: number): boolean => {
    const place = label.places[index];
    if (!place) return false;
    const box = boxAt(label, index, place);
    const inside = box[0] >= window[0] && box[1] >= window[1] && box[2] <= window[2] && box[3] <= window[3];
    return inside && !taken.meets(box);
  };
  if (last !== undefined && isFree(last)) return last;
  const free = label.places.findIndex((_, index) => isFree(index));
  if (free >= 0) return free;
  return label.must && label.places.length > 0 ? 0 : undefined;
}

/** A turn that keeps lettering readable from below or from the right. */
export function readable(turn: number): number {
  const whole = Math.atan2(Math.sin(turn), Math.cos(turn));
  if (whole > Math.PI / 2 + 1e-9) return whole - Math.PI;
  if (whole <= -Math.PI / 2 + 1e-9) return whole + Math.PI;
  return whole;
}
