/** Bad input: each a clear message on the error stream, no stack trace, nothing on standard output, nothing written. */
import { mkdir, readdir } from 'node:fs/promises';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { depthwright, scratch } from './runCommand.ts';
import { DEPTHS, HELD, twoDepths, wheel } from './twoDepths.ts';

let folder: string;
beforeAll(async () => {
  folder = scratch('bad');
  await mkdir(folder);
});

const rules = (...more: unknown[]): string => twoDepths({ rules: [...HELD, ...DEPTHS, ...more] });
const apart = (length: number) => ({ id: 'r', kind: 'distance', points: ['centre', 'third'], length });

const onlyWheels = (...wheels: unknown[]): string => twoDepths({ wheels, rules: HELD });
const SELF_DEPTH = { id: 'd', kind: 'depth', wheels: ['thirdWheel', 'thirdWheel'] };
const TWINS = [
  { id: 'twin', at: [0, 0] },
  { id: 'twin', at: [9, 0] },
];

/** What is wrong, the text, and words that the message must hold: where, what was found, what was expected. */
const REFUSED: readonly (readonly [what: string, text: string, words: readonly (string | RegExp)[]])[] = [
  ['an empty file', '', [/empty/]],
  ['only blanks', ' \n\t', [/empty/]],
  ['not JSON', 'arbors: centre', [/line 1, column 1/]],
  ['text in another encoding', '\uFFFD\uFFFD{\0"\0', [/UTF-8/]],
  ['a picture', '\0\u0001\u0002', [/UTF-8/]],
  ['a truncated file', twoDepths().slice(0, 400), [/line 1, column/, /expected/]],
  ['another kind of JSON', '{"name":"x","version":"1.0.0"}', ['format', 'depthwright-movement']],
  ['a list', '[]', ['format']],
  ['a later version', twoDepths({ version: 7 }), ['version', '7']],
  ['a version that is no number', twoDepths({ version: 'one' }), ['version', 'one']],
  ['a rule that names a missing arbor', rules({ ...apart(5), points: ['centre', 'ghost'] }), ['rules[4]', 'ghost']],
  ['a wheel with no arbor', onlyWheels(wheel('lost', 'ghost', 30, 1)), ['wheels[0]', 'ghost']],
  ['a wheel without the field', onlyWheels({ id: 'w', teeth: 30 }), ['wheels[0].arbor']],
  ['a distance of zero', rules(apart(0)), ['rules[4].length', '0']],
  ['a distance below zero', rules(apart(-3)), ['rules[4].length', '-3']],
  ['a rule about one arbor twice', rules({ ...apart(5), points: ['centre', 'centre'] }), ['rules[4]', 'centre']],
  ['a depth of a wheel with itself', rules(SELF_DEPTH), ['rules[4]', 'thirdWheel']],
  ['too few teeth', onlyWheels(wheel('w', 'centre', 3, 1)), ['wheels[0].teeth', '3']],
  ['a number too large', twoDepths().replace('"at":[0,45]', '"at":[0,1e999]'), ['arbors[1].at']],
  ['two arbors with one id', twoDepths({ arbors: TWINS, wheels: [], rules: [] }), ['arbors[1]', 'twin']],
];

describe('refused: exit 2', () => {
  test.each(REFUSED)('%s', async (_what, text, words) => {
    const out = join(folder, 'sheets');
    const outcome = await depthwright(['sheets', '-', '--out', out, '--json'], text);
    expect(outcome.code).toBe(2);
    expect(outcome.out).toBe('');
    for (const word of words) expect(outcome.err).toMatch(word);
    expect(outcome.err).toMatch(/nothing was written/);
    expect(outcome.err).not.toMatch(/\n\s+at |\.ts:\d|node:internal|undefined|NaN/);
    expect(await readdir(folder)).toEqual([]);
  });
});

interface Answered {
  readonly disagreements: { rules: string[]; points: string[]; gap: number; says: string }[];
  readonly rules: { id: string; missBy: number }[];
}

/** Rules or parts that cannot go together: each said with a number. */
describe('contradictions', () => {
  test('an arc that cannot reach', async () => {
    // The arbors stand 57 apart; the depths 28.8 and 27.2 reach 56: short by 1.00.
    const held = { ...HELD[1], at: [0, 57] };
    const text = twoDepths({ rules: [HELD[0], held, ...DEPTHS] });
    const { code, out } = await depthwright(['plant', '-', '--json'], text);
    const { disagreements } = JSON.parse(out) as Answered;
    expect(code).toBe(1);
    expect(disagreements).toHaveLength(1);
    expect(Math.abs(disagreements[0]?.gap ?? 0)).toBeCloseTo(1, 6);
    expect(disagreements[0]?.says).toMatch(/1\.000 mm/);
  });

  test('nothing is written for the workshop while rules disagree', async () => {
    const held = { ...HELD[1], at: [0, 57] };
    const text = twoDepths({ rules: [HELD[0], held, ...DEPTHS] });
    for (const command of ['sheets', 'handover']) {
      const { code, out, err } = await depthwright([command, '-', '--out', join(folder, 'contested')], text);
      expect(code).toBe(1);
      expect(out).toBe('');
      expect(err).toMatch(/nothing was written.*\n.*miss by 1\.000 mm/);
    }
    expect(await readdir(folder)).toEqual([]);
  });

  test('two arbors at one place with a distance between them', async () => {
    const same = { id: 's', kind: 'samePlace', points: ['third', 'escape'] };
    const text = twoDepths({ wheels: [], rules: [...HELD, same, { ...apart(5), points: ['third', 'escape'] }] });
    // Seen while reading already: the message names the rule and both arbors.
    const { code, err } = await depthwright(['plant', '-', '--json'], text);
    expect(code).toBe(2);
    expect(err).toMatch(/rules\[3\]/);
    expect(err).toMatch(/escape.*same place.*third/);
  });

  test('a depth between different modules is said with both sizes', async () => {
    const wheels = [wheel('a', 'centre', 64, 2), { ...wheel('b', 'third', 8, 2), size: { diametralPitch: 30 } }];
    const rule = { id: 'd', kind: 'depth', wheels: ['a', 'b'] };
    const text = twoDepths({ wheels, rules: [...HELD, rule] });
    const outcomes = await Promise.all([
      depthwright(['check', '-'], text),
      depthwright(['check', '-', '--json'], text),
    ]);
    const words = outcomes.map(({ out, err }) => out + err).join();
    expect(outcomes.map(({ code }) => code)).toEqual([1, 1]);
    // 25.4 / 30 = 0.846667; the pitches differ by π (0.846667 − 0.8) = 0.147 mm.
    expect(words).toMatch(/0\.846667/);
    expect(words).toMatch(/0\.147 mm/);
  });

  test('no number of an answer is NaN or infinite', async () => {
    const rulesAtOdds = [...HELD, ...DEPTHS, apart(1000)];
    for (const command of ['plant', 'check']) {
      const { out } = await depthwright([command, '-', '--json'], twoDepths({ rules: rulesAtOdds }));
      // JSON has no word for such a number: JSON.stringify writes null in its place.
      expect(out).not.toMatch(/: null/);
      expect(out.length).toBeGreaterThan(100);
    }
  });
});

describe('usage: exit 2', () => {
  test.each([
    ['no command', []],
    ['an unknown command', ['wind', 'x.json']],
    ['no file', ['plant']],
    ['an unknown option', ['plant', '-', '--fast']],
    ['sheets without a folder', ['sheets', '-']],
    ['a face that is none', ['steps', '-', '--face', 'inside']],
  ])('%s', async (_what, args) => {
    const { code, out, err } = await depthwright(args, twoDepths());
    expect(code).toBe(2);
    expect(out).toBe('');
    expect(err).toMatch(/Usage|--help/);
  });

  test('a file that is not there, and a folder in place of a file', async () => {
    const missing = await depthwright(['plant', join(folder, 'none.json')]);
    expect(missing.code).toBe(2);
    expect(missing.err).toMatch(/none\.json could not be read: there is no such file/);
    const notFile = await depthwright(['plant', folder]);
    expect(notFile.code).toBe(2);
    expect(notFile.err).toMatch(/it is a folder/);
  });
});
