/**
 * Lettering on the bench: names of arbors and posts, and dimensions, drawn on a canvas of their own at the
 * screen's full resolution. Which label stands where is decided by `placeLabels`.
 *
 * A label is told by the same `Lettered` object as long as it is the same. So from one frame to the next only the
 * patches are painted anew where a label came, went or moved, with all that reaches into them: the picture is the
 * one that painting everything gives (a test compares the two).
 */

import type { Point } from '../../solver/geometry/index.ts';
import {
  boxOf,
  type Label,
  type LabelBox,
  type LabelPlace,
  type PlacedLabel,
  placeBenchLabels,
} from './labelPlacement.ts';
import { boxesMeet, devicePatch, patchesOf } from './letteringPatches.ts';

/** A label before its width is known. */
export interface Lettered {
  readonly key: string;
  readonly text: string;
  readonly rank: number;
  readonly must?: boolean;
  readonly pen: 'ink' | 'soft' | 'scribe' | 'chosen';
  readonly bold?: boolean;
  readonly sizePx: number;
  readonly places: readonly LabelPlace[];
}

/** A thin line from a balloon or a label to its place, CSS pixels. */
export interface Lead {
  readonly from: Point;
  readonly to: Point;
}

export type LetteringColours = Readonly<Record<Lettered['pen'] | 'sheet', string>>;

const FACE = '"Atkinson Hyperlegible", "Signs", sans-serif';
/** Width of the ring of sheet round letters, CSS pixels. */
const HALO = 6;
/** How far ink and halo may reach beyond the air that a label keeps, CSS pixels. */
const SPILL = 4;

/** Size of the canvas, CSS pixels, and device pixels for each. */
export interface LetteringSize {
  readonly width: number;
  readonly height: number;
  readonly ratio: number;
}

/** A label with the words that it stands for. */
interface MeasuredLabel extends Label {
  readonly item: Lettered;
}

/** A label as it stands on the canvas. */
interface Standing {
  readonly item: Lettered;
  readonly place: LabelPlace;
  readonly box: LabelBox;
}

/** Paints words on the canvas, only where they changed. */
export class Lettering {
  private readonly paint: CanvasRenderingContext2D;
  private readonly widths = new Map<string, number>();
  private known = new WeakMap<Lettered, MeasuredLabel>();
  private chosen = new Map<string, number>();
  private standing = new Map<string, Standing>();
  /** Colours that the canvas was painted in; none when all of it must be painted. */
  private worn: LetteringColours | undefined;
  private hasLeads = false;
  private font = '';

  constructor(canvas: HTMLCanvasElement) {
    const paint = canvas.getContext('2d');
    if (!paint) throw new Error('This window cannot draw lettering: no 2D canvas.');
    this.paint = paint;
  }

  /** Widths are measured again, after a font came in. */
  forgetWidths(): void {
    this.widths.clear();
    this.known = new WeakMap();
    this.worn = undefined;
  }

  /**
   * Draws the labels that find a place, and the leads.
   *
   * @returns what was placed, for words beside the picture
   */
  draw(
    lettered: readonly Lettered[],
    leads: readonly Lead[],
    blocked: readonly LabelBox[],
    size: LetteringSize,
    colours: LetteringColours,
  ): readonly PlacedLabel[] {
    this.fitCanvas(size);
    const labels = lettered.map((item) => this.measured(item));
    const placed = placeBenchLabels(labels, blocked, [4, 4, size.width - 4, size.height - 4], this.chosen);
    this.chosen = new Map(placed.map(({ label, choice }) => [label.key, choice]));
    const before = this.standing;
    this.standing = new Map(placed.map(({ label, place }) => [label.key, this.standingOf(label, place, before)]));
    const patches =
      this.worn === colours && leads.length === 0 && !this.hasLeads ? patchesOf(before, this.standing) : undefined;
    this.worn = colours;
    this.hasLeads = leads.length > 0;
    this.font = '';
    if (patches) for (const patch of patches) this.paintPatch(patch, size, colours);
    else this.paintAll(leads, size, colours);
    return placed;
  }

  private fitCanvas({ width, height, ratio }: LetteringSize): void {
    const { canvas } = this.paint;
    const across = Math.floor(width * ratio);
    const up = Math.floor(height * ratio);
    if (canvas.width === across && canvas.height === up) return;
    canvas.width = across;
    canvas.height = up;
    this.worn = undefined;
  }

  private standingOf(label: MeasuredLabel, place: LabelPlace, before: ReadonlyMap<string, Standing>): Standing {
    const last = before.get(label.key);
    if (last?.item === label.item && last.place === place) return last;
    const [left, top, right, bottom] = boxOf(place, label.width, label.height);
    return { item: label.item, place, box: [left - SPILL, top - SPILL, right + SPILL, bottom + SPILL] };
  }

  private paintAll(leads: readonly Lead[], { width, height, ratio }: LetteringSize, colours: LetteringColours): void {
    const { paint } = this;
    paint.setTransform(ratio, 0, 0, ratio, 0, 0);
    paint.clearRect(0, 0, width, height);
    this.drawLeads(leads, colours.scribe);
    this.takePen();
    for (const standing of this.standing.values()) this.write(standing, ratio, colours);
  }

  /** Paints one patch of the sheet anew: all labels that reach into it, in their order. */
  private paintPatch(patch: LabelBox, { ratio }: LetteringSize, colours: LetteringColours): void {
    const { paint } = this;
    const [x, y, across, up] = devicePatch(patch, ratio);
    paint.save();
    paint.setTransform(1, 0, 0, 1, 0, 0);
    paint.beginPath();
    paint.rect(x, y, across, up);
    paint.clip();
    paint.clearRect(x, y, across, up);
    this.takePen();
    for (const standing of this.standing.values()) {
      if (boxesMeet(standing.box, patch)) this.write(standing, ratio, colours);
    }
    paint.restore();
    this.font = '';
  }

  private measured(item: Lettered): MeasuredLabel {
    const known = this.known.get(item);
    if (known) return known;
    const { key, text, rank, places } = item;
    const label = {
      key,
      text,
      width: this.widthOf(item),
      height: item.sizePx * 1.25,
      rank,
      must: item.must ?? false,
      places,
      item,
    };
    this.known.set(item, label);
    return label;
  }

  private fontOf(item: Lettered): string {
    return `${item.bold ? '700' : '400'} ${item.sizePx}px ${FACE}`;
  }

  private widthOf(item: Lettered): number {
    const font = this.fontOf(item);
    const key = font + item.text;
    const known = this.widths.get(key);
    if (known !== undefined) return known;
    this.paint.font = font;
    const { width } = this.paint.measureText(item.text);
    this.widths.set(key, width);
    return width;
  }

  private takePen(): void {
    const { paint } = this;
    paint.textAlign = 'center';
    paint.textBaseline = 'middle';
    paint.lineJoin = 'round';
    paint.lineWidth = HALO;
  }

  private write({ item, place }: Standing, ratio: number, colours: LetteringColours): void {
    const { paint } = this;
    const c = ratio * Math.cos(place.turn);
    const s = ratio * Math.sin(place.turn);
    paint.setTransform(c, -s, s, c, ratio * place.at.x, ratio * place.at.y);
    const font = this.fontOf(item);
    if (font !== this.font) {
      paint.font = font;
      this.font = font;
    }
    paint.strokeStyle = colours.sheet;
    paint.strokeText(item.text, 0, 0.5);
    paint.fillStyle = colours[item.pen];
    paint.fillText(item.text, 0, 0.5);
  }

  private drawLeads(leads: readonly Lead[], colour: string): void {
    const { paint } = this;
    paint.strokeStyle = colour;
    paint.fillStyle = colour;
    paint.lineWidth = 1;
    for (const { from, to } of leads) {
      paint.beginPath();
      paint.moveTo(from.x, from.y);
      paint.lineTo(to.x, to.y);
      paint.stroke();
      paint.beginPath();
      paint.arc(to.x, to.y, 2, 0, 2 * Math.PI);
      paint.fill();
    }
  }
}
