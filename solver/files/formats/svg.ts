/** Drawings as vector pictures, true size. */
import { foundInDrawing } from '../preflight/found.ts';
import { readSvg } from '../preflight/readSvg.ts';
import type { FileFormat } from './format.ts';

/** Drawings as vector pictures; written by `write/svg.ts`, printed pages by `pages/pageSvg.ts`. */
export const svg: FileFormat<'svg'> = {
  name: 'svg',
  ending: '.svg',
  called: 'SVG',
  seen: 'picture',
  holds: 'drawing',
  readBack: (text) => foundInDrawing(readSvg(text)),
};
