/** The files of one wheel: its outline in two formats, its numbers and its check-off list as text. */
import type { WheelOutline } from '../../teeth/outlines/index.ts';
import { FORMATS } from '../formats/formats.ts';
import { fileName } from '../sheetNames.ts';
import { type Sheet, sheetOf } from '../sheetsOf.ts';
import { writeDxf } from '../write/dxf.ts';
import { writeSvg } from '../write/svg.ts';
import { wheelDrawing } from './wheelDrawing.ts';

/** What is said of a wheel in its files, by whoever speaks for the document. */
export interface WheelWords {
  readonly name: string;
  /** Numbers, warnings, cautions and the check-off list, ready to print and take to the machine. */
  readonly cutting: string;
}

/**
 * DXF, SVG and text of a wheel.
 *
 * @param outline absent for teeth that cannot be drawn: the text is written all the same
 */
export function wheelFiles(words: WheelWords, outline: WheelOutline | undefined): readonly Sheet[] {
  const name = fileName(words.name, 'wheel');
  const text = sheetOf(`${name} cutting`, FORMATS.text, 'cutting', words.cutting, words.name);
  if (!outline) return [text];
  const drawing = wheelDrawing(words.name, outline);
  return [
    sheetOf(name, FORMATS.dxf, 'wheel', writeDxf(drawing), words.name),
    sheetOf(name, FORMATS.svg, 'wheel', writeSvg(drawing), words.name),
    text,
  ];
}
