/** JSON laid out for people: what fits on a line stands on one line, the rest is indented by two. */

/** Longest line of a list or record that is kept together, characters. */
const LINE = 100;

/** Text of a JSON value; the same value gives the same bytes. The outermost two levels are always opened. */
export function layOut(value: unknown): string {
  return `${block(value, 0)}\n`;
}

/** Depth of the items of the outermost lists. */
const ITEM_DEPTH = 2;
/** Texts of frozen items: they cannot change. */
const kept = new WeakMap<object, string>();

function block(value: unknown, depth: number): string {
  if (typeof value !== 'object' || value === null) return JSON.stringify(value);
  if (depth !== ITEM_DEPTH || !Object.isFrozen(value)) return opened(value, depth);
  const known = kept.get(value);
  if (known !== undefined) return known;
  const text = opened(value, depth);
  kept.set(value, text);
  return text;
}

function opened(value: object, depth: number): string {
  if (depth >= ITEM_DEPTH || isSmall(value)) {
    const together = oneLine(value);
    if (together.length + 2 * depth <= LINE) return together;
  }
  const inner = '  '.repeat(depth + 1);
  const end = '  '.repeat(depth);
  if (Array.isArray(value)) {
    const items = value.map((item: unknown) => inner + block(item, depth + 1));
    return items.length === 0 ? '[]' : `[\n${items.join(',\n')}\n${end}]`;
  }
  const fields = Object.entries(value).map(
    ([name, item]: [string, unknown]) => `${inner}${JSON.stringify(name)}: ${block(item, depth + 1)}`,
  );
  return fields.length === 0 ? '{}' : `{\n${fields.join(',\n')}\n${end}}`;
}

/** Only numbers, texts and the like inside. */
function isSmall(value: object): boolean {
  return Object.values(value).every((item: unknown) => typeof item !== 'object' || item === null);
}

function oneLine(value: unknown): string {
  if (typeof value !== 'object' || value === null) return JSON.stringify(value);
  if (Array.isArray(value)) return `[${value.map(oneLine).join(', ')}]`;
  const fields = Object.entries(value).map(
    ([name, item]: [string, unknown]) => `${JSON.stringify(name)}: ${oneLine(item)}`,
  );
  return fields.length === 0 ? '{}' : `{ ${fields.join(', ')} }`;
}
