/** In which old encodings a file can be read, each with a stretch of it that the maker may recognise. */
import { OLD_ENCODINGS, type OldEncoding, tellingPart, textOfBytes } from '../../solver/movement/index.ts';

/** One encoding to choose, with its name and how the file reads in it. */
export interface EncodingChoice {
  readonly encoding: OldEncoding;
  readonly called: string;
  readonly sample: string;
}

/** The encodings in which all bytes are letters; those that give the same stretch as an earlier one are left out. */
export function encodingChoices(bytes: Uint8Array): readonly EncodingChoice[] {
  const choices: EncodingChoice[] = [];
  // Object.keys forgets the type of its keys.
  for (const encoding of Object.keys(OLD_ENCODINGS) as OldEncoding[]) {
    if (textOfBytes(bytes, encoding).kind !== 'text') continue;
    const sample = tellingPart(bytes, encoding);
    if (choices.some((other) => other.sample === sample)) continue;
    choices.push({ encoding, called: OLD_ENCODINGS[encoding], sample });
  }
  return choices;
}
