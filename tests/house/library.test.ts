/** The solver as a library: built with its types, and the example of its README is checked and run as it stands. */
import { execFile } from 'node:child_process';
import { mkdir, readFile, writeFile } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import { promisify } from 'node:util';
import { beforeAll, expect, test } from 'vitest';
import { checkMovement } from '../../solver/clearance/index.ts';
import { pointCalled } from '../../solver/movement/index.ts';
import { plantMovement } from '../../solver/planting/index.ts';
import { movementOfFile, movementOfParts } from '../support/movements.ts';

const TOP = resolve(import.meta.dirname, '../..');
const FOLDER = join(TOP, 'test-results', 'library');
const run = promisify(execFile);
const script = (path: string, ...args: readonly string[]) =>
  run(process.execPath, [join(TOP, 'node_modules', path), ...args], { cwd: TOP });

const CONFIG = {
  compilerOptions: {
    target: 'ES2023',
    module: 'NodeNext',
    strict: true,
    noEmit: true,
    types: ['node'],
    typeRoots: ['../../node_modules/@types'],
  },
  files: ['example.mts'],
};

beforeAll(async () => {
  const readme = await readFile(join(TOP, 'solver/README.md'), 'utf8');
  const example = /```ts\n([\s\S]*?)```/.exec(readme)?.[1] ?? '';
  await mkdir(FOLDER, { recursive: true });
  await writeFile(join(FOLDER, 'example.mts'), example);
  await writeFile(join(FOLDER, 'tsconfig.json'), JSON.stringify(CONFIG));
  await script('typescript/bin/tsc', '-p', 'build/tsconfig.library.json');
});

test('the example needs no cast and its types are those of the library', async () => {
  expect(await readFile(join(FOLDER, 'example.mts'), 'utf8')).not.toMatch(/\bas\b/);
  await script('typescript/bin/tsc', '-p', FOLDER);
});

test('a wrong use of the library does not compile', async () => {
  const wrong = "import { plantMovement } from 'depthwright/planting';\nplantMovement('tide-dial');\n";
  await writeFile(join(FOLDER, 'wrong.mts'), wrong);
  await writeFile(join(FOLDER, 'tsconfig.wrong.json'), JSON.stringify({ ...CONFIG, files: ['wrong.mts'] }));
  const said = await script('typescript/bin/tsc', '-p', join(FOLDER, 'tsconfig.wrong.json')).catch(
    ({ stdout }) => stdout,
  );
  expect(said).toContain("Argument of type 'string' is not assignable");
});

test('the example prints what the solver itself gives', async () => {
  const { stdout } = await script('tsx/dist/cli.mjs', join(FOLDER, 'example.mts'));
  const placed = plantMovement(movementOfFile('demo-data/tide-dial.json'));
  const places = [...placed.places].map(([id, { state, x, y }]) => `${id} ${state} ${x.toFixed(3)} ${y.toFixed(3)}`);
  const moon = pointCalled(placed.movement, 'Moon arbor');
  if (!moon) throw new Error('the example names an arbor that the demo does not have');
  const last = `${placed.places.get(moon)?.state} ${checkMovement(placed).length}`;
  expect(stdout.trimEnd().split('\n')).toEqual([...places, last]);
});

test('a point is found by its id before its name, and not by a name that two have', () => {
  const at = [0, 0];
  const movement = movementOfParts({
    arbors: [
      { id: 'third', name: 'Escape', at },
      { id: 'escape', name: 'third', at: [9, 0] },
      { id: 'b', name: 'Twin', at: [0, 9] },
    ],
    posts: [{ id: 'p', name: 'Twin', at: [9, 9], diameter: 3 }],
    marks: [{ id: 'm', name: 'Datum', at: [20, 0] }],
  });
  expect(pointCalled(movement, 'third')).toBe('third');
  expect(pointCalled(movement, 'Escape')).toBe('third');
  expect(pointCalled(movement, 'Datum')).toBe('m');
  expect(pointCalled(movement, 'Twin')).toBeUndefined();
  expect(pointCalled(movement, 'nobody')).toBeUndefined();
});
