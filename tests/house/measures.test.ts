/** Each measure of the house sees its fault, on a small tree of its own, and nothing in a tree without it. */
import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { LIMITS } from '../../build/house/limits.ts';
import { readSources, type Sources } from '../../build/house/sources.ts';

const TOP = resolve(import.meta.dirname, '../..');

/** A tree that keeps every limit. */
const GOOD: Readonly<Record<string, string>> = {
  'tsconfig.json': JSON.stringify({
    compilerOptions: { allowImportingTsExtensions: true, noEmit: true, strict: true, target: 'ES2023', types: [] },
  }),
  'solver/train/turns.ts': `/** Turns of a train. */
import type { Wheel } from './wheel.ts';

/** How often the last arbor turns for one turn of the first. */
export function ratioOf(wheels: readonly Wheel[]): number {
  return wheels.reduce((ratio, { teeth }) => ratio * teeth, 1);
}
`,
  'solver/train/wheel.ts': `/** A wheel. */

/** A toothed part with its count. */
export interface Wheel {
  readonly teeth: number;
}
`,
  'solver/train/index.ts': `export { ratioOf } from './turns.ts';\n`,
  'renderer/state/looking.svelte.ts': `/** How the bench is looked at. */

/** What is seen; changed by its own functions alone. */
export class Looking {
  scale = 1;
  magnify(by: number): void {
    this.scale *= by;
  }
}
`,
  'renderer/frame/Zoom.svelte': `<script lang="ts">
import type { Looking } from '../state/looking.svelte.ts';

const { looking }: { looking: Looking } = $props();
</script>
<button onclick={() => looking.magnify(2)}>Nearer {looking.scale}</button>
`,
};

const long = (lines: number): string =>
  `/** One line after another. */\n\n/** Adds up by hand. */\nexport function total(): number {\n  let sum = 0;\n${'  sum += 1;\n'.repeat(lines)}  return sum;\n}\n`;

/** Line of the table, file with the fault, its text, the figure and what the first place names. */
const FAULTS: readonly (readonly [line: string, path: string, text: string, value: number, place: string])[] = [
  [
    'circles',
    'solver/train/wheel.ts',
    `import type { ratioOf } from './turns.ts';\n\n/** A part. */\nexport interface Wheel {\n  readonly teeth: number;\n  readonly of: typeof ratioOf;\n}\n`,
    2,
    'solver/train/',
  ],
  ['faces', 'solver/teeth/index.ts', `export const a = 1, b = 2, c = 3;\n`, 3, 'solver/teeth/index.ts  3 names'],
  ['words', 'solver/train/bare.ts', `import './wheel.ts';\n\nexport const turns = (): number => 1;\n`, 1, 'bare.ts:3'],
  [
    'words',
    'solver/train/echo.ts',
    `import './wheel.ts';\n\n/** The wheels. */\nexport interface Wheels {\n  n: 1;\n}\n`,
    1,
    'echo.ts:4',
  ],
  [
    'words',
    'solver/train/fields.ts',
    `import './wheel.ts';\n\ntype Pair = { a: 1 };\nexport const n: Pair = { a: 1 };\n`,
    1,
    'Pair',
  ],
  ['length', 'solver/train/long.ts', long(30), 34, 'solver/train/long.ts:4  total, 34 lines'],
  ['long', 'solver/train/long.ts', long(70), 33.33, 'total, 74 lines'],
  ['twice', 'solver/teeth/wheel.ts', `/** A part. */\n\n/** Cut, with teeth. */\nexport type Wheel = 1;\n`, 1, 'Wheel'],
  ['any', 'solver/train/written.ts', `export const n: any = 1;\n`, 2, 'solver/train/written.ts:1'],
  ['any', 'solver/train/inferred.ts', `export const { n } = JSON.parse('{}');\n`, 1, 'inferred.ts:1  n'],
  [
    'styles',
    'renderer/frame/Zoom.svelte',
    `<p>Nearer</p>\n\n<style>\n${'  p {\n    margin: 0;\n  }\n'.repeat(900)}</style>\n`,
    2700,
    'renderer/frame/Zoom.svelte  2700 lines',
  ],
  [
    'writes',
    'renderer/frame/Zoom.svelte',
    `<script lang="ts">
import type { Looking } from '../state/looking.svelte.ts';

const { looking }: { looking: Looking } = $props();
function nearer(): void {
  looking.scale *= 2;
}
</script>
<button onclick={nearer}>Nearer</button>
`,
    1,
    'renderer/frame/Zoom.svelte:6  looking.scale, of renderer/state/looking.svelte.ts',
  ],
  [
    'writes',
    'renderer/frame/Zoom.svelte',
    `<script lang="ts">
import type { Looking } from '../state/looking.svelte.ts';

const { looking }: { looking: Looking } = $props();
</script>
<button onclick={() => (looking.scale = 2)}>Nearer</button>
<input bind:value={looking.scale} />
`,
    2,
    'looking.scale, of renderer/state/looking.svelte.ts',
  ],
];

let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'depthwright-house-'));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

async function sourcesOf(name: string, tree: Readonly<Record<string, string>>): Promise<Sources> {
  for (const [path, text] of Object.entries(tree)) {
    await mkdir(dirname(join(folder, name, path)), { recursive: true });
    await writeFile(join(folder, name, path), text);
  }
  return readSources(join(folder, name));
}

test('a tree that keeps the limits passes all of them', async () => {
  const sources = await sourcesOf('good', GOOD);
  expect(sources.files.map(sources.pathOf).sort()).toEqual(
    Object.keys(GOOD)
      .filter((path) => path.includes('/'))
      .sort(),
  );
  for (const [name, { measure, wanted }] of Object.entries(LIMITS)) {
    const { value, places } = measure(sources);
    expect({ name, places: value > wanted ? places : [] }).toEqual({ name, places: [] });
  }
});

test.each(FAULTS)('%s sees the fault in %s', async (line, path, text, value, place) => {
  const sources = await sourcesOf(`${line}-${value}-${path.replaceAll('/', '-')}`, { ...GOOD, [path]: text });
  const measured = LIMITS[line]?.measure(sources);
  expect(measured?.value).toBeCloseTo(value, 2);
  expect(measured?.places.join('\n')).toContain(place);
});

test('every line of the table has its fault, and allows no less than it wants', () => {
  expect([...new Set(FAULTS.map(([line]) => line))].sort()).toEqual(Object.keys(LIMITS).sort());
  for (const { wanted, allowed } of Object.values(LIMITS)) expect(allowed).toBeGreaterThanOrEqual(wanted);
});

test('the parts of npm test name the house', async () => {
  const { readFile } = await import('node:fs/promises');
  expect(await readFile(join(TOP, 'build/test.mjs'), 'utf8')).toContain('build/house/run.ts');
});
