/** The list of keys holds every key that does something, by comparing it with the commands and with what files listen for. */
import { readdirSync, readFileSync } from 'node:fs';
import { join, relative, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { commandList } from '../../renderer/commands/commands.ts';
import { faceCommands } from '../../renderer/commands/faceCommands.ts';
import { keyList } from '../../renderer/commands/keyList.ts';
import { keysSay } from '../../renderer/commands/keySigns.ts';
import { localKeys } from '../../renderer/commands/localKeys.ts';

const RENDERER = resolve(import.meta.dirname, '../../renderer');
/** Listeners for the whole window and for a key held during a drag; their keys are commands or told with the pointer. */
const ELSEWHERE = new Set(['App.svelte', 'gestures/benchGestures.ts']);
const KEY_NAME = /\b(Arrow(?:Up|Down|Left|Right)|Page(?:Up|Down)|Enter|Escape|Home|End|Delete|Backspace|Insert|Tab)\b/g;

const withoutComments = (text: string): string =>
  text.replace(/<!--[\s\S]*?-->|\/\*[\s\S]*?\*\/|(^|\s)\/\/.*$/gm, ' ').replace(/<style>[\s\S]*<\/style>/, '');

const EDITING = withoutComments(readFileSync(join(RENDERER, 'fields/editing.svelte.ts'), 'utf8'));

/** Files of the page that listen for keys, with the keys that they name. */
function listeners(): Map<string, string[]> {
  const found = new Map<string, string[]>();
  for (const file of readdirSync(RENDERER, { recursive: true, encoding: 'utf8' })) {
    if (!/\.(svelte|ts)$/.test(file)) continue;
    const text = withoutComments(readFileSync(join(RENDERER, file), 'utf8'));
    if (!/onkeydown|'keydown'/.test(text)) continue;
    // Fields of values hand their keys to one class.
    const heard = text.includes('editing.keyPressed') ? text + EDITING : text;
    const path = relative(RENDERER, join(RENDERER, file)).replaceAll('\\', '/');
    found.set(path, [...new Set([...heard.matchAll(KEY_NAME)].map(([name]) => name))].sort());
  }
  return found;
}

describe('the list of keys', () => {
  const sections = keyList(commandList, 'linux');
  const lines = sections.flatMap((section) => section.lines);

  test('every command with a key stands in it once, with all its keys', () => {
    const withKeys = commandList.filter(({ keys }) => keys && keys.length > 0);
    expect(withKeys.length).toBeGreaterThan(40);
    for (const { id, keys = [], describes } of withKeys) {
      const shown = lines.filter(({ key }) => key === id);
      expect(shown, id).toHaveLength(1);
      expect(shown[0]?.says).toBe(describes);
      expect(shown[0]?.keys).toEqual(keys.map((key) => keysSay([key], 'linux')));
    }
  });

  test('what files listen for by themselves is what the list says, file by file', () => {
    const told = new Map(
      localKeys.map(({ file, keys }) => [file, [...new Set(keys.flatMap((each) => each.keys))].sort()] as const),
    );
    const heard = new Map([...listeners()].filter(([file]) => !ELSEWHERE.has(file)));
    expect(heard.size).toBeGreaterThan(4);
    expect(Object.fromEntries([...heard].sort())).toEqual(Object.fromEntries([...told].sort()));
  });

  test('arrows are drawn, and no line is without words or keys', () => {
    const all = lines.flatMap(({ keys }) => keys);
    expect(all).toEqual(expect.arrayContaining(['←', 'Shift ↑', 'Ctrl Z', 'Page down', '+', 'T', 'H']));
    expect(all.filter((key) => /left|right|Arrow|Mod|^$/.test(key) && !key.startsWith('Right or'))).toEqual([]);
    expect(lines.filter(({ says, keys }) => says === '' || keys.length === 0)).toEqual([]);
    expect(new Set(sections.map(({ heading }) => heading)).size).toBe(sections.length);
  });

  test('no two commands with one key do the same by the look of their words', () => {
    const known = new Map<string, string>();
    for (const { id, keys = [], describes } of commandList) {
      for (const key of keys) {
        expect(known.get(`${key} ${describes}`), `${id} ${key}`).toBeUndefined();
        known.set(`${key} ${describes}`, id);
      }
    }
  });

  test('no command is a digit: a digit belongs to the values that are typed', () => {
    const digits = commandList.filter(({ keys = [] }) => keys.some((key) => /(^|\+)\d$/.test(key)));
    expect(digits.map(({ id }) => id)).toEqual([]);
    const faces = Object.values(faceCommands).map(({ keys = [] }) => keys[0]);
    expect(new Set(faces).size).toBe(4);
    for (const key of faces) expect(commandList.filter(({ keys = [] }) => keys.includes(key ?? ''))).toHaveLength(1);
  });
});
