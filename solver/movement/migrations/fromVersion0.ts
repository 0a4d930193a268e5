/**
 * Version 0 to 1. Version 0 was the trial format:
 *
 * | version 0 | version 1 |
 * |---|---|
 * | `pivots[]` with `x`, `y` | `arbors[]` with `at: [x, y]` |
 * | `pillars[]` with `x`, `y` | `posts[]` with `at` |
 * | wheel `pivot`, `module: 0.8` | wheel `arbor`, `size: { module: 0.8 }` |
 * | wheel `form` may be absent: involute | `form` is always there |
 * | rule `type`, with `off: true` | rule `kind`, with `leaveOut: true` |
 * | bearing rule `angle` in radians | in degrees |
 * | `unit: "mm" or "inch"` | `display.unit` |
 */

/** A record of the file: any fields, of which the step speaks of these. */
interface Fields {
  [field: string]: unknown;
  version?: unknown;
  unit?: unknown;
  display?: unknown;
  module?: unknown;
  size?: unknown;
  form?: unknown;
  kind?: unknown;
  angle?: unknown;
}

/** The document with the names and units of version 1; fields it does not know stay as they are. */
export function fromVersion0(document: Readonly<Fields>): Fields {
  const next = renamed(document, { pivots: 'arbors', pillars: 'posts' });
  next.version = 1;
  changeItems(next, 'arbors', placed);
  changeItems(next, 'posts', placed);
  changeItems(next, 'wheels', wheelOf);
  changeItems(next, 'rules', ruleOf);
  if ('unit' in next && !('display' in next)) {
    next.display = { unit: next.unit };
    delete next.unit;
  }
  return next;
}

function placed(item: Fields): Fields {
  if ('at' in item || !('x' in item && 'y' in item)) return item;
  const { x, y, ...rest } = item;
  return { ...rest, at: [x, y] };
}

function wheelOf(item: Fields): Fields {
  const wheel = renamed(item, { pivot: 'arbor' });
  if ('module' in wheel && !('size' in wheel)) {
    wheel.size = { module: wheel.module };
    delete wheel.module;
  }
  if (!('form' in wheel)) wheel.form = 'involute';
  return wheel;
}

function ruleOf(item: Fields): Fields {
  const rule = renamed(item, { type: 'kind', off: 'leaveOut' });
  const { angle } = rule;
  if (rule.kind === 'bearing' && typeof angle === 'number') rule.angle = (angle * 180) / Math.PI;
  return rule;
}

/** A copy with fields renamed in place; a name that is taken already is left alone, so that nothing is lost. */
function renamed(item: Readonly<Fields>, names: Readonly<Record<string, string>>): Fields {
  const copy: Fields = {};
  for (const [field, value] of Object.entries(item)) {
    const name = Object.hasOwn(names, field) ? names[field] : undefined;
    copy[name === undefined || Object.hasOwn(item, name) ? field : name] = value;
  }
  return copy;
}

function changeItems(document: Fields, list: string, change: (item: Fields) => Fields): void {
  const items = document[list];
  if (!Array.isArray(items)) return;
  document[list] = items.map((item: unknown) =>
    // A record of unknown fields; anything else is left for the check to name.
    typeof item === 'object' && item !== null && !Array.isArray(item) ? change(item as Fields) : item,
  );
}
