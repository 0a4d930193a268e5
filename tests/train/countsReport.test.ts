import { describe, expect, it } from 'vitest';
import { countsReport } from '../../solver/train/counts/countsReport.ts';
import { ratioOfPeriods } from '../../solver/train/counts/ratioOfPeriods.ts';
import { fractionText } from '../../solver/train/turning/rational.ts';

const limits = { stages: 2, drivers: { from: 6, to: 20 }, driven: { from: 20, to: 120 } };

describe('report of counts', () => {
  it('tells the moon train of an hour shaft from two periods (reference F3: 4784/81, +9.3240 ppm)', () => {
    const report = countsReport({ ...limits, from: '12 h', to: 'synodicMonth', best: 2 });
    expect(report.kind).toBe('found');
    expect(report.data.rows?.[0]?.ratio).toBe('4784/81');
    expect(report.text).toContain('46/9 x 104/9');
    expect(report.text).toContain('one day in 294 years');
    expect(JSON.parse(JSON.stringify(report.data))).toEqual(report.data);
  });

  it('tells none and bad input, and names the field', () => {
    const none = countsReport({ ...limits, ratio: 9999 });
    expect(none.kind).toBe('none');
    expect(none.text).toContain('Use more stages or wider limits');
    for (const [change, field] of [
      [{ from: '0 h', to: '1 d' }, 'from'],
      [{ from: '1 h', to: '-3 d' }, 'to'],
      [{ from: '1 h', to: 'someday' }, 'to'],
      [{ ratio: 'x' }, 'ratio'],
    ] as const) {
      const report = countsReport({ ...limits, ...change });
      expect(report.kind).toBe('refused');
      expect(report.data.problems?.[0]?.field).toBe(field);
      expect(report.text).toContain('expected');
    }
    expect(countsReport({ ...limits, stages: 5, ratio: '365.2422' }, () => false).kind).toBe('stopped');
  });

  it('reads periods exactly', () => {
    const found = ratioOfPeriods('44 min', '1.1h');
    expect(found.kind === 'ratio' && fractionText(found.ratio)).toBe('3/2');
  });
});
