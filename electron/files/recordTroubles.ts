/** Trouble with the program's own records: told once each in a run, and never in the way of the maker's work. */
import { fileTrouble } from './fileTrouble.ts';
import type { KeptReading } from './keptJson.ts';

/** What each record is for, in the maker's words, and what its trouble means for him. */
const RECORDS = {
  recent: {
    called: 'The list of recent files',
    means: 'Opening and saving go on as usual; the list begins anew.',
    fails: 'Opening and saving go on as usual; the list will not be there at the next start.',
  },
  place: {
    called: 'The place of the window',
    means: 'The window opens at its usual size.',
    fails: 'The window will open at its usual size.',
  },
  versions: {
    called: 'The versions of the last days',
    means: 'Saving goes on as usual.',
    fails: 'Saving goes on as usual; there will be no such version to go back to.',
  },
  recovery: {
    called: 'The record of unsaved work',
    means: 'The work in it cannot be offered.',
    fails: 'If the program ends unexpectedly, changes since the last save are lost: save often.',
  },
} as const;
/** One of the program's own records. */
export type RecordName = keyof typeof RECORDS;

/** Tells each trouble once. */
export class RecordTroubles {
  readonly #tell: (says: string) => void;
  readonly #told = new Set<string>();

  constructor(tell: (says: string) => void) {
    this.#tell = tell;
  }

  /** A record that was read with trouble; gives its value where there is one. */
  valueOf<Value>(name: RecordName, path: string, reading: KeptReading<Value>): Value | undefined {
    const { called, means } = RECORDS[name];
    if (reading.kind === 'kept') return reading.value;
    if (reading.kind === 'damaged') this.#once(`${name} damaged`, `${called} was damaged and was set aside. ${means}`);
    if (reading.kind === 'newer') {
      this.#once(`${name} newer`, `${called} was written by a newer Depthwright. ${means}`);
    }
    if (reading.kind === 'unreadable') {
      this.#once(`${name} unreadable`, `${called}: ${fileTrouble('read', path, reading.error)} ${means}`);
    }
    return undefined;
  }

  /** Tries a write; a failure is told and gives false. */
  async wrote(name: RecordName, path: string, write: () => Promise<void>): Promise<boolean> {
    try {
      await write();
      return true;
    } catch (error) {
      const { called, fails } = RECORDS[name];
      this.#once(`${name} unwritable`, `${called}: ${fileTrouble('written', path, error)} ${fails}`);
      return false;
    }
  }

  #once(key: string, says: string): void {
    if (this.#told.has(key)) return;
    this.#told.add(key);
    this.#tell(says);
  }
}
