/** Words of the workshop: marking out, what was made, and the files of a job. */
export { sheetWordsOf } from './sheetWords.ts';
