/** From the bytes of a file to its text, whichever of the usual encodings it is in. */

/** Encodings that are asked about where bytes are no Unicode: the label by which the engine knows each, and its name. */
const OLD_ENCODINGS = {
  'windows-1252': 'Western European (Windows-1252)',
  'windows-1250': 'Central European (Windows-1250)',
  'windows-1251': 'Cyrillic (Windows-1251)',
  'windows-1253': 'Greek (Windows-1253)',
  shift_jis: 'Japanese (Shift JIS)',
} as const;
/** A label of `OLD_ENCODINGS`. */
export type OldEncoding = keyof typeof OLD_ENCODINGS;

/** The text; or that its letters cannot be told without knowing the encoding; or that this is no text at all. */
export type TextOfBytes =
  | { readonly kind: 'text'; readonly text: string }
  | { readonly kind: 'unknownEncoding' }
  | { readonly kind: 'noText' };

/**
 * Reads UTF-8 with or without its mark, UTF-16 with its mark, and UTF-16 without it where the first character is ASCII
 * (as in every JSON text; RFC 4627 §3). Anything else is not guessed: letters would be lost in silence.
 *
 * @param encoding what the maker says that an older file is in
 */
export function textOfBytes(bytes: Uint8Array, encoding?: OldEncoding): TextOfBytes {
  const label = encoding ?? unicodeOf(bytes);
  try {
    return { kind: 'text', text: new TextDecoder(label, { fatal: true }).decode(bytes) };
  } catch {
    return { kind: bytes.includes(0) ? 'noText' : 'unknownEncoding' };
  }
}

/** Which Unicode encoding the first bytes tell of. The decoder itself takes the mark away. */
function unicodeOf([first, second]: Uint8Array): string {
  if (first === 0xff && second === 0xfe) return 'utf-16le';
  if (first === 0xfe && second === 0xff) return 'utf-16be';
  if (first !== undefined && first !== 0 && second === 0) return 'utf-16le';
  if (first === 0 && second !== undefined && second !== 0) return 'utf-16be';
  return 'utf-8';
}

/** The first stretch of a text that an encoding decides, for the maker to recognise; at most `length` characters. */
function tellingPart(bytes: Uint8Array, encoding: OldEncoding, length = 40): string {
  const at = Math.max(
    0,
    bytes.findIndex((byte) => byte >= 0x80),
  );
  const from = Math.max(0, at - 12);
  const text = new TextDecoder(encoding).decode(bytes.subarray(from, at + length * 2));
  return text.replace(/\s+/g, ' ').slice(0, length);
}

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
