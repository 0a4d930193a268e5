/** Plain text for people. */
import { shownLines } from '../../movement/index.ts';
import type { FileFormat } from './format.ts';

/** Plain text for people. */
export const text: FileFormat<'text'> = {
  name: 'text',
  ending: '.txt',
  called: 'text',
  seen: 'text',
  holds: 'nothing to check',
  clean: shownLines,
};
