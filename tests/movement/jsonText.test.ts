import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { faultOfJson, MAX_DEPTH } from '../../solver/movement/read/jsonText.ts';

function isSound(text: string): boolean {
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
}

describe('a walk over JSON text', () => {
  test('accepts what the engine writes', () => {
    fc.assert(
      fc.property(fc.jsonValue({ maxDepth: 6 }), (value) => {
        expect(faultOfJson(JSON.stringify(value, undefined, 2))).toBeUndefined();
      }),
    );
  });

  test('agrees with the engine about damaged text', () => {
    const damage = fc.record({
      value: fc.jsonValue({ maxDepth: 3, noUnicodeString: false }),
      at: fc.nat(),
      remove: fc.integer({ min: 0, max: 3 }),
      insert: fc.constantFrom(
        '',
        '"',
        '{',
        '}',
        '[',
        ']',
        ',',
        ':',
        '0',
        '1',
        '-',
        '.',
        'e',
        't',
        'null',
        '\\',
        '\n',
        ' ',
        '\u0001',
      ),
    });
    fc.assert(
      fc.property(damage, ({ value, at, remove, insert }) => {
        const text = JSON.stringify(value);
        const place = at % (text.length + 1);
        const damaged = text.slice(0, place) + insert + text.slice(place + remove);
        const fault = faultOfJson(damaged);
        // A field named twice is sound JSON; the walk alone minds it.
        if (fault?.found.startsWith('a second field') || fault?.found.includes('__proto__')) return;
        expect([damaged, fault === undefined]).toEqual([damaged, isSound(damaged)]);
      }),
      { numRuns: 3000 },
    );
  });

  test('says line and column of the fault', () => {
    expect(faultOfJson('{\n  "a": 1,\n  "b" 2\n}')).toMatchObject({ line: 3, column: 7, found: '“2”' });
    expect(faultOfJson('{\n  "a": 1,\n  "b": [1, 2')).toMatchObject({
      line: 3,
      column: 13,
      found: 'the end of the file',
    });
    expect(faultOfJson('{"a": 1} x')).toMatchObject({ line: 1, column: 10, expected: 'the end of the file' });
  });

  test('minds fields named twice, but only within one record', () => {
    expect(faultOfJson('{"a": {"a": 1}, "b": [{"a": 1}, {"a": 2}]}')).toBeUndefined();
    expect(faultOfJson('{"a": 1, "\\u0061": 2}')?.found).toBe('a second field “a” in the same record');
  });

  test('bears any depth and any length', () => {
    expect(faultOfJson('['.repeat(200_000))?.found).toContain('nested too deeply');
    const deep = '['.repeat(MAX_DEPTH) + ']'.repeat(MAX_DEPTH);
    expect(faultOfJson(deep)).toBeUndefined();
    expect(faultOfJson(`"${'x'.repeat(5_000_000)}"`)).toBeUndefined();
  });
});
