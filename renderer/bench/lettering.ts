/**
 * Lettering on the bench: names of arbors and posts, and dimensions, drawn on a canvas of their own at the
 * screen's full resolution. Which label stands where is decided by `placeLabels`.
 */
import { type Box, type Label, type LabelPlace, type PlacedLabel, placeLabels } from './labelPlacement.ts';
import type { Point } from './view.ts';

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

export class Lettering {
  private readonly paint: CanvasRenderingContext2D;
  private readonly widths = new Map<string, number>();
  private chosen = new Map<string, number>();

  constructor(canvas: HTMLCanvasElement) {
    const paint = canvas.getContext('2d');
    if (!paint) throw new Error('This window cannot draw lettering: no 2D canvas.');
    this.paint = paint;
  }

  /** Widths are measured again, after a font came in. */
  forgetWidths(): void {
    this.widths.clear();
  }

  /**
   * Draws the labels that find a place, and the leads.
   *
   * @returns what was placed, for words beside the picture
   */
  draw(
    lettered: readonly Lettered[],
    leads: readonly Lead[],
    blocked: readonly Box[],
    size: { readonly width: number; readonly height: number; readonly ratio: number },
    colours: LetteringColours,
  ): readonly PlacedLabel[] {
    const { paint } = this;
    const { canvas } = paint;
    const across = Math.floor(size.width * size.ratio);
    const up = Math.floor(size.height * size.ratio);
    if (canvas.width !== across || canvas.height !== up) {
      canvas.width = across;
      canvas.height = up;
    }
    paint.setTransform(size.ratio, 0, 0, size.ratio, 0, 0);
    paint.clearRect(0, 0, size.width, size.height);
    this.drawLeads(leads, colours.scribe);
    const byKey = new Map(lettered.map((item) => [item.key, item]));
    const labels = lettered.map((item) => this.measured(item));
    const placed = placeLabels(labels, blocked, [4, 4, size.width - 4, size.height - 4], this.chosen);
    this.chosen = new Map(placed.map(({ label, choice }) => [label.key, choice]));
    for (const { label, place } of placed) {
      const item = byKey.get(label.key);
      if (item) this.write(item, place, colours);
    }
    return placed;
  }

  private measured(item: Lettered): Label {
    return {
      key: item.key,
      text: item.text,
      width: this.widthOf(item),
      height: item.sizePx * 1.25,
      rank: item.rank,
      must: item.must ?? false,
      places: item.places,
    };
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

  private write(item: Lettered, place: LabelPlace, colours: LetteringColours): void {
    const { paint } = this;
    paint.save();
    paint.translate(place.at.x, place.at.y);
    paint.rotate(-place.turn);
    paint.font = this.fontOf(item);
    paint.textAlign = 'center';
    paint.textBaseline = 'middle';
    paint.lineJoin = 'round';
    paint.lineWidth = 6;
    paint.strokeStyle = colours.sheet;
    paint.strokeText(item.text, 0, 0.5);
    paint.fillStyle = colours[item.pen];
    paint.fillText(item.text, 0, 0.5);
    paint.restore();
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
