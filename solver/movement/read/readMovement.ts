/** From the text of a file to a movement, or to all its problems at once. */
import { documentProblems } from '../checks/documentProblems.ts';
import { FORMAT, type Movement, movementSchema, VERSION } from '../schema.ts';
import { faultOfJson } from './jsonText.ts';
import { inWords, type Problem, problemAt } from './problem.ts';
import { schemaProblems } from './schemaProblems.ts';

export type MovementReading =
  | { readonly kind: 'movement'; readonly movement: Movement; readonly migratedFrom?: number }
  | { readonly kind: 'problems'; readonly problems: readonly Problem[] };

/** Longest text read, UTF-16 units: ten times what 20,000 arbors with their wheels and rules need. */
export const MAX_TEXT = 50_000_000;

/**
 * Reads a movement file of this version or an earlier one.
 *
 * Everything wrong in it is reported at once, each with path, found, expected and remedy; never throws on any text.
 * Unknown fields are kept. `migratedFrom` is the file's own version where that was an earlier one.
 */
export function readMovement(text: string): MovementReading {
  const parsed = parseText(text);
  if (parsed.kind === 'problems') return parsed;
  const headed = checkHead(parsed.value);
  if (headed) return problems([headed]);
  return checkDocument(parsed.value);
}

/** The same checks for a value that is already parsed, of the present version. */
export function checkDocument(value: unknown): MovementReading {
  const result = movementSchema.safeParse(value);
  if (!result.success) return problems(schemaProblems(result.error.issues, value));
  // The schema's output differs from Movement only by index signatures for unknown fields.
  const movement = result.data as Movement;
  const found = documentProblems(movement);
  return found.length > 0 ? problems(found) : { kind: 'movement', movement };
}

type Parsed =
  | { readonly kind: 'value'; readonly value: unknown }
  | { readonly kind: 'problems'; readonly problems: readonly Problem[] };

function problems(list: readonly Problem[]): { kind: 'problems'; problems: readonly Problem[] } {
  return { kind: 'problems', problems: list };
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
  const fault = faultOfJson(text);
  if (fault) return problems([problemAt(`line ${fault.line}, column ${fault.column}`, fault)]);
  return { kind: 'value', value: JSON.parse(text) };
}

/** Format and version, before anything else is asked of the file. */
function checkHead(value: unknown): Problem | undefined {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) {
    return problemAt('', {
      found: inWords(value),
      expected: 'a record with “format” and “version”',
      remedy: 'choose a movement file',
    });
  }
  const { format, version } = value as { format?: unknown; version?: unknown }; // an object; both still unknown
  if (format !== FORMAT) {
    return problemAt('format', {
      found: inWords(format),
      expected: `“${FORMAT}”`,
      remedy: 'choose a movement file; this one is of another kind',
    });
  }
  if (!Number.isInteger(version)) {
    return problemAt('version', {
      found: inWords(version),
      expected: `the whole number ${VERSION}`,
      remedy: `write "version": ${VERSION}`,
    });
  }
  if (version !== VERSION) return versionProblem(Number(version));
  return undefined;
}

function versionProblem(version: number): Problem {
  const newer = version > VERSION;
  return problemAt('version', {
    found: `${version}`,
    expected: `${VERSION} or an earlier one that this program knows`,
    remedy: newer
      ? 'open it with a newer Depthwright; nothing was changed'
      : 'there never was such a version; check the file',
  });
}
