/** Printed sheets, true size. */
import type { FileFormat } from './format.ts';

/** Printed sheets; written by `pages/pdf.ts`. */
export const pdf: FileFormat<'pdf'> = {
  name: 'pdf',
  ending: '.pdf',
  called: 'PDF',
  seen: 'picture',
  holds: 'nothing to check',
};
