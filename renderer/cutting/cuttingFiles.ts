/** The files of one wheel: its outline in two formats, its numbers and its check-off list as text. */
import type { ExportFile } from '../../electron/bridge.ts';
import { type CuttingData, textOfCheckOff, textOfCutting, type WheelOutline } from '../../solver/gearing/index.ts';
import { writeDxf, writeSvg } from '../../solver/workshop/index.ts';
import { wheelDrawing } from './wheelDrawing.ts';

/** A name that every file system takes. */
const fileName = (name: string): string =>
  name
    .replace(/[^\p{L}\p{N} ._-]+/gu, ' ')
    .replace(/\s+/g, ' ')
    .trim()
    .slice(0, 80) || 'wheel';

/** Numbers, warnings, cautions and the list, ready to print and take to the bench. */
export function cuttingText(data: CuttingData, tableRatio: number): string {
  return [
    textOfCutting(data),
    data.cautions.map((line) => `! ${line}`).join('\n'),
    `Rotary table of ${tableRatio}:1, one line a tooth, every tenth boxed:`,
    textOfCheckOff(data),
    '',
  ].join('\n\n');
}

/** `outline` is absent for teeth that cannot be drawn: the text is written all the same. */
export function cuttingFiles(data: CuttingData, outline: WheelOutline | undefined, tableRatio: number): ExportFile[] {
  const name = fileName(data.name);
  const text = { name: `${name} cutting.txt`, content: cuttingText(data, tableRatio) };
  if (!outline) return [text];
  const drawing = wheelDrawing(data.name, outline);
  return [
    { name: `${name}.dxf`, content: writeDxf(drawing) },
    { name: `${name}.svg`, content: writeSvg(drawing) },
    text,
  ];
}
