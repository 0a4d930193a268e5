import { describe, expect, test } from 'vitest';
import { emptyMovement, type Problem, readMovement, writeMovement } from '../../solver/movement/index.ts';
import { MAX_TEXT } from '../../solver/movement/read/readMovement.ts';
import { FAULT_CASES } from './faultCases.ts';
import { sampleDocument } from './sampleMovement.ts';

function problemsOf(text: string): readonly Problem[] {
  const reading = readMovement(text);
  return reading.kind === 'problems' ? reading.problems : [];
}

/** Problems after one thing in the sample was spoiled. */
// biome-ignore lint/suspicious/noExplicitAny: the sample is spoiled with values of every wrong type
function spoiled(spoil: (document: any) => void): readonly Problem[] {
  const document = sampleDocument();
  spoil(document);
  return problemsOf(JSON.stringify(document));
}

describe('reading a movement', () => {
  test('the sample is sound and comes with its defaults', () => {
    const reading = readMovement(JSON.stringify(sampleDocument()));
    expect(reading.kind === 'problems' && reading.problems).toBe(false);
    if (reading.kind !== 'movement') return;
    expect(reading.movement.arbors[3]).toEqual({
      id: 'fourth',
      at: [-20, -10],
      diameter: 2,
      bearings: [],
      endShake: 0,
      collars: [],
    });
    expect(reading.movement.display).toEqual({ unit: 'mm', decimals: 3 });
    expect(reading.movement.rules[1]).toMatchObject({ leaveOut: false, allowance: 0 });
    expect(reading.migratedFrom).toBeUndefined();
  });

  test('the empty movement is sound', () => {
    expect(readMovement(writeMovement(emptyMovement()))).toEqual({ kind: 'movement', movement: emptyMovement() });
  });

  test('a byte order mark is no fault', () => {
    expect(problemsOf(`\uFEFF${JSON.stringify(sampleDocument())}`)).toEqual([]);
  });

  test.each([
    ['an empty file', '', '', 'empty'],
    ['spaces only', ' \n ', '', 'empty'],
    ['no JSON', 'solid of revolution', 'line 1, column 1', '“s”'],
    ['a list', '[]', '', 'a list of 0'],
    ['null', 'null', '', 'null'],
    ['another format', '{"format": "parts-list", "version": 2}', 'format', '“parts-list”'],
    ['no format', '{"version": 2}', 'format', 'nothing'],
    ['no version', '{"format": "depthwright-movement"}', 'version', 'nothing'],
    ['a version in words', '{"format": "depthwright-movement", "version": "one"}', 'version', '“one”'],
    ['a newer version', '{"format": "depthwright-movement", "version": 3}', 'version', '3'],
    ['an older version than any', '{"format": "depthwright-movement", "version": -1}', 'version', '-1'],
  ])('%s is told in one sentence', (_, text, path, found) => {
    const [problem, ...more] = problemsOf(text);
    expect(more).toEqual([]);
    expect(problem?.path).toBe(path);
    expect(problem?.found).toContain(found);
    expect(problem?.says).toContain(problem?.remedy);
  });

  test('every truncation of a file is told with its line and column', () => {
    const text = writeMovement(emptyMovement()).trimEnd();
    for (let length = 1; length < text.length; length++) {
      const [problem] = problemsOf(text.slice(0, length));
      expect(problem?.path).toMatch(/^line \d+, column \d+$/);
    }
  });

  test('a text that is too long is not even parsed', () => {
    expect(problemsOf(`{${' '.repeat(MAX_TEXT)}`)[0]?.expected).toBe(`at most ${MAX_TEXT}`);
  });

  // A walk from each pipe to the end of its ring would take a minute here.
  test('two large rings of pipes are told once each, at the first pipe of each', () => {
    const arbors = Array.from({ length: 8000 }, (_, i) => ({
      id: `a${i}`,
      at: [0, i],
      ridesOn: `a${i < 4000 ? (i + 1) % 4000 : i === 7999 ? 4000 : i + 1}`,
    }));
    const problems = problemsOf(JSON.stringify({ format: 'depthwright-movement', version: 1, arbors }));
    expect(problems.map(({ path }) => path)).toEqual(['arbors[0].ridesOn', 'arbors[4000].ridesOn']);
    expect(problems[1]?.found).toMatch(/^4000 pipes .* a4000 on a4001 on .* on …$/);
  }, 20_000);

  test('a field called __proto__ is refused and pollutes nothing', () => {
    const text = JSON.stringify(sampleDocument()).replace('"title"', '"__proto__":{"polluted":1},"title"');
    expect(problemsOf(text)[0]?.found).toContain('__proto__');
    expect(Reflect.get({}, 'polluted')).toBeUndefined();
    expect(problemsOf(JSON.stringify({ ...sampleDocument(), constructor: { prototype: 1 }, toString: 2 }))).toEqual([]);
  });

  test('1e999 is not taken for a number', () => {
    const text = JSON.stringify(sampleDocument()).replace('"at":[20,10]', '"at":[1e999,10]');
    expect(problemsOf(text)[0]).toMatchObject({
      path: 'arbors[2].at[0]',
      id: 'third',
      found: 'a number too large to hold',
    });
  });

  test.each(FAULT_CASES)('%s is told once, at its path', (_, spoil, path, words) => {
    const problems = spoiled(spoil);
    expect(problems.map((problem) => problem.path)).toContain(path);
    const problem = problems.find((candidate) => candidate.path === path);
    expect(problem?.says).toContain(words);
    expect(problem?.says).toMatch(/^\S.*\.$/s);
    expect(problems.filter((other) => other.path === path)).toHaveLength(1);
    expect(problems.length).toBeLessThanOrEqual(4);
  });

  test('all problems come at once, each at its own place in the file', () => {
    const problems = spoiled((d) => {
      d.arbors.splice(1, 0, { id: 'broken' });
      d.rules[0].at = [0, 'nought'];
      d.rules[2].length = 0;
      d.rules[5].of = 'fourth';
      d.rules[4].reference = 'broken';
      d.wheels[3].arbor = 'nowhere';
    });
    expect(problems.map((problem) => problem.path).sort()).toEqual([
      'arbors[1].at',
      'rules[0].at[1]',
      'rules[2].length',
      'rules[5].of',
      'wheels[3].arbor',
    ]);
  });

  test('twenty thousand and one arbors are too many', () => {
    const arbors = Array.from({ length: 20_001 }, (_, i) => ({ id: `a${i}`, at: [i % 100, i / 100] }));
    const [problem] = problemsOf(JSON.stringify({ format: 'depthwright-movement', version: 2, arbors }));
    expect(problem).toMatchObject({ path: 'arbors', found: 'a list of 20001', expected: 'a list of at most 20000' });
  });

  test('a file with thousands of problems names the first hundred and counts the rest', () => {
    const arbors = Array.from({ length: 3000 }, (_, i) => ({ id: `a${i}` }));
    const problems = problemsOf(JSON.stringify({ format: 'depthwright-movement', version: 2, arbors }));
    expect(problems.length).toBe(101);
    expect(problems.at(-1)?.found).toContain('2900 more');
  });
});
