/**
 * The process that is killed: it saves one movement after the other into the file of the first argument, each longer or
 * shorter than the one before, and tells every save on its standard output once it is proved; with `once` only one.
 */
import { writeSync } from 'node:fs';
import { readDocumentFile, saveDocumentFile } from '../../../electron/files/documentFile.ts';
import { textOfVersion, versionOf } from './versions.ts';

const [file = '', seed = '1', often = 'always'] = process.argv.slice(2);
const read = await readDocumentFile(file);
if (read.kind !== 'read') throw new Error(`The file of a killed run is not whole: ${read.kind}.`);
let digest = read.digest;
for (let version = versionOf(read.text) + 1; ; version++) {
  const outcome = await saveDocumentFile(file, textOfVersion(version, Number(seed)), digest);
  if (outcome.kind !== 'saved') throw new Error(`Not saved: ${JSON.stringify(outcome)}`);
  digest = outcome.digest;
  writeSync(1, `saved ${version}\n`);
  if (often === 'once') process.exit(0);
}
