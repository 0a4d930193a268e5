/** The house rules that the linter holds fail once each, on a tree of faults beside the house's own configuration. */
import { spawn } from 'node:child_process';
import { copyFile, mkdir, mkdtemp, readdir, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';

const TOP = resolve(import.meta.dirname, '../..');
const usesIpc = (name: string): string => `import { ${name} } from 'electron';\nexport const i = ${name};\n`;

/** File, its text, and the words by which the linter names the fault; undefined: no fault. */
const FILES: Readonly<Record<string, readonly [text: string, fault: string | undefined]>> = {
  'solver/planting/clock.ts': ['export const now = (): number => Date.now();\n', 'noRestrictedGlobals'],
  'solver/planting/chance.ts': ['export const any = (): number => Math.random();\n', 'draws no chance'],
  'solver/planting/page.ts': ['export const title = (): string => document.title;\n', 'noRestrictedGlobals'],
  'solver/planting/default.ts': ['export default 1;\n', 'noDefaultExport'],
  'solver/planting/loose.ts': ['export const f = (x: any): unknown => x;\n', 'noExplicitAny'],
  'electron/main/main.ts': [usesIpc('ipcMain'), 'noRestrictedImports'],
  'electron/main/page.ts': [usesIpc('ipcRenderer'), 'noRestrictedImports'],
  'electron/main/channels.ts': [usesIpc('ipcMain'), undefined],
  'electron/preload/preload.ts': [usesIpc('ipcRenderer'), undefined],
  'solver/teeth/arrow.ts': ['export const f = (): number => {\n  return 1;\n};\n', 'with statements is declared'],
  'solver/teeth/inner.ts': [
    'export function f(): number {\n  const g = (): number => {\n    return 1;\n  };\n  return g();\n}\n',
    undefined,
  ],
  'solver/teeth/step.ts': ['export let n = 1;\nn += 1;\n', 'One more is written ++'],
  'solver/teeth/leap.ts': ['export let n = 1;\nn += 10;\n', undefined],
  'solver/teeth/bare.ts': ['export let n = 1;\nif (n > 2)\n  n = 2;\n', 'stands in braces'],
  'solver/teeth/loop.ts': ['export let n = 1;\nfor (let i = 0; i < 3; i++)\n  if (n > 2) n = 2;\n', 'stands in braces'],
  'solver/teeth/short.ts': ['export let n = 1;\nif (n > 2) n = 2;\nelse n = 3;\n', undefined],
  'solver/teeth/given.ts': ['export function f(n: number): number {\n  n = 2;\n  return n;\n}\n', 'noParameterAssign'],
  'solver/teeth/list.ts': ['export const list: Array<number> = [];\n', 'useConsistentArrayType'],
  'tests/house/off.test.ts': ["import { test } from 'vitest';\n\ntest.skip('x', () => 1);\n", 'noSkippedTests'],
};

let folder: string;
let words: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'depthwright-lint-'));
  await mkdir(join(folder, 'build'));
  const rules = (await readdir(join(TOP, 'build'))).filter((name) => name.endsWith('.grit'));
  for (const file of ['.biome.json', ...rules.map((name) => `build/${name}`)]) {
    await copyFile(join(TOP, file), join(folder, file));
  }
  for (const [path, [text]] of Object.entries(FILES)) {
    await mkdir(dirname(join(folder, path)), { recursive: true });
    await writeFile(join(folder, path), text);
  }
  words = await new Promise<string>((done) => {
    const args = [join(TOP, 'node_modules/@biomejs/biome/bin/biome'), 'lint', '--colors=off', '--max-diagnostics=none'];
    const child = spawn(process.execPath, args, { cwd: folder });
    let all = '';
    for (const stream of [child.stdout, child.stderr]) {
      stream.on('data', (part) => {
        all += part;
      });
    }
    child.on('close', () => done(all));
  });
});
afterAll(() => rm(folder, { recursive: true, force: true }));

test.each(Object.entries(FILES))('%s', (path, [, fault]) => {
  const blocks = words.split('\n\n\n').filter((block) => block.includes(`${path}:`));
  if (fault === undefined) expect(blocks).toEqual([]);
  else expect(blocks.join('\n')).toContain(fault);
});
