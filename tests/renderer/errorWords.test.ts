/** Numbers of the trials of errors as the window shows them. */
import { describe, expect, it } from 'vitest';
import { shareSays, windowParts } from '../../renderer/errors/errorWords.ts';

describe('numbers of the trials', () => {
  it('a share never reads as nothing when it is something, nor as all when it is not', () => {
    expect([0, 0.0001, 0.0005, 0.023, 0.996, 0.99999, 1].map(shareSays)).toEqual([
      '–',
      'under 0.1 %',
      '0.1 %',
      '2.3 %',
      '99.60 %',
      'over 99.9 %',
      'all',
    ]);
  });

  it('a distance is drawn between the ends of its window, inside a ring the other way about, never beyond them', () => {
    const depth = (deepest: number, lostAt: number, planned: number) =>
      windowParts({
        rule: 'd' as never, // only the numbers count here
        window: { deepest, deepestBy: 'binding', lostAt },
        tight: 0,
        bearingsGive: 0,
        loose: 0,
        planned,
        plusMinus: 0.1,
        triedPlusMinus: 0.1,
        least: planned,
        most: planned,
        from: [],
      });
    expect(depth(10, 11, 10.5)).toEqual({ at: 0.5, from: expect.closeTo(0.4, 9), to: expect.closeTo(0.6, 9) });
    expect(depth(11, 10, 10.25)).toEqual({ at: 0.75, from: expect.closeTo(0.65, 9), to: expect.closeTo(0.85, 9) });
    expect(depth(10, 11, 10)).toMatchObject({ at: 0, from: 0 });
    expect(depth(10, 10, 10)).toBeUndefined();
  });
});
