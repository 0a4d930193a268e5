/**
 * Makes calls of Node's file system fail, one at a time, under the real code and the real libraries.
 *
 * Each call is counted; the one with the wanted number fails with the wanted code. Opened files are counted too, so a
 * test can ask that each was closed again.
 */
import fs from 'node:fs';
import { syncBuiltinESMExports } from 'node:module';

/** Calls that writing and reading a document may use. */
const CALLS = [
  'open',
  'write',
  'read',
  'fsync',
  'close',
  'rename',
  'stat',
  'fstat',
  'fchmod',
  'fchown',
  'realpath',
] as const;
const PROMISED = ['readFile', 'stat', 'realpath', 'mkdir', 'access', 'readdir', 'rm'] as const;

interface Trouble {
  /** Number of the call that fails, from 0; calls before and after go through. */
  readonly at: number;
  /** The system's code; "short" lets a write take one byte less, "cut" lets it and all after it take none. */
  readonly code: string;
}

export interface Watch {
  /** Names of the calls made, in order. */
  readonly calls: string[];
  readonly openFiles: Set<number>;
  readonly stop: () => void;
}

/** Lets a write take fewer bytes than it was given, as a full disk does: the count is all that tells. */
function shortened(args: readonly unknown[], code: string): unknown[] {
  const length = args[3] as number;
  return args.map((each, i) => (i === 3 ? (code === 'short' ? length - 1 : 0) : each));
}

function failure(code: string, name: string): NodeJS.ErrnoException {
  return Object.assign(new Error(`${code}: made to fail, ${name}`), { code });
}

// The functions are taken and put back by name; their many signatures are of no account here.
type Functions = Record<string, (...args: unknown[]) => unknown>;

/** Watches all calls from now on; with `trouble` one of them fails. */
export function watchCalls(trouble?: Trouble): Watch {
  const calls: string[] = [];
  const openFiles = new Set<number>();
  const originals: (() => void)[] = [];
  const fails = (name: string): boolean => {
    calls.push(name);
    return trouble?.at === calls.length - 1;
  };
  const replace = (holder: Functions, name: string, made: (original: Functions[string]) => Functions[string]): void => {
    const original = holder[name];
    if (!original) return;
    holder[name] = made(original.bind(holder));
    originals.push(() => {
      holder[name] = original;
    });
  };
  for (const name of CALLS) {
    replace(fs as unknown as Functions, name, (original) => (...args) => {
      const done = args.at(-1) as (...results: unknown[]) => void; // the callback stands last
      const isMeant = fails(name);
      const isShort = trouble?.code === 'short' || trouble?.code === 'cut';
      if (isMeant && !isShort) return done(failure(trouble?.code ?? '', name));
      const isCut = trouble?.code === 'cut' && calls.length - 1 > trouble.at;
      const asked = name === 'write' && (isCut || (isMeant && isShort)) ? shortened(args, trouble.code) : args;
      return original?.(...asked.slice(0, -1), (error: unknown, ...results: unknown[]) => {
        if (!error && name === 'open') openFiles.add(results[0] as number);
        if (!error && name === 'close') openFiles.delete(args[0] as number);
        done(error, ...results);
      });
    });
  }
  for (const name of PROMISED) {
    replace(fs.promises as unknown as Functions, name, (original) => async (...args) => {
      if (fails(`promises.${name}`)) throw failure(trouble?.code ?? '', name);
      return original?.(...args);
    });
  }
  syncBuiltinESMExports();
  const stop = (): void => {
    for (const restore of originals) restore();
    syncBuiltinESMExports();
  };
  return { calls, openFiles, stop };
}
