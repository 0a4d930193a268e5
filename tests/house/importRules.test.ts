/** Each import rule fails once, on a small tree of its own; the same tree without the fault passes. */
import { spawn } from 'node:child_process';
import { mkdir, mkdtemp, readFile, rm, symlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';

const TOP = resolve(import.meta.dirname, '../..');
const ROOMS = ['geometry', 'movement', 'teeth', 'train', 'planting', 'clearance', 'marking', 'made', 'files', 'words'];

let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'depthwright-rules-'));
  await symlink(join(TOP, 'node_modules'), join(folder, 'node_modules'), 'dir');
  await writeFile(
    join(folder, 'tsconfig.json'),
    '{"compilerOptions":{"allowImportingTsExtensions":true,"noEmit":true}}',
  );
});
afterAll(() => rm(folder, { recursive: true, force: true }));

/** A tree that keeps all rules: every room with a file and a face, a page, a shell. */
const GOOD: Readonly<Record<string, string>> = {
  ...Object.fromEntries(
    ROOMS.flatMap((room, i) => {
      const before = ROOMS[i - 1];
      const body = `export const ${room} = 1;`;
      const from = before ? `import { ${before} } from '../${before}/index.ts';\nexport const used = ${before};\n` : '';
      return [
        [`solver/${room}/part.ts`, from + body],
        [`solver/${room}/index.ts`, `export { ${room} } from './part.ts';`],
      ];
    }),
  ),
  'solver/clearance/planckAdapter.ts': "import * as planck from 'planck';\nexport const tree = planck;",
  'renderer/state/hand.svelte.ts': 'export const hand = 1;',
  'renderer/bench/drawing.ts': "import * as three from 'three';\nexport const scene = three;",
  'renderer/main.ts':
    "import type { ShellBridge } from '../electron/bridge.ts';\nimport { planting } from '../solver/planting/index.ts';\nexport type B = ShellBridge;\nexport const p = planting;",
  'electron/bridge.ts': 'export interface ShellBridge { a: 1 }\nexport const parser = 1;',
  'electron/main/main.ts':
    "import { join } from 'node:path';\nimport { app } from 'electron';\nexport const m = [join, app];",
};

interface Violation {
  readonly from: string;
  readonly rule: { readonly name: string };
}

/** Runs the rules over a tree; gives what is broken. */
async function violations(name: string, tree: Readonly<Record<string, string>>): Promise<readonly Violation[]> {
  const root = join(folder, name);
  for (const [path, text] of Object.entries(tree)) {
    await mkdir(dirname(join(root, path)), { recursive: true });
    await writeFile(join(root, path), text);
  }
  await symlink(join(TOP, 'node_modules'), join(root, 'node_modules'), 'dir');
  await writeFile(join(root, 'tsconfig.json'), '{"compilerOptions":{"allowImportingTsExtensions":true,"noEmit":true}}');
  const script = join(TOP, 'node_modules/dependency-cruiser/bin/dependency-cruise.mjs');
  const rules = join(TOP, 'build/importRules.mjs');
  const args = [script, '--config', rules, '--output-type', 'json', 'solver', 'renderer', 'electron'];
  const out = await new Promise<string>((done) => {
    const child = spawn(process.execPath, args, { cwd: root });
    let text = '';
    child.stdout.on('data', (part) => {
      text += part;
    });
    child.on('close', () => done(text));
  });
  return (JSON.parse(out) as { summary: { violations: Violation[] } }).summary.violations;
}

test('a tree that keeps the rules passes', async () => {
  expect(await violations('good', GOOD)).toEqual([]);
});

const imports = (what: string): string => `import * as other from '${what}';\nexport const x = other;`;

/** Rule that must fail, folder of the file with the fault, its text; `fault.ts` stands for the file itself. */
const FAULTS: readonly (readonly [rule: string, folder: string, text: string])[] = [
  ['room-order-geometry', 'solver/geometry', imports('../movement/part.ts')],
  ['room-order-movement', 'solver/movement', imports('../teeth/index.ts')],
  ['room-order-teeth', 'solver/teeth', imports('../train/index.ts')],
  ['room-order-train', 'solver/train', imports('../planting/index.ts')],
  ['room-order-planting', 'solver/planting', imports('../clearance/index.ts')],
  ['room-order-clearance', 'solver/clearance', imports('../marking/index.ts')],
  ['room-order-marking', 'solver/marking', imports('../made/index.ts')],
  ['room-order-made', 'solver/made', imports('../files/index.ts')],
  ['room-order-files', 'solver/files', imports('../words/index.ts')],
  ['geometry-alone', 'solver/geometry', imports('zod')],
  ['solver-imports-solver', 'solver/files', imports('../../electron/bridge.ts')],
  ['solver-is-pure', 'solver/files', imports('svelte')],
  ['solver-without-node', 'solver/files', imports('node:fs')],
  ['one-planck-file', 'solver/clearance', imports('planck')],
  ['three-in-the-bench', 'renderer', imports('three')],
  ['renderer-without-node', 'renderer', imports('node:fs')],
  ['renderer-through-the-bridge', 'renderer', imports('../electron/main/main.ts')],
  ['renderer-takes-types-of-the-bridge', 'renderer', imports('../electron/bridge.ts')],
  ['electron-without-renderer', 'electron', imports('../renderer/main.ts')],
  ['through-the-face', 'renderer', imports('../solver/planting/part.ts')],
  ['rooms-through-the-face', 'solver/files', imports('../planting/part.ts')],
  ['no-barrels', 'solver/files', "export { files } from './part.ts';"],
  ['inside-a-room-the-defining-file', 'solver/files', imports('./index.ts')],
  ['no-rings', 'electron', imports('./fault.ts')],
  [
    'no-rings',
    'renderer/bench',
    "import type { X } from './fault.ts';\nexport type Y = X;\nexport interface X { a: 1 }",
  ],
  ['state-knows-no-feature', 'renderer/state', imports('../bench/drawing.ts')],
  [
    'state-knows-no-feature',
    'renderer/wording',
    "import type { scene } from '../bench/drawing.ts';\nexport type S = typeof scene;",
  ],
  ['gestures-know-no-svelte', 'renderer/gestures', imports('svelte')],
  ['gestures-know-no-svelte', 'renderer/gestures', imports('../state/hand.svelte.ts')],
  ['resolves', 'electron', imports('./nowhere.ts')],
  ['shipped-code-without-tests', 'renderer', imports('../tests/scene.ts')],
];

test('each fault breaks its rule', async () => {
  const files = FAULTS.map(([rule, at], index) => ({ rule, path: `${at}/fault-${index}.ts` }));
  const faulty = FAULTS.map(
    ([, at, text], index) => [`${at}/fault-${index}.ts`, text.replace('fault.ts', `fault-${index}.ts`)] as const,
  );
  const tree = { ...GOOD, 'tests/scene.ts': 'export const s = 1;', ...Object.fromEntries(faulty) };
  const found = (await violations('faulty', tree)).map(({ from, rule }) => `${rule.name} in ${from}`);
  for (const { rule, path } of files) expect(found).toContain(`${rule} in ${path}`);
});

test('every rule has its fault', async () => {
  const rules = await readFile(join(TOP, 'build/importRules.mjs'), 'utf8');
  const named = [...rules.matchAll(/name: '([^']+)'/g)].map((match) => match[1]);
  const tried = new Set(FAULTS.map(([rule]) => rule));
  expect(named.length).toBeGreaterThan(10);
  expect(named.filter((name) => name !== undefined && !tried.has(name))).toEqual([]);
});
