/**
 * Lettering that keeps out of its own way.
 *
 * Each label offers places in order of preference; the more important label chooses first, and keeps the place it
 * had while that one is free, so that labels do not jump during a drag. A label without a free place is left out,
 * unless it must be shown. Everything here is CSS pixels; no drawing.
 */
import type { Point } from './view.ts';

export interface LabelPlace {
  /** Middle of the lettering. */
  readonly at: Point;
  /** Radians, counter-clockwise on the screen; lettering is never upside down. */
  readonly turn: number;
}

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

export interface PlacedLabel {
  readonly label: Label;
  readonly place: LabelPlace;
  /** Index of the place chosen. */
  readonly choice: number;
}

/** An upright box: [left, top, right, bottom]. */
export type Box = readonly [number, number, number, number];

/** Air round a label, px. */
const AIR = 3;
/** Side of a cell of the grid in which boxes are looked up, px; about the size of a label. */
const CELL = 64;

/** The upright box round turned lettering. */
export function boxOf(place: LabelPlace, width: number, height: number): Box {
  const c = Math.abs(Math.cos(place.turn));
  const s = Math.abs(Math.sin(place.turn));
  const halfAcross = (width * c + height * s) / 2 + AIR;
  const halfUp = (width * s + height * c) / 2 + AIR;
  return [place.at.x - halfAcross, place.at.y - halfUp, place.at.x + halfAcross, place.at.y + halfUp];
}

const overlaps = (a: Box, b: Box): boolean => a[0] < b[2] && b[0] < a[2] && a[1] < b[3] && b[1] < a[3];

/** Boxes already taken, by cells of a grid. */
class Taken {
  private readonly cells = new Map<number, Box[]>();

  add(box: Box): void {
    for (const key of cellsOf(box)) {
      const cell = this.cells.get(key);
      if (cell) cell.push(box);
      else this.cells.set(key, [box]);
    }
  }

  meets(box: Box): boolean {
    for (const key of cellsOf(box)) {
      if (this.cells.get(key)?.some((other) => overlaps(box, other))) return true;
    }
    return false;
  }
}

function* cellsOf([left, top, right, bottom]: Box): Generator<number> {
  for (let x = Math.floor(left / CELL); x <= Math.floor(right / CELL); x++) {
    for (let y = Math.floor(top / CELL); y <= Math.floor(bottom / CELL); y++) yield x * 10_007 + y;
  }
}

/**
 * Chooses a place for each label.
 *
 * @param blocked  boxes that no label may cover (signs, balloons, the title block)
 * @param window   the bench; a place that leaves it is not taken
 * @param before   key → index of the place chosen in the last frame
 */
export function placeLabels(
  labels: readonly Label[],
  blocked: readonly Box[],
  window: Box,
  before: ReadonlyMap<string, number> = new Map(),
): PlacedLabel[] {
  const taken = new Taken();
  for (const box of blocked) taken.add(box);
  const placed: PlacedLabel[] = [];
  const inOrder = [...labels].sort((a, b) => b.rank - a.rank || (a.key < b.key ? -1 : 1));
  for (const label of inOrder) {
    const choice = chooseFor(label, taken, window, before.get(label.key));
    if (choice === undefined) continue;
    const place = label.places[choice];
    if (!place) continue;
    taken.add(boxOf(place, label.width, label.height));
    placed.push({ label, place, choice });
  }
  return placed;
}

function chooseFor(label: Label, taken: Taken, window: Box, last: number | undefined): number | undefined {
  const isFree = (index: number): boolean => {
    const place = label.places[index];
    if (!place) return false;
    const box = boxOf(place, label.width, label.height);
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
