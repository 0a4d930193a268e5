/** The hole table: comma-separated values, one hole a line, lengths in millimetres with a decimal point. */
import type { Hole } from '../../marking/index.ts';
import { decimalFixed } from '../../movement/decimal.ts';
import { shownText } from '../../movement/index.ts';

/** Decimals of a millimetre in the table. */
const PLACES = 4;

export const HOLE_TABLE_HEAD = 'point,label,x_mm,y_mm,diameter_mm,finish,state,note';

/** Signs that begin a formula, in every width that Unicode has for them; blanks before them do not help. */
const FORMULA = /^\s*[=+\-@|\u2212\uFE62\uFE63\uFE66\uFE6B\uFF0B\uFF0D\uFF1D\uFF20\uFF5C]/;

/** The table as text, RFC 4180 style quoting, `\r\n` line ends as that memo asks. */
export function writeHoleTable(holes: readonly Hole[]): string {
  const rows = holes.map((hole) =>
    [
      hole.points.join(' '),
      hole.label,
      decimalFixed(hole.x, PLACES),
      decimalFixed(hole.y, PLACES),
      decimalFixed(hole.diameter, PLACES),
      hole.finish,
      hole.state,
      hole.note ?? '',
    ]
      .map(field)
      .join(','),
  );
  return `${[HOLE_TABLE_HEAD, ...rows].join('\r\n')}\r\n`;
}

/**
 * A field safe in a table: quoted where needed. Text that a spreadsheet would take for a formula gets a leading
 * apostrophe; numbers keep their sign.
 */
function field(given: string): string {
  const text = shownText(given);
  const isNumber = /^-?\d+(\.\d+)?$/.test(text);
  const safe = !isNumber && FORMULA.test(text) ? `'${text}` : text;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}
