/** From the text of a file to a movement, or to all its problems at once. */
import { freeze } from 'immer';
import type { z } from 'zod';
import { documentFaults } from '../checks/documentFaults.ts';
import { FIRST_VERSION, migrate } from '../migrations/migrate.ts';
import { FORMAT, type Movement, movementSchema, VERSION } from '../schema.ts';
import { faultOfJson } from './jsonText.ts';
import { mistypedFields } from './mistyped.ts';
import { inWords, type Problem, problemAt } from './problem.ts';
import { salvage } from './salvage.ts';
import { schemaProblems } from './schemaProblems.ts';

/** What the text of a file comes to: a movement, or every problem that was found. */
export type MovementReading =
  | {
      readonly kind: 'movement';
      readonly movement: Movement;
      readonly migratedFrom?: number;
      /** Fields that are nearly spelled like known ones: kept, and nothing follows from them. */
      readonly doubts?: readonly Problem[];
    }
  /** `migratedFrom`: paths are those of the present version, to which the file was brought first. */
  | { readonly kind: 'problems'; readonly problems: readonly Problem[]; readonly migratedFrom?: number };

/** Longest text read, UTF-16 units: four times what 20,000 arbors with their wheels and rules need. */
export const MAX_TEXT = 20_000_000;

/**
 * Reads a movement file of this version or an earlier one.
 *
 * Everything wrong in it is reported at once, each with path, found, expected and remedy; never throws on any text.
 * Unknown fields are kept. `migratedFrom` is the file's own version where that was an earlier one.
 */
export function readMovement(text: string): MovementReading {
  const parsed = parseText(text);
  if (parsed.kind === 'problems') return parsed;
  const headed = readHead(parsed.value);
  if (headed.kind === 'problem') return problems([headed.problem]);
  const migrated = migrate(headed.document, headed.version);
  const reading = checkDocument(migrated);
  return headed.version < VERSION ? { ...reading, migratedFrom: headed.version } : reading;
}

/** The same checks for a value that is already parsed, of the present version. */
export function checkDocument(value: object): MovementReading {
  const result = movementSchema.safeParse(value);
  if (!result.success) return problems(allProblems(value, result.error.issues));
  // The schema's output differs from Movement only by index signatures for unknown fields.
  const movement = result.data as Movement;
  const faults = documentFaults(movement);
  if (faults.length > 0) return problems(faults.map((fault) => problemAt(fault.path, fault)));
  const doubts = mistypedFields(value);
  const read = { kind: 'movement', movement: freeze(movement, true) } as const;
  return doubts.length === 0 ? read : { ...read, doubts };
}

/** What the schema refuses, and what else is wrong with the rest. */
function allProblems(value: object, issues: readonly z.core.$ZodIssue[]): Problem[] {
  const list = schemaProblems(issues, value);
  const rest = salvage(value, issues);
  if (rest === undefined) return list;
  const faults = documentFaults(rest.movement, rest.unread);
  return [...list, ...faults.map((fault) => problemAt(rest.pathInFile(fault.path), fault))];
}

/** The value that a text holds, or the fault of its writing. */
type Parsed =
  | { readonly kind: 'value'; readonly value: unknown }
  | { readonly kind: 'problems'; readonly problems: readonly Problem[] };

/** Most problems told; more than these help nobody. */
const MOST_PROBLEMS = 100;

function problems(list: readonly Problem[]): { kind: 'problems'; problems: readonly Problem[] } {
  if (list.length <= MOST_PROBLEMS) return { kind: 'problems', problems: list };
  const more = problemAt('', {
    found: `${list.length - MOST_PROBLEMS} more problems like these`,
    expected: 'none',
    remedy: 'correct the first ones and read the file again',
  });
  return { kind: 'problems', problems: [...list.slice(0, MOST_PROBLEMS), more] };
}

function parseText(given: string): Parsed {
  // Some editors begin a file with a byte order mark; it carries no meaning in UTF-8 (RFC 3629 §6).
  const text = given.startsWith('\uFEFF') ? given.slice(1) : given;
  if (text.trim() === '') {
    return problems([
      problemAt('', {
        found: 'nothing, it is empty',
        expected: 'a movement',
        remedy: 'choose another file, or take an earlier copy of this one',
      }),
    ]);
  }
  if (text.length > MAX_TEXT) {
    return problems([
      problemAt('', {
        found: `${text.length} characters`,
        expected: `at most ${MAX_TEXT}`,
        remedy: 'split the movement, or remove what it does not need',
      }),
    ]);
  }
  // What a reader of UTF-8 leaves of other bytes: its replacement sign, or characters with nothing between them.
  if (text.startsWith('\uFFFD') || text.slice(0, 1000).includes('\0')) {
    return problems([
      problemAt('', {
        found: 'bytes that are no text in UTF-8',
        expected: 'a movement in UTF-8',
        remedy: 'choose a movement file; if it was made in an editor, save it again there as UTF-8',
      }),
    ]);
  }
  const fault = faultOfJson(text);
  if (fault) return problems([problemAt(`line ${fault.line}, column ${fault.column}`, fault)]);
  return { kind: 'value', value: JSON.parse(text) };
}

/** A document whose version is known, or why it is not. */
type Head =
  | { readonly kind: 'head'; readonly document: Readonly<Record<string, unknown>>; readonly version: number }
  | { readonly kind: 'problem'; readonly problem: Problem };

/** Format and version, before anything else is asked of the file. */
function readHead(value: unknown): Head {
  const refuse = (path: string, found: string, expected: string, remedy: string): Head => ({
    kind: 'problem',
    problem: problemAt(path, { found, expected, remedy }),
  });
  if (typeof value !== 'object' || value === null || Array.isArray(value)) {
    return refuse('', inWords(value), 'a record with “format” and “version”', 'choose a movement file');
  }
  const document = value as Record<string, unknown>; // an object that is no list; its fields are still unknown
  const { format, version } = document;
  if (format !== FORMAT) {
    return refuse('format', inWords(format), `“${FORMAT}”`, 'choose a movement file; this one is of another kind');
  }
  if (typeof version !== 'number' || !Number.isInteger(version)) {
    return refuse('version', inWords(version), `a whole number, at present ${VERSION}`, `write "version": ${VERSION}`);
  }
  if (version > VERSION) {
    return refuse(
      'version',
      `${version}`,
      `${VERSION} or an earlier one`,
      'open it with a newer Depthwright; nothing was changed',
    );
  }
  if (version < FIRST_VERSION) {
    return refuse(
      'version',
      `${version}`,
      `${FIRST_VERSION} to ${VERSION}`,
      'there never was such a version; check the file',
    );
  }
  return { kind: 'head', document, version };
}
