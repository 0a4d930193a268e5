/** What `depthwright counts` answers, for a reader and for another program. */
import { describe, expect, it } from 'vitest';
import { CommandRefusal } from '../../electron/cli/answer.ts';
import { countsAnswer } from '../../electron/cli/countsAnswer.ts';
import { ratioOfPeriods } from '../../solver/train/counts/ratioOfPeriods.ts';
import { fractionText } from '../../solver/train/turning/rational.ts';

const limits = { stages: 2, drivers: { from: 6, to: 20 }, driven: { from: 20, to: 120 } };

describe('the answer of counts', () => {
  it('tells the moon train of an hour shaft from two periods (reference F3: 4784/81, +9.3240 ppm)', () => {
    for (const to of ['synodicMonth', 'synodic month', 'mean synodic month (new moon to new moon)']) {
      const { code, text, json } = countsAnswer({ ...limits, from: '12 h', to, best: 2 });
      expect(code).toBe(0);
      expect(text).toContain('46/9 x 104/9');
      expect(text).toContain('one day in 294 years');
      // What another program reads holds plain values only.
      expect(JSON.parse(JSON.stringify(json))).toMatchObject({ kind: 'found', rows: [{ ratio: '4784/81' }, {}] });
    }
  });

  it('tells none', () => {
    const none = countsAnswer({ ...limits, ratio: 9999 });
    expect([none.code, none.json]).toMatchObject([1, { kind: 'none' }]);
    expect(none.text).toContain('Use more stages or wider limits');
  });

  it.each([
    [{ from: '0 h', to: '1 d' }, 'Period of the first arbor: found "0 h", expected'],
    [{ from: '1 h', to: '-3 d' }, 'Period of the last arbor: found "-3 d", expected'],
    [{ from: '1 h', to: 'someday' }, 'Period of the last arbor: found "someday", expected'],
    [{ ratio: 'x' }, 'Ratio: found "x", expected'],
    [{ ratio: 2, driven: { from: 30, to: 20 } }, 'Teeth of the driven wheels: found 30 to 20, expected'],
  ])('refuses %j, and names the field', (change, says) => {
    expect(() => countsAnswer({ ...limits, ...change })).toThrow(CommandRefusal);
    expect(() => countsAnswer({ ...limits, ...change })).toThrow(says);
  });

  it('reads periods exactly', () => {
    const found = ratioOfPeriods('44 min', '1.1h');
    expect(found.kind === 'ratio' && fractionText(found.ratio)).toBe('3/2');
  });
});
