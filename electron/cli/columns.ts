/** Plain text in columns, for people: aligned, without rules and without colours. */

/** A head and the side on which its cells stand. */
export interface PrintedColumn {
  readonly head: string;
  /** Numbers stand right, words left. */
  readonly align?: 'left' | 'right';
}

const BETWEEN = '  ';
const INDENT = '  ';

/** Width of a text on a terminal: accents that combine with the letter before take no room. */
const widthOf = (text: string): number => [...text.replace(/\p{M}/gu, '')].length;

function padded(text: string, width: number, align: PrintedColumn['align']): string {
  const gap = ' '.repeat(Math.max(0, width - widthOf(text)));
  return align === 'right' ? gap + text : text + gap;
}

/**
 * Rows under their heads; columns that are empty in every row are left out.
 *
 * @param rows one text for each column; missing ones are empty
 */
export function inColumns(
  columns: readonly PrintedColumn[],
  rows: readonly (readonly (string | undefined)[])[],
): string[] {
  const used = columns.map((column, at) => ({ ...column, at })).filter(({ at }) => rows.some((row) => row[at]));
  const widths = used.map(({ head, at }) => Math.max(widthOf(head), ...rows.map((row) => widthOf(row[at] ?? ''))));
  const line = (texts: readonly string[]): string =>
    (INDENT + texts.map((text, i) => padded(text, widths[i] ?? 0, used[i]?.align)).join(BETWEEN)).trimEnd();
  return [line(used.map(({ head }) => head)), ...rows.map((row) => line(used.map(({ at }) => row[at] ?? '')))];
}

/** Blocks of lines with an empty line between them, ended by a line break. Empty blocks are left out. */
export function inBlocks(blocks: readonly (readonly string[])[]): string {
  const full = blocks.filter((block) => block.length > 0).map((block) => block.join('\n'));
  return `${full.join('\n\n')}\n`;
}

/**
 * A sentence broken into lines that fit a terminal.
 *
 * @param first what stands before the first line (a dash, an indent); the others are indented by as much
 */
export function wrapped(sentence: string, first = '', width = 96): string[] {
  const indent = ' '.repeat(widthOf(first));
  const lines: string[] = [];
  let line = '';
  for (const word of sentence.split(' ')) {
    if (line !== '' && widthOf(line) + 1 + widthOf(word) > width - indent.length) {
      lines.push(line);
      line = word;
    } else line = line === '' ? word : `${line} ${word}`;
  }
  lines.push(line);
  return lines.map((text, i) => (i === 0 ? first : indent) + text);
}
