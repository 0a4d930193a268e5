/** What the schema found wrong, told in the maker's terms. */
import type { z } from 'zod';
import { nearIn } from './nearSpelling.ts';
import { inWords, type PathKey, type Problem, problemAt } from './problem.ts';

type Issue = z.core.$ZodIssue;

/** Every issue of the schema as problems, in the order of the file's fields. `raw` is the value that was checked. */
export function schemaProblems(issues: readonly Issue[], raw: unknown): Problem[] {
  return issues.flatMap((issue) => problemsOf(issue, raw, []));
}

function problemsOf(issue: Issue, raw: unknown, above: readonly PathKey[]): Problem[] {
  const path = [...above, ...keysOf(issue)];
  if (issue.code === 'invalid_union' && issue.errors.length > 0) {
    const branch = likelyBranch(issue.errors);
    if (branch) return branch.flatMap((inner) => problemsOf(inner, raw, path));
  }
  const value = valueAt(raw, path);
  const expected = expectedBy(issue, path);
  const remedy = remedyFor(issue, value, raw, path);
  return [problemAt(path, { id: idAround(raw, path), found: foundIn(issue, value), expected, remedy })];
}

function keysOf(issue: Issue): PathKey[] {
  return issue.path.filter((key): key is PathKey => typeof key !== 'symbol');
}

/** The one branch of a union that the value seems meant for: the only one whose own fields are there. */
function likelyBranch(branches: readonly (readonly Issue[])[]): readonly Issue[] | undefined {
  const meant = branches.filter((issues) => issues.every((i) => i.path.length > 0 && !isMissing(i)));
  return meant.length === 1 ? meant[0] : undefined;
}

function isMissing(issue: Issue): boolean {
  return issue.code === 'invalid_type' && issue.message.endsWith('received undefined');
}

function foundIn(issue: Issue, value: unknown): string {
  if ((issue.code === 'too_big' || issue.code === 'too_small') && typeof value === 'string') {
    return `text ${value.length} characters long`;
  }
  return value === undefined ? 'nothing, the field is missing' : inWords(value);
}

/** Fields whose pattern is worth words of its own. */
const PATTERN_WORDS: readonly (readonly [RegExp, string])[] = [
  [/^ratio$/, 'a number, or a fraction such as "27/2"'],
  [/^date$/, 'a date such as "2026-01-31"'],
  [
    /^(id|arbor|wheel|wheels|point|points|parts|of|centre|plate|through|reference|ridesOn|carries)$/,
    'an id: a letter or digit, then letters, digits, dots, dashes or underscores, 64 at most',
  ],
];

function expectedBy(issue: Issue, path: readonly PathKey[]): string {
  const field = path.findLast((key) => typeof key === 'string');
  switch (issue.code) {
    case 'invalid_type':
      return typeWords(issue.expected);
    case 'invalid_value':
      return issue.values.map((value) => `“${String(value)}”`).join(' or ');
    case 'invalid_format':
      return PATTERN_WORDS.find(([name]) => name.test(String(field)))?.[1] ?? 'text of another form';
    case 'too_small':
      return boundWords(issue.origin, `${issue.minimum}`, 'at least', 'or more');
    case 'too_big':
      return boundWords(issue.origin, `${issue.maximum}`, 'at most', 'or less');
    case 'invalid_union':
      return unionWords(issue, field);
    default:
      return issue.message;
  }
}

function typeWords(expected: string): string {
  const words: Record<string, string> = {
    number: 'a number',
    int: 'a whole number',
    string: 'text',
    boolean: 'true or false',
    object: 'a record { … }',
    array: 'a list [ … ]',
    tuple: 'a list [ … ]',
  };
  return words[expected] ?? expected;
}

function boundWords(origin: string, bound: string, before: string, after: string): string {
  if (origin === 'string') return `text of ${before} ${bound} characters`;
  return origin === 'array' ? `a list of ${before} ${bound}` : `${bound} ${after}`;
}

function unionWords(issue: Extract<Issue, { code: 'invalid_union' }>, field: PathKey | undefined): string {
  if ('options' in issue && Array.isArray(issue.options)) {
    return `one of ${issue.options.map((kind) => `“${String(kind)}”`).join(', ')}`;
  }
  if (field === 'size') return 'one of { "module": … }, { "diametralPitch": … } or { "circularPitch": … }';
  return PATTERN_WORDS.find(([name]) => name.test(String(field)))?.[1] ?? 'one of the forms that the format knows';
}

function remedyFor(issue: Issue, value: unknown, raw: unknown, path: readonly PathKey[]): string {
  const field = String(path.at(-1) ?? 'value');
  if (value === undefined) {
    const around = valueAt(raw, path.slice(0, -1));
    const near = typeof around === 'object' && around !== null ? nearIn(field, Object.keys(around)) : [];
    return near.length > 0 ? `rename “${near[0]}” to “${field}”, if it is what was meant` : `add “${field}”`;
  }
  const choices = choicesOf(issue);
  if (choices && typeof value === 'string') {
    const near = nearIn(value, choices);
    if (near.length > 0) return `write “${near[0]}”, if it is what was meant`;
  }
  if (
    issue.code === 'invalid_type' &&
    typeof value === 'string' &&
    value.trim() !== '' &&
    Number.isFinite(Number(value))
  ) {
    return `write ${Number(value)} without the quotes`;
  }
  return typeof path.at(-1) === 'number' ? 'correct that entry' : `correct “${field}”`;
}

function choicesOf(issue: Issue): readonly string[] | undefined {
  if (issue.code === 'invalid_value') return issue.values.map(String);
  if (issue.code === 'invalid_union' && 'options' in issue && Array.isArray(issue.options)) {
    return issue.options.map(String);
  }
  return undefined;
}

function valueAt(raw: unknown, path: readonly PathKey[]): unknown {
  let value = raw;
  for (const key of path) {
    if (typeof value !== 'object' || value === null || !Object.hasOwn(value, key)) return undefined;
    value = (value as Record<PathKey, unknown>)[key]; // an object, and it has the key
  }
  return value;
}

/** Id of the innermost thing on the path that has one. */
function idAround(raw: unknown, path: readonly PathKey[]): string | undefined {
  for (let length = path.length - 1; length > 0; length--) {
    const id = valueAt(raw, [...path.slice(0, length), 'id']);
    if (typeof id === 'string' && id !== '') return id.slice(0, 64);
  }
  return undefined;
}
