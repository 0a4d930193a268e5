/**
 * Documents of earlier versions, brought to the present one a step at a time.
 *
 * A step works on what JSON gave, before any check: what does not look as expected it passes on untouched, so that
 * the check of the present version can name it. A step never loses a field.
 */
import { fromVersion0 } from './fromVersion0.ts';
import { fromVersion1 } from './fromVersion1.ts';

export type Document = Readonly<Record<string, unknown>>;

/** Step n takes a document of version n to version n + 1. */
const STEPS: readonly ((document: Document) => Document)[] = [fromVersion0, fromVersion1];

export const FIRST_VERSION = 0;

/** The document in the present version; `version` is the one that it states. */
export function migrate(document: Document, version: number): Document {
  return STEPS.slice(version).reduce((value, step) => step(value), document);
}
