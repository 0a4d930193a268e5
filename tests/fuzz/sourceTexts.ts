/** Sound files to be spoiled: the demos, the scenes of the tests, and the sample that has every field. */
import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { sampleDocument } from '../movement/sampleMovement.ts';

const TOP = resolve(import.meta.dirname, '../..');

/** Their texts, always in the same order. */
export function sourceTexts(): readonly string[] {
  const files = ['demo-data', 'tests/fixtures'].flatMap((folder) =>
    readdirSync(join(TOP, folder))
      .filter((name) => name.endsWith('.json'))
      .sort()
      .map((name) => readFileSync(join(TOP, folder, name), 'utf8')),
  );
  return [JSON.stringify(sampleDocument()), ...files];
}
