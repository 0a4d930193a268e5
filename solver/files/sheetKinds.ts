/** What the files of a job are for: their titles in a list, and what the contents page says of them. */
import type { FileFormat, FormatName } from './formats/format.ts';
import { formatOf } from './formats/formats.ts';

/** One kind of sheet. */
/** The words of one kind of sheet, by the format it comes in. */
interface SheetKindEntry {
  /** Title in a list of files. */
  readonly title: (format: FileFormat) => string;
  /** What the contents page says. */
  readonly holds: (format: FileFormat) => string;
}

/** Two that are drawn for machines and for people alike. */
const forMachine = ({ seen }: FileFormat): boolean => seen === 'machine';

/** Every kind of sheet. */
export const SHEET_KINDS = {
  cut: { title: ({ called }) => `To cut, ${called}`, holds: () => 'what a machine cuts, nothing else' },
  numbers: {
    title: (format) => (forMachine(format) ? `Numbers, ${format.called}` : 'Numbers sheet'),
    holds: (format) => (forMachine(format) ? 'points, arcs and lettering for marking' : 'numbers sheet, true size'),
  },
  context: { title: () => 'Context sheet', holds: () => 'context sheet, true size' },
  drill: { title: () => 'Drill program', holds: () => 'drill program: read its header first' },
  holes: { title: () => 'Table of holes', holds: () => 'hole table' },
  steps: { title: () => 'Marking-out steps', holds: () => 'marking-out steps' },
  preflight: { title: () => 'Pre-flight report', holds: () => 'every file read back and measured' },
  readout: { title: () => 'Digital readout', holds: () => 'the holes for a digital readout' },
  cards: { title: () => 'Step cards', holds: () => 'step cards for the bench' },
  distances: { title: () => 'Distances', holds: () => 'all hole-to-hole distances' },
  parts: { title: () => 'Parts list', holds: () => 'parts list and arbor strips' },
  readings: { title: () => 'Readings record', holds: () => 'record of readings, with blank boxes' },
  page: { title: () => 'Printed page', holds: () => 'one page of the printed sheet, true size' },
  changes: { title: () => 'Changes', holds: () => 'what changed since the earlier revision' },
  contents: { title: () => 'Contents', holds: () => 'this page' },
  movement: { title: () => 'Movement', holds: () => 'the movement itself' },
  wheel: { title: ({ called }) => `Wheel, ${called}`, holds: () => 'the outline of a wheel' },
  cutting: { title: () => 'Cutting of a wheel', holds: () => 'numbers and check-off list of a wheel' },
} as const satisfies Readonly<Record<string, SheetKindEntry>>;

/** The kinds of sheet. */
export type SheetKind = keyof typeof SHEET_KINDS;

/** What a file says of itself, from which its title is made. */
interface SheetTold {
  readonly kind: SheetKind;
  readonly format: FormatName;
  readonly of?: string;
}

/** The title of a file in a list: what it is, and what it shows. */
export function titleOfSheet({ kind, format, of }: SheetTold): string {
  const title = SHEET_KINDS[kind].title(formatOf(format));
  return of === undefined ? title : `${title} · ${of}`;
}
