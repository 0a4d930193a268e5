/**
 * A walk over JSON text that says where it goes wrong, by line and column.
 *
 * The engine's own parser says so in words that differ between systems, or not at all for a truncated file,
 * and it silently keeps the last of two fields of one name, so this walk also reports what would be lost
 * that way. It keeps no values and does not recurse. Grammar: RFC 8259 (and ECMA-404).
 */

/** The first place at which a text stops being JSON. */
export interface TextFault {
  /** From 1, in UTF-16 units. */
  readonly line: number;
  readonly column: number;
  readonly found: string;
  readonly expected: string;
  readonly remedy: string;
}

/** Deepest nesting read; the document itself needs six levels. */
export const MAX_DEPTH = 64;

const NUMBER = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y;
const ESCAPE = /\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4})/y;
const QUOTE = 0x22;
const BACKSLASH = 0x5c;
/** Below this are control characters, which JSON wants escaped. */
const FIRST_PRINTED = 0x20;
const WORD = /true|false|null/y;
const SPACE = /[ \t\n\r]*/y;

/** One open list or record of the walk; `names` are the fields seen so far. */
type Open = { readonly names: Set<string> | undefined };

/** The first fault of a JSON text, or undefined where it is sound. */
export function faultOfJson(text: string): TextFault | undefined {
  return new Walk(text).run();
}

/** Reads a text from left to right, keeping what is still open. */
class Walk {
  private at = 0;
  private readonly open: Open[] = [];
  private fault: TextFault | undefined;

  constructor(private readonly text: string) {}

  run(): TextFault | undefined {
    // Each turn reads one value with what leads up to it; what closes is closed at once.
    while (this.fault === undefined) {
      const opened = this.value();
      if (this.fault !== undefined) break;
      if (opened) {
        if (this.closesAtOnce()) this.open.pop();
        else {
          this.name();
          continue;
        }
      }
      if (this.fault === undefined && this.afterValue()) break;
    }
    return this.fault;
  }

  /** Reads a value; true where it opens a list or record. */
  private value(): boolean {
    this.skip(SPACE);
    const char = this.text[this.at];
    if (char === '{' || char === '[') {
      if (this.open.length >= MAX_DEPTH) {
        this.fail('lists and records nested too deeply', `at most ${MAX_DEPTH} levels`, 'flatten what is nested');
        return false;
      }
      this.at++;
      this.open.push({ names: char === '{' ? new Set() : undefined });
      return true;
    }
    const sound = char === '"' ? this.string() : this.skip(char !== undefined && /[-\d]/.test(char) ? NUMBER : WORD);
    if (!sound) this.failAtValue(char);
    return false;
  }

  private closesAtOnce(): boolean {
    this.skip(SPACE);
    const closing = this.open.at(-1)?.names === undefined ? ']' : '}';
    if (this.text[this.at] !== closing) return false;
    this.at++;
    return true;
  }

  /** In a record: reads the field's name and its colon. In a list: nothing to do. */
  private name(): void {
    const names = this.open.at(-1)?.names;
    if (names === undefined) return;
    this.skip(SPACE);
    const start = this.at;
    if (!this.string()) {
      this.failHere('the name of a field in double quotes');
      return;
    }
    const field: unknown = JSON.parse(this.text.slice(start, this.at));
    if (typeof field !== 'string') return;
    if (field === '__proto__') {
      this.at = start;
      this.fail(
        'a field called “__proto__”',
        'any other name',
        'rename that field; the name has a meaning of its own in the language of the program',
      );
      return;
    }
    if (names.has(field)) {
      this.at = start;
      this.fail(
        `a second field “${field}” in the same record`,
        'each field once',
        'remove or rename one of the two, since only one could be kept',
      );
      return;
    }
    names.add(field);
    this.skip(SPACE);
    if (this.text[this.at] !== ':') {
      this.failHere('a colon after the field’s name');
      return;
    }
    this.at++;
  }

  /** Closes what ends here and steps over a comma; true at the end of the text. */
  private afterValue(): boolean {
    for (;;) {
      this.skip(SPACE);
      const inside = this.open.at(-1);
      const char = this.text[this.at];
      if (inside === undefined) {
        if (char !== undefined) {
          this.fail(this.here(), 'the end of the file', 'remove what follows the last closing brace');
        }
        return true;
      }
      if (char === ',') {
        this.at++;
        this.name();
        return false;
      }
      const closing = inside.names === undefined ? ']' : '}';
      if (char !== closing) {
        this.failHere(`a comma or “${closing}”`);
        return true;
      }
      this.at++;
      this.open.pop();
    }
  }

  /** Steps over text in quotes; stays where it is when that is not sound. By character codes: it may be very long. */
  private string(): boolean {
    const { text } = this;
    if (text[this.at] !== '"') return false;
    for (let i = this.at + 1; i < text.length; i++) {
      const code = text.charCodeAt(i);
      if (code === QUOTE) {
        this.at = i + 1;
        return true;
      }
      if (code < FIRST_PRINTED) return false;
      if (code !== BACKSLASH) continue;
      ESCAPE.lastIndex = i;
      if (!ESCAPE.test(text)) return false;
      i = ESCAPE.lastIndex - 1;
    }
    return false;
  }

  private skip(pattern: RegExp): boolean {
    pattern.lastIndex = this.at;
    if (!pattern.test(this.text)) return false;
    this.at = pattern.lastIndex;
    return true;
  }

  private here(): string {
    const char = this.text[this.at];
    return char === undefined ? 'the end of the file' : `“${char}”`;
  }

  private failAtValue(char: string | undefined): void {
    if (char === '"' && this.text.indexOf('"', this.at + 1) !== -1) {
      this.fail(
        'text in quotes with a line break or a stray backslash in it',
        'text on one line',
        'write \\n for a line break and \\\\ for a backslash',
      );
    } else if (char === '"') {
      this.fail(
        'text whose closing quote is missing',
        'a closing quote',
        'the file seems cut off; take an earlier copy or close the quote',
      );
    } else this.failHere('a value (number, text in double quotes, list, record, true, false or null)');
  }

  private failHere(expected: string): void {
    const cutOff = this.at >= this.text.length;
    const remedy = cutOff
      ? 'the file seems cut off here; take an earlier copy, or add what is missing'
      : 'correct the text at that place';
    this.fail(this.here(), expected, remedy);
  }

  private fail(found: string, expected: string, remedy: string): void {
    if (this.fault !== undefined) return;
    const before = this.text.slice(0, this.at);
    const line = before.split('\n').length;
    this.fault = { line, column: this.at - before.lastIndexOf('\n'), found, expected, remedy };
  }
}
