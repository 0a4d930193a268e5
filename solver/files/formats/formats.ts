/** All file formats, by name. */
import { drill } from './drill.ts';
import { dxf } from './dxf.ts';
import type { FileFormat, FormatName } from './format.ts';
import { movementFormat } from './movementFormat.ts';
import { pdf } from './pdf.ts';
import { svg } from './svg.ts';
import { table } from './table.ts';
import { text } from './text.ts';

/** Every format; a name without its entry here does not compile. */
export const FORMATS = { dxf, svg, drill, table, text, pdf, movement: movementFormat } satisfies {
  readonly [Name in FormatName]: FileFormat<Name>;
};

/** The format of a name. */
export const formatOf = (name: FormatName): FileFormat => FORMATS[name];
