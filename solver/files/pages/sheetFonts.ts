/** The faces that sheets are set in: widths for layout, and subsets for embedding. The bytes come from the caller. */
import * as fontkit from 'fontkit';
import type { TypeMeasure, Weight } from './page.ts';

/** The font files of both weights. */
export interface FontBytes {
  /** TrueType files with Latin, Greek and Cyrillic. */
  readonly regular: Uint8Array;
  readonly bold: Uint8Array;
}

/** What a PDF needs of one face. */
export interface FaceSubset {
  readonly name: string;
  readonly file: Uint8Array;
  /** Widths of the subset's glyphs in thousandths of the em, by their number in the subset. */
  readonly widths: readonly number[];
  /** Characters of the subset's glyphs, by their number. */
  readonly characters: readonly string[];
  readonly bounds: readonly [number, number, number, number];
  readonly ascent: number;
  readonly descent: number;
  readonly capHeight: number;
}

/** What fontkit gives for a TrueType file; its own types name more than is used and miss the glyph numbers of subsets. */
interface Face {
  readonly unitsPerEm: number;
  readonly ascent: number;
  readonly descent: number;
  readonly capHeight: number;
  readonly postscriptName: string;
  readonly bbox: { readonly minX: number; readonly minY: number; readonly maxX: number; readonly maxY: number };
  hasGlyphForCodePoint(code: number): boolean;
  glyphForCodePoint(code: number): { readonly id: number; readonly advanceWidth: number };
  getGlyph(id: number): { readonly advanceWidth: number };
  createSubset(): { includeGlyph(id: number): number; encode(): Uint8Array };
}

/** Two faces ready for layout. Reading them takes some milliseconds; keep the result. */
export class SheetFonts implements TypeMeasure {
  private readonly faces: Readonly<Record<Weight, Face>>;
  private readonly advances: Readonly<Record<Weight, Map<number, number>>> = { regular: new Map(), bold: new Map() };

  constructor(bytes: FontBytes) {
    this.faces = { regular: faceOf(bytes.regular), bold: faceOf(bytes.bold) };
  }

  /** Width of a text set without kerning, mm. */
  width(text: string, size: number, weight: Weight): number {
    let sum = 0;
    for (const character of text) sum += this.advance(character.codePointAt(0) ?? 0, weight);
    return (sum * size) / this.faces[weight].unitsPerEm;
  }

  /** Glyph number for a character, 0 (an open box) where the face has none. */
  glyphOf(code: number, weight: Weight): number {
    return this.faces[weight].glyphForCodePoint(code).id;
  }

  /** A subset of one face holding the characters of a text, in the order in which they come. */
  startSubset(weight: Weight): FaceWriter {
    return new FaceWriter(this.faces[weight], weight);
  }

  private advance(code: number, weight: Weight): number {
    const known = this.advances[weight].get(code);
    if (known !== undefined) return known;
    const width = this.faces[weight].glyphForCodePoint(code).advanceWidth;
    this.advances[weight].set(code, width);
    return width;
  }
}

/** Collects the glyphs that a document uses. */
export class FaceWriter {
  private readonly subset: ReturnType<Face['createSubset']>;
  private readonly numbers = new Map<number, number>();
  private readonly widths: number[] = [];
  private readonly characters: string[] = [];

  constructor(
    private readonly face: Face,
    private readonly weight: Weight,
  ) {
    this.subset = face.createSubset();
    this.widths.push(this.scaled(face.getGlyph(0).advanceWidth));
    this.characters.push('');
  }

  /** Glyph numbers of a text within the subset, as hexadecimal words of a PDF string. */
  encode(text: string): string {
    return [...text].map((character) => this.numberOf(character).toString(16).toUpperCase().padStart(4, '0')).join('');
  }

  get isUsed(): boolean {
    return this.numbers.size > 0;
  }

  finish(): FaceSubset {
    const { bbox, ascent, descent, capHeight, postscriptName } = this.face;
    const tag = this.weight === 'bold' ? 'DWBOLD' : 'DWREGU';
    return {
      name: `${tag}+${postscriptName}`,
      file: this.subset.encode(),
      widths: this.widths,
      characters: this.characters,
      bounds: [this.scaled(bbox.minX), this.scaled(bbox.minY), this.scaled(bbox.maxX), this.scaled(bbox.maxY)],
      ascent: this.scaled(ascent),
      descent: this.scaled(descent),
      capHeight: this.scaled(capHeight),
    };
  }

  private numberOf(character: string): number {
    const code = character.codePointAt(0) ?? 0;
    const known = this.numbers.get(code);
    if (known !== undefined) return known;
    const glyph = this.face.glyphForCodePoint(code);
    const number = this.subset.includeGlyph(glyph.id);
    this.numbers.set(code, number);
    this.widths[number] = this.scaled(glyph.advanceWidth);
    this.characters[number] ??= character;
    return number;
  }

  private scaled(units: number): number {
    return Math.round((units * 1000) / this.face.unitsPerEm);
  }
}

function faceOf(bytes: Uint8Array): Face {
  // fontkit types its argument as a Node Buffer; any Uint8Array is read.
  const font = fontkit.create(bytes as Parameters<typeof fontkit.create>[0]);
  if (!('createSubset' in font)) throw new Error('the font file holds a collection, expected a single TrueType face');
  return font as unknown as Face; // the members named in Face, seen in fontkit 2.0.4
}
