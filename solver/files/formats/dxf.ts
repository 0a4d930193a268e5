/** Drawings for machines, by the published exchange format of layers and entities. */
import { foundInDrawing } from '../preflight/found.ts';
import { readDxf } from '../preflight/readDxf.ts';
import type { FileFormat } from './format.ts';

/** Drawings for machines; written by `write/dxf.ts`. */
export const dxf: FileFormat<'dxf'> = {
  name: 'dxf',
  ending: '.dxf',
  called: 'DXF',
  seen: 'machine',
  holds: 'drawing',
  readBack: (text) => foundInDrawing(readDxf(text)),
};
