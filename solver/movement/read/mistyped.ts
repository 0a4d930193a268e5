/**
 * Fields that this version does not know but that are spelled nearly like ones it does: kept like every unknown field,
 * and told, because what was meant by them is not done.
 */
import { z } from 'zod';
import { movementSchema } from '../schema.ts';
import { spellingDistance } from './nearSpelling.ts';
import { type PathKey, type Problem, problemAt } from './problem.ts';

/** A node of the JSON Schema, as far as it is walked here. */
interface Node {
  readonly properties?: Readonly<Record<string, Node>>;
  readonly items?: Node;
  readonly prefixItems?: readonly Node[];
  readonly oneOf?: readonly Node[];
  readonly anyOf?: readonly Node[];
  readonly const?: unknown;
}

let known: Node | undefined;

/** The schema as a tree, made once: a schema and its tree cannot drift apart. */
function schemaTree(): Node {
  known ??= z.toJSONSchema(movementSchema, { io: 'input' }) as Node; // JSON Schema is a tree of such nodes
  return known;
}

/** Names longer than this may have two wrong letters, shorter ones one. */
const LONG_NAME = 7;

/** Every mistyped field of a document that was read, in the order of the file. */
export function mistypedFields(value: unknown): readonly Problem[] {
  const found: Problem[] = [];
  walk(value, [schemaTree()], [], undefined, found);
  return found;
}

function walk(
  value: unknown,
  nodes: readonly Node[],
  path: readonly PathKey[],
  id: string | undefined,
  found: Problem[],
): void {
  const branches = nodes.flatMap((node) => branchesOf(node, value));
  if (Array.isArray(value)) {
    value.forEach((item: unknown, index) => {
      const inner = branches.flatMap(({ items, prefixItems }) => prefixItems?.[index] ?? items ?? []);
      walk(item, inner, [...path, index], id, found);
    });
    return;
  }
  const records = branches.flatMap(({ properties }) => (properties ? [properties] : []));
  if (typeof value !== 'object' || value === null || records.length === 0) return;
  const own = Reflect.get(value, 'id') as unknown;
  const here = typeof own === 'string' ? own : id;
  for (const [field, inner] of Object.entries(value) as [string, unknown][]) {
    const below = records.flatMap((record) => (Object.hasOwn(record, field) ? [record[field] as Node] : [])); // it has it
    if (below.length > 0) walk(inner, below, [...path, field], here, found);
    else {
      const meant = nearest(field, records, value);
      if (meant !== undefined) found.push(told([...path, field], field, meant, here));
    }
  }
}

/** The forms of a node that a value can be meant for: of those with a kind, the one of its kind. */
function branchesOf(node: Node, value: unknown): readonly Node[] {
  const forms = node.oneOf ?? node.anyOf;
  if (!forms) return [node];
  const kind: unknown = typeof value === 'object' && value !== null ? Reflect.get(value, 'kind') : undefined;
  const all = forms.flatMap((form) => branchesOf(form, value));
  const own = all.filter(({ properties }) => properties?.['kind']?.const === kind);
  return own.length > 0 ? own : all;
}

/** The known field that is not there and that a name is nearest to; none where it is a word of its own. */
function nearest(field: string, records: readonly Readonly<Record<string, Node>>[], value: object): string | undefined {
  const reach = field.length > LONG_NAME ? 2 : 1;
  let best: { readonly name: string; readonly far: number } | undefined;
  for (const name of records.flatMap((record) => Object.keys(record))) {
    if (name.length < 3 || Object.hasOwn(value, name) || Math.abs(name.length - field.length) > reach) continue;
    const far = spellingDistance(field.toLowerCase(), name.toLowerCase());
    if (far <= reach && (!best || far < best.far)) best = { name, far };
  }
  return best?.name;
}

function told(path: readonly PathKey[], field: string, meant: string, id: string | undefined): Problem {
  return problemAt(path, {
    id,
    found: `a field “${field}”, which means nothing here`,
    expected: `“${meant}”`,
    remedy: `rename it to “${meant}”, if it is what was meant; it is kept as it is and nothing follows from it`,
  });
}
