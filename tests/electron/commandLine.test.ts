/** The command line on good input: the numbers, the exit codes, the streams. */
import { spawn } from 'node:child_process';
import { readdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { beforeAll, expect, test } from 'vitest';
import { depthwright, program, scratch } from './runCommand.ts';
import { HELD, twoDepths } from './twoDepths.ts';

let file: string;
beforeAll(async () => {
  file = scratch('two depths.json');
  await writeFile(file, twoDepths());
});

interface PlantJson {
  arbors: { id: string; x: number; y: number; state: string }[];
  rules: { id: string; missBy: number }[];
  freeMotions: number;
  disagreements: { gap: number; says: string }[];
}

/**
 * Crossing of two circles about (0, 0) and (0, 45) with radii 28.8 and 27.2, by hand:
 * y = (28.8² − 27.2² + 45²) / (2 · 45), x = √(28.8² − y²).
 */
const Y = (28.8 ** 2 - 27.2 ** 2 + 45 ** 2) / 90;
const X = Math.sqrt(28.8 ** 2 - Y ** 2);

test('plant as JSON gives the places to 1e-9 mm, every rule kept, exit 0', async () => {
  const { code, out, err } = await depthwright(['plant', file, '--json']);
  const planted = JSON.parse(out) as PlantJson;
  const third = planted.arbors.find(({ id }) => id === 'third');
  expect(third?.x).toBeCloseTo(X, 9);
  expect(third?.y).toBeCloseTo(Y, 9);
  expect(planted.arbors.map(({ state }) => state)).toEqual(['planted', 'planted', 'planted']);
  expect(planted.rules.map(({ id }) => id).sort()).toEqual(['d1', 'd2', 'h1', 'h2']);
  for (const rule of planted.rules) expect(Math.abs(rule.missBy)).toBeLessThan(1e-9);
  expect(planted.freeMotions).toBe(0);
  expect(planted.disagreements).toEqual([]);
  expect({ code, err }).toEqual({ code: 0, err: '' });
});

test('plant as text stands in columns, from standard input as from a file', async () => {
  const [fromFile, fromInput] = await Promise.all([
    depthwright(['plant', file]),
    depthwright(['plant', '-'], twoDepths()),
  ]);
  expect(fromInput).toEqual(fromFile);
  const lines = fromFile.out.split('\n');
  const numbers = lines.filter((line) => /^ {2}(centre|escape|third) /.test(line));
  expect(numbers).toHaveLength(3);
  // Right-aligned numbers with equal decimals: all decimal points of a column stand under each other.
  const points = numbers.map((line) => [...line.matchAll(/\./g)].slice(0, 2).map((match) => match.index));
  expect(new Set(points.map((columns) => columns.join())).size).toBe(1);
  expect(fromFile.out).toMatch(/^ {2}third +16\.655 +23\.496 +planted/m);
  expect(lines.every((line) => line === line.trimEnd())).toBe(true);
});

test('a loose arbor gives exit 1 and says how many motions remain', async () => {
  const { code, out } = await depthwright(['plant', '-', '--json'], twoDepths({ rules: HELD }));
  const planted = JSON.parse(out) as PlantJson;
  expect(code).toBe(1);
  expect(planted.freeMotions).toBe(2);
  expect(planted.arbors.find(({ id }) => id === 'third')?.state).toBe('loose');
});

test('check names kind, parts and gap of what fouls, with exit 1', async () => {
  // A post of 6 mm diameter 3 mm inside the tips of the third wheel (radius about 25.1 mm) at its level.
  const post = { id: 'pillar', at: [16.655, -1], diameter: 6, levels: { from: 0, to: 20 } };
  const held = { id: 'h3', kind: 'held', point: 'pillar', at: post.at };
  const rules = [...JSON.parse(twoDepths()).rules, held];
  const { code, out } = await depthwright(['check', '-', '--json'], twoDepths({ posts: [post], rules }));
  const { findings } = JSON.parse(out) as { findings: { kind: string; parts: string[]; gap: number }[] };
  const fouls = findings.find(({ parts }) => parts.includes('pillar') && parts.includes('thirdWheel'));
  expect(code).toBe(1);
  expect(fouls?.kind).toBe('fouls');
  expect(fouls?.gap).toBeLessThan(0);
});

test('steps tells one step for each point; an unknown plate is refused by name', async () => {
  const { code, out } = await depthwright(['steps', file]);
  expect(code).toBe(0);
  for (const id of ['centre', 'escape', 'third']) expect(out).toContain(id);
  expect(out).toContain('28.800');
  const refused = await depthwright(['steps', file, '--plate', 'rear']);
  expect(refused.code).toBe(2);
  expect(refused.err).toContain('"rear"');
});

test('sheets writes the files it names, the same bytes each time', async () => {
  const [first, second] = [scratch('one'), scratch('two')];
  const outcomes = [
    await depthwright(['sheets', file, '--out', first, '--json']),
    await depthwright(['sheets', file, '--out', second, '--json']),
  ];
  expect(outcomes.map(({ code }) => code)).toEqual([0, 0]);
  const { files } = JSON.parse(outcomes[0]?.out ?? '') as { files: string[] };
  expect((await readdir(first)).sort()).toEqual([...files].sort());
  expect(files.some((name) => name.endsWith('.dxf'))).toBe(true);
  for (const name of files) {
    expect(await readFile(join(first, name))).toEqual(await readFile(join(second, name)));
  }
});

test('help shows examples and exits 0; the version is the package’s', async () => {
  const help = await depthwright(['--help']);
  expect(help.code).toBe(0);
  expect(help.out).toContain('depthwright plant demo-data/tide-dial.json');
  const { version } = JSON.parse(await readFile('package.json', 'utf8')) as { version: string };
  expect((await depthwright(['--version'])).out).toBe(`${version}\n`);
});

test('a reader that stops early is no error', async () => {
  // As many arbors as make an answer larger than any pipe.
  const arbors = Array.from({ length: 4000 }, (_, i) => ({ id: `a${i}`, at: [i, 0], diameter: 0.1 }));
  const held = arbors.map(({ id, at }) => ({ id: `h${id}`, kind: 'held', point: id, at }));
  const big = scratch('big.json');
  await writeFile(big, twoDepths({ arbors, wheels: [], rules: held }));
  const script = `"${process.execPath}" ${program()} plant "${big}" --json | head -n 1`;
  const { out, err } = await new Promise<{ out: string; err: string }>((done) => {
    const shell = spawn('sh', ['-c', script]);
    const said = { out: '', err: '' };
    shell.stdout.on('data', (part) => {
      said.out += part;
    });
    shell.stderr.on('data', (part) => {
      said.err += part;
    });
    shell.on('close', () => done(said));
  });
  expect(out).toBe('{\n');
  expect(err).toBe('');
});

test('depth looks at one depth where it is planted', async () => {
  const { code, out } = await depthwright(['depth', file, 'd1', '--json']);
  const { depths } = JSON.parse(out) as { depths: { rule: string; distance: number; distanceFrom: string }[] };
  expect(code).toBe(0);
  expect(depths).toHaveLength(1);
  expect(depths[0]).toMatchObject({ rule: 'd1', distanceFrom: 'planted' });
  expect(depths[0]?.distance).toBeCloseTo(28.8, 9);
  const refused = await depthwright(['depth', file, 'd9']);
  expect([refused.code, refused.out]).toEqual([2, '']);
  expect(refused.err).toContain('"d9"');
});

test('cutting gives the blank of one wheel', async () => {
  const { code, out } = await depthwright(['cutting', file, 'thirdWheel', '--json']);
  const { wheels } = JSON.parse(out) as { wheels: { wheel: string; pitchDiameter: number }[] };
  expect(code).toBe(0);
  // 60 teeth of module 0.8.
  expect(wheels.map(({ wheel, pitchDiameter }) => [wheel, pitchDiameter])).toEqual([['thirdWheel', 48]]);
});

test('turns tells what drives and how each arbor turns', async () => {
  const drive = { arbor: 'centre', period: { value: 1, unit: 'h' } };
  const { out } = await depthwright(['turns', '-', '--json'], twoDepths({ drive }));
  const { arbors } = JSON.parse(out) as { arbors: { id: string; rate?: { turns: string } }[] };
  const turns = Object.fromEntries(arbors.map(({ id, rate }) => [id, rate?.turns]));
  // 64/8 and 60/8: the third arbor turns 8 times the other way, the escape arbor 60 times.
  expect(turns).toMatchObject({ centre: '1', third: '-8', escape: '60' });
});

test('counts searches, proves that there are none, and refuses nonsense', async () => {
  const found = await depthwright(['counts', '--ratio', '60', '--stages', '2', '--best', '1', '--json']);
  expect(found.code).toBe(0);
  const { rows } = JSON.parse(found.out) as { rows: { ratio: string; errorPpm: number }[] };
  expect(rows).toMatchObject([{ ratio: '60', errorPpm: 0 }]);
  const none = await depthwright(['counts', '--ratio', '1000', '--stages', '1']);
  expect(none.code).toBe(1);
  for (const args of [[], ['--ratio', 'moon'], ['--ratio', '60', '--stages', 'two']]) {
    const refused = await depthwright(['counts', ...args]);
    expect([refused.code, refused.out]).toEqual([2, '']);
  }
});
