/** The house rules that the linter holds fail once each, on a tree of faults beside the house's own configuration. */
import { spawn } from 'node:child_process';
import { copyFile, mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
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
  'tests/house/off.test.ts': ["import { test } from 'vitest';\n\ntest.skip('x', () => 1);\n", 'noSkippedTests'],
};

let folder: string;
let words: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'depthwright-lint-'));
  await mkdir(join(folder, 'build'));
  for (const file of ['.biome.json', 'build/noChance.grit']) await copyFile(join(TOP, file), join(folder, file));
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
