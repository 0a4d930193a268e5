/** Tables of holes, a line a hole, commas between. */
import { foundInList } from '../preflight/found.ts';
import { readHoleTable } from '../preflight/readTable.ts';
import type { FileFormat } from './format.ts';

/** Tables; written by `write/holeTable.ts`. */
export const table: FileFormat<'table'> = {
  name: 'table',
  ending: '.csv',
  called: 'table',
  seen: 'machine',
  holds: 'list',
  readBack: (text) => {
    const { holes, problems } = readHoleTable(text);
    return foundInList(holes, problems);
  },
};
