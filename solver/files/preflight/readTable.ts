/** A small reader of hole tables for the pre-flight report: RFC 4180 fields, columns found by their heads. */

/** A hole table as it was read back, mm. */
export interface ReadTable {
  readonly holes: readonly { readonly x: number; readonly y: number; readonly diameter: number }[];
  readonly problems: readonly string[];
}

/** Reads the table; every line that does not hold plain numbers is told. */
export function readHoleTable(text: string): ReadTable {
  const [head = [], ...rows] = fieldsOf(text);
  const column = (name: string) => head.indexOf(name);
  const [x, y, diameter] = [column('x_mm'), column('y_mm'), column('diameter_mm')];
  const problems: string[] = [];
  const holes = rows.map((row, index) => {
    const real = (at: number): number => {
      const field = row[at] ?? '';
      if (!/^-?\d+\.\d+$/.test(field) || /^-0\.0+$/.test(field)) {
        problems.push(`line ${index + 2}: "${field}" is no plain number`);
      }
      return Number(field);
    };
    return { x: real(x), y: real(y), diameter: real(diameter) };
  });
  if (x < 0 || y < 0 || diameter < 0) problems.push('a column for x, y or diameter is missing');
  return { holes, problems };
}

function fieldsOf(text: string): readonly (readonly string[])[] {
  const rows: string[][] = [];
  let row: string[] = [];
  let field = '';
  let quoted = false;
  for (let i = 0; i < text.length; i++) {
    const character = text[i] ?? '';
    if (quoted && character === '"' && text[i + 1] === '"') {
      field += '"';
      i++;
    } else if (character === '"') quoted = !quoted;
    else if (quoted) field += character;
    else if (character === ',' || character === '\n') {
      row.push(field);
      field = '';
      if (character === '\n') {
        rows.push(row);
        row = [];
      }
    } else if (character !== '\r') field += character;
  }
  return rows;
}
