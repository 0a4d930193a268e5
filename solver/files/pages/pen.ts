/** Puts marks on a page: rules, boxes and text that fits its place. */
import { shownText } from '../../movement/index.ts';
import {
  type Box,
  type Colour,
  INK,
  type Ink,
  line,
  type Page,
  type PageMark,
  type TypeMeasure,
  type Weight,
} from './page.ts';

/** How a line of text is set, sizes in mm. */
export interface TextStyle {
  readonly size: number;
  readonly weight?: Weight | undefined;
  readonly colour?: Colour | undefined;
  readonly align?: 'left' | 'middle' | 'right' | undefined;
  /** Longest run, mm; longer text is cut with an ellipsis. */
  readonly within?: number | undefined;
}

/** Leading of text set in several lines, as a part of its size. */
export const LEADING = 1.35;

/** Collects the marks of one page. */
export class Pen {
  readonly marks: PageMark[] = [];

  constructor(
    readonly measure: TypeMeasure,
    readonly width: number,
    readonly height: number,
  ) {}

  page(): Page {
    return { width: this.width, height: this.height, marks: this.marks };
  }

  rule(x1: number, y1: number, x2: number, y2: number, ink: Ink = line(0.2)): void {
    this.marks.push({ kind: 'line', from: [x1, y1], to: [x2, y2], ink });
  }

  box([minX, minY, maxX, maxY]: Box, ink: Ink = line(0.2)): void {
    const corner = (x: number, y: number) => ({ x, y, bulge: 0 });
    const vertices = [corner(minX, minY), corner(maxX, minY), corner(maxX, maxY), corner(minX, maxY)];
    this.marks.push({ kind: 'path', vertices, closed: true, ink });
  }

  fill(box: Box, colour: Colour): void {
    this.marks.push({ kind: 'fill', box, colour });
  }

  clip(box: Box, marks: readonly PageMark[]): void {
    this.marks.push({ kind: 'clip', box, marks });
  }

  /** Text with its baseline at y; gives the width that it took, mm. */
  text(x: number, y: number, given: string, style: TextStyle): number {
    const words = shownText(given);
    const { size, weight = 'regular', colour = INK, align = 'left' } = style;
    const text = style.within === undefined ? words : this.fitted(words, style.within, size, weight);
    const width = this.measure.width(text, size, weight);
    const left = align === 'left' ? x : align === 'right' ? x - width : x - width / 2;
    if (text !== '') this.marks.push({ kind: 'text', at: [left, y], size, text, weight, colour });
    return width;
  }

  /** Text in lines of at most `within` mm, the first baseline at y; gives the baseline after the last line. */
  paragraph(x: number, y: number, words: string, within: number, style: TextStyle): number {
    let at = y;
    for (const piece of this.linesOf(words, within, style)) {
      this.text(x, at, piece, style);
      at -= style.size * LEADING;
    }
    return at;
  }

  /** The lines that a paragraph takes. */
  linesOf(words: string, within: number, style: TextStyle): readonly string[] {
    const { size, weight = 'regular' } = style;
    const lines: string[] = [];
    let current = '';
    for (const word of words.split(/\s+/).filter((each) => each !== '')) {
      const longer = current === '' ? word : `${current} ${word}`;
      if (current !== '' && this.measure.width(longer, size, weight) > within) {
        lines.push(current);
        current = word;
      } else current = longer;
    }
    return current === '' ? lines : [...lines, current];
  }

  private fitted(text: string, within: number, size: number, weight: Weight): string {
    if (this.measure.width(text, size, weight) <= within) return text;
    const letters = [...text];
    while (letters.length > 0 && this.measure.width(`${letters.join('')}…`, size, weight) > within) letters.pop();
    return letters.length === 0 ? '' : `${letters.join('').trimEnd()}…`;
  }
}
