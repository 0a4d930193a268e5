/** The files of one wheel: its outline in two formats, its numbers and its check-off list as text. */
import { type CuttingData, textOfCheckOff, textOfCutting } from '../../teeth/cutting/index.ts';
import type { WheelOutline } from '../../teeth/outlines/index.ts';
import type { Sheet } from '../sheetsOf.ts';
import { writeDxf } from '../write/dxf.ts';
import { writeSvg } from '../write/svg.ts';
import { wheelDrawing } from './wheelDrawing.ts';

/** A name that every file system takes. */
const fileName = (name: string): string =>
  name
    .replace(/[^\p{L}\p{N} ._-]+/gu, ' ')
    .replace(/\s+/g, ' ')
    .trim()
    .slice(0, 80) || 'wheel';

/** Numbers, warnings, cautions and the list, ready to print and take to the bench. */
function cuttingText(data: CuttingData, tableRatio: number): string {
  return [
    textOfCutting(data),
    data.cautions.map((line) => `! ${line}`).join('\n'),
    `Rotary table of ${tableRatio}:1, one line a tooth, every tenth boxed:`,
    textOfCheckOff(data),
    '',
  ].join('\n\n');
}

/**
 * DXF, SVG and text of a wheel.
 *
 * @param outline    absent for teeth that cannot be drawn: the text is written all the same
 * @param tableRatio turns of the handle for one turn of the table, as the data was worked out for
 */
export function wheelFiles(data: CuttingData, outline: WheelOutline | undefined, tableRatio: number): readonly Sheet[] {
  const name = fileName(data.name);
  const text = { name: `${name} cutting.txt`, text: cuttingText(data, tableRatio) };
  if (!outline) return [text];
  const drawing = wheelDrawing(data.name, outline);
  return [{ name: `${name}.dxf`, text: writeDxf(drawing) }, { name: `${name}.svg`, text: writeSvg(drawing) }, text];
}
