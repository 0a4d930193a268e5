import { describe, expect, test } from 'vitest';
import { emptyMovement, type Problem, readMovement, writeMovement } from '../../solver/movement/index.ts';
import { MAX_TEXT } from '../../solver/movement/read/readMovement.ts';
import { sampleDocument } from './sampleMovement.ts';

const problemsOf = (text: string): readonly Problem[] => {
  const reading = readMovement(text);
  return reading.kind === 'problems' ? reading.problems : [];
};

/** Problems after one thing in the sample was spoiled. */
// biome-ignore lint/suspicious/noExplicitAny: the sample is spoiled with values of every wrong type
const spoiled = (spoil: (document: any) => void): readonly Problem[] => {
  const document = sampleDocument();
  spoil(document);
  return problemsOf(JSON.stringify(document));
};

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
    ['another format', '{"format": "parts-list", "version": 1}', 'format', '“parts-list”'],
    ['no format', '{"version": 1}', 'format', 'nothing'],
    ['no version', '{"format": "depthwright-movement"}', 'version', 'nothing'],
    ['a version in words', '{"format": "depthwright-movement", "version": "one"}', 'version', '“one”'],
    ['a newer version', '{"format": "depthwright-movement", "version": 2}', 'version', '2'],
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
    for (let length = 1; length < text.length; length += 1) {
      const [problem] = problemsOf(text.slice(0, length));
      expect(problem?.path).toMatch(/^line \d+, column \d+$/);
    }
  });

  test('a text that is too long is not even parsed', () => {
    expect(problemsOf(`{${' '.repeat(MAX_TEXT)}`)[0]?.expected).toBe(`at most ${MAX_TEXT}`);
  });

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

  // One bad case for each thing that a check looks for. biome-ignore is on the type of the sample.
  // biome-ignore lint/suspicious/noExplicitAny: see sampleDocument
  const CASES: readonly (readonly [string, (d: any) => void, string, string])[] = [
    ['no arbor named by a wheel', (d) => delete d.wheels[0].arbor, 'wheels[0].arbor', 'nothing'],
    ['a missing arbor', (d) => (d.wheels[0].arbor = 'center'), 'wheels[0].arbor', 'near in spelling: “centre”'],
    [
      'a rule on a missing arbor',
      (d) => (d.rules[2].points[1] = 'cornr'),
      'rules[2].points[1]',
      'near in spelling: “corner”',
    ],
    [
      'a wheel where a point belongs',
      (d) => (d.rules[2].points[1] = 'leaves'),
      'rules[2].points[1]',
      'which is a wheel',
    ],
    ['an id twice', (d) => (d.posts[0].id = 'centre'), 'posts[0].id', 'a second time'],
    ['an id with a space', (d) => (d.plates[0].id = 'base plate'), 'plates[0].id', 'a letter or digit'],
    ['too few teeth', (d) => (d.wheels[0].teeth = 3), 'wheels[0].teeth', '4 or more'],
    ['too many teeth', (d) => (d.wheels[0].teeth = 1001), 'wheels[0].teeth', '1000 or less'],
    ['half a tooth', (d) => (d.wheels[0].teeth = 60.5), 'wheels[0].teeth', 'a whole number'],
    ['a number in quotes', (d) => (d.wheels[0].teeth = '60'), 'wheels[0].teeth', 'write 60 without the quotes'],
    [
      'a size in two ways',
      (d) => (d.wheels[0].size.diametralPitch = 32),
      'wheels[0].size',
      'module and diametralPitch',
    ],
    ['a size in no way', (d) => (d.wheels[0].size = {}), 'wheels[0].size', '"circularPitch"'],
    ['a module of nothing', (d) => (d.wheels[0].size.module = 0), 'wheels[0].size.module', '0.01 or more'],
    ['an unknown form', (d) => (d.wheels[0].form = 'cycloid'), 'wheels[0].form', 'write “cycloidal”'],
    [
      'a misspelt field',
      (d) => {
        d.wheels[0].thicknes = 2;
        delete d.wheels[0].thickness;
      },
      'wheels[0].thickness',
      'rename “thicknes”',
    ],
    ['a distance of zero', (d) => (d.rules[2].length = 0), 'rules[2].length', 'or more'],
    ['a distance below zero', (d) => (d.rules[2].length = -5), 'rules[2].length', 'or more'],
    ['an unknown rule', (d) => (d.rules[2].kind = 'distanse'), 'rules[2].kind', 'write “distance”'],
    ['a distance to itself', (d) => (d.rules[2].points[1] = 'centre'), 'rules[2].points[1]', '“centre” again'],
    [
      'a distance at one place',
      (d) => (d.rules[2].points[1] = 'pipe'),
      'rules[2].points[1]',
      'the same place as “centre”',
    ],
    ['a radius about itself', (d) => (d.rules[3].point = 'centre'), 'rules[3].centre', '“centre” again'],
    ['a radius about its own axis', (d) => (d.rules[3].point = 'pipe'), 'rules[3].centre', 'the same place as “pipe”'],
    ['a bearing of itself', (d) => (d.rules[4].reference = 'corner'), 'rules[4].reference', '“corner” again'],
    [
      'a bearing from the centre',
      (d) => (d.rules[4].reference = 'pipe'),
      'rules[4].reference',
      'the same place as “centre”',
    ],
    ['opposite of itself', (d) => (d.rules[5].of = 'fourth'), 'rules[5].of', '“fourth” again'],
    ['opposite of the centre', (d) => (d.rules[5].of = 'pipe'), 'rules[5].of', 'the same place as “centre”'],
    ['same place as itself', (d) => (d.rules[6].points[0] = 'centre'), 'rules[6].points[1]', '“centre” again'],
    ['in line with itself', (d) => (d.rules[7].through[1] = 'fifth'), 'rules[7].through[1]', '“fifth” again'],
    ['a line through one place', (d) => (d.rules[7].through[1] = 'pipe'), 'rules[7].through[1]', 'the same place'],
    ['the same radius twice', (d) => (d.rules[8].points[1] = 'third'), 'rules[8].points[1]', '“third” again'],
    [
      'the radius of the centre',
      (d) => (d.rules[8].points[1] = 'pipe'),
      'rules[8].points[1]',
      'the same place as “centre”',
    ],
    ['even spacing with a repeat', (d) => (d.rules[9].points[1] = 'corner'), 'rules[9].points[1]', '“corner” again'],
    ['a gap to itself', (d) => (d.rules[10].parts[1] = 'p1'), 'rules[10].parts[1]', '“p1” again'],
    ['a gap on one axis', (d) => (d.rules[10].parts = ['ring', 'great']), 'rules[10].parts[1]', 'the same place'],
    ['a wheel in depth with itself', (d) => (d.rules[1].wheels[1] = 'great'), 'rules[1].wheels[1]', '“great” again'],
    [
      'a depth on one axis',
      (d) => (d.rules[1].wheels[1] = 'ring'),
      'rules[1].wheels[1]',
      'two wheels on different axes',
    ],
    ['measured without a measure', (d) => delete d.rules[1].measured, 'rules[1].use', 'measured'],
    ['held without a value', (d) => (d.rules[1].use = 'held'), 'rules[1].use', 'held'],
    [
      'a reading that is not there',
      (d) => (d.rules[1].measured.reading = 'm2'),
      'rules[1].measured.reading',
      'near in spelling: “m1”',
    ],
    ['a plate upside down', (d) => (d.plates[0].levels = { from: 0, to: -3 }), 'plates[0].levels', 'exchange the two'],
    ['a wall of no height', (d) => (d.walls[0].levels.to = 0), 'walls[0].levels', 'correct one'],
    ['a pipe upside down', (d) => (d.arbors[1].levels.from = 30), 'arbors[1].levels', 'exchange'],
    ['a collar upside down', (d) => (d.arbors[2].collars[0].to = 1), 'arbors[2].collars[0]', 'exchange'],
    ['a hub upside down', (d) => (d.wheels[0].hub.from = 6), 'wheels[0].hub', 'exchange'],
    [
      'a tight bearing',
      (d) => (d.arbors[0].bearings[0].bore = 1.9),
      'arbors[0].bearings[0].bore',
      'at least as large as its pivot',
    ],
    [
      'a bush inside its bore',
      (d) => (d.arbors[0].bearings[0].outer = 2),
      'arbors[0].bearings[0].outer',
      'larger than the bore',
    ],
    ['a pipe of air', (d) => (d.arbors[1].pipeBore = 5), 'arbors[1].pipeBore', 'smaller than'],
    ['a pipe on nothing', (d) => delete d.arbors[1].ridesOn, 'arbors[1].pipeBore', 'rides on nothing'],
    ['a pipe on itself', (d) => (d.arbors[1].ridesOn = 'pipe'), 'arbors[1].ridesOn', 'the arbor itself'],
    ['pipes in a ring', (d) => (d.arbors[0].ridesOn = 'pipe'), 'arbors[0].ridesOn', 'ring'],
    ['a post about itself', (d) => (d.posts[0].slidesAbout = 'p1'), 'posts[0].slidesAbout', 'the post itself'],
    [
      'a crossing seen from itself',
      (d) => (d.arbors[2].crossing.from = 'third'),
      'arbors[2].crossing.from',
      'the point itself',
    ],
    ['a crossing of no line', (d) => (d.arbors[2].crossing.to = 'centre'), 'arbors[2].crossing.to', 'both ends'],
    ['a worm on its own axis', (d) => (d.couplings[0].arbor = 'fourth'), 'couplings[0].wheel', 'another axis'],
    ['contrate on one axis', (d) => (d.couplings[1].wheels[1] = 'ring'), 'couplings[1].wheels[1]', 'another axis'],
    [
      'an arm that carries itself',
      (d) => (d.couplings[2].carries[0] = 'pipe'),
      'couplings[2].carries[0]',
      'axis of the arm',
    ],
    ['an arbor carried twice', (d) => d.couplings[2].carries.push('fifth'), 'couplings[2].carries[1]', 'a second time'],
    ['a step on its own axis', (d) => (d.couplings[3].arbor = 'centre'), 'couplings[3].wheel', 'another axis'],
    ['a drive of nothing', (d) => (d.drive.arbor = 'nobody'), 'drive.arbor', 'which nothing has'],
    ['an indication of nothing', (d) => delete d.indications[0].period, 'indications[0]', 'neither'],
    ['an indication of both', (d) => (d.indications[0].ratio = 2), 'indications[0]', 'both'],
    ['a ratio over nothing', (d) => (d.indications[1].ratio = '5/0'), 'indications[1].ratio', 'divisor'],
    ['a ratio in words', (d) => (d.indications[1].ratio = 'five'), 'indications[1].ratio', '"27/2"'],
    ['a depth read at one wheel', (d) => (d.readings[0].of = ['great']), 'readings[0].of', '1 named'],
    ['a depth read at one wheel twice', (d) => (d.readings[0].of = ['great', 'great']), 'readings[0].of[1]', 'again'],
    ['a reading of nothing', (d) => delete d.readings[0].value, 'readings[0]', 'no “value”'],
    ['a date that never was', (d) => (d.readings[0].date = '2026-02-30'), 'readings[0].date', 'a date such as'],
    ['drilled nowhere', (d) => delete d.made[0].at, 'made[0]', '“drilled” without a place'],
    ['made twice', (d) => d.made.push({ point: 'dial', state: 'marked' }), 'made[1]', 'a second state'],
    ['accepted without a reason', (d) => (d.accepted[0].reason = ''), 'accepted[0].reason', 'characters'],
    [
      'corners on top of each other',
      (d) => (d.openings[0].outline.vertices[1] = { x: 0, y: 0 }),
      'openings[0].outline.vertices[1]',
      'corner 0',
    ],
    [
      'the first corner again at the end',
      (d) => d.openings[0].outline.vertices.push({ x: 0, y: 0 }),
      'openings[0].outline.vertices[0]',
      'corner 4',
    ],
    [
      'an outline that crosses itself',
      (d) => d.openings[0].outline.vertices.splice(1, 2, { x: 10, y: 10 }, { x: 10, y: 0 }),
      'openings[0].outline.vertices[0]',
      'crosses',
    ],
    [
      'a side that goes back on itself',
      (d) => d.openings[0].outline.vertices.splice(2, 0, { x: 20, y: 0 }, { x: 15, y: 0 }),
      'openings[0].outline.vertices[1]',
      'touches itself',
    ],
    [
      'an outline of nothing',
      (d) =>
        (d.openings[0].outline.vertices = [
          { x: 0, y: 0, bulge: 0.4 },
          { x: 9, y: 0, bulge: -0.4 },
        ]),
      'openings[0].outline.vertices[0]',
      'meets',
    ],
    ['a hollow outside its wall', (d) => (d.walls[0].inner.centre = [10, 0]), 'walls[0].inner', 'not wholly inside'],
    ['a hollow larger than its wall', (d) => (d.walls[0].inner.radius = 90), 'walls[0].inner', 'not wholly inside'],
    ['an unknown unit', (d) => (d.display = { unit: 'cm' }), 'display.unit', '“mm” or “inch”'],
    ['arbors that are no list', (d) => (d.arbors = {}), 'arbors', 'a list [ … ]'],
    ['a rule that is no record', (d) => d.rules.push(7), 'rules[11]', 'a record { … }'],
  ];

  test.each(CASES)('%s is told once, at its path', (_, spoil, path, words) => {
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
    const [problem] = problemsOf(JSON.stringify({ format: 'depthwright-movement', version: 1, arbors }));
    expect(problem).toMatchObject({ path: 'arbors', found: 'a list of 20001', expected: 'a list of at most 20000' });
  });

  test('a file with thousands of problems names the first thousand and counts the rest', () => {
    const arbors = Array.from({ length: 3000 }, (_, i) => ({ id: `a${i}` }));
    const problems = problemsOf(JSON.stringify({ format: 'depthwright-movement', version: 1, arbors }));
    expect(problems.length).toBe(1001);
    expect(problems.at(-1)?.found).toContain('2000 more');
  });
});
