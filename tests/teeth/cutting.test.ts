/** Cutting data of wheels: what a maker turns, cuts, measures and divides, as data and as text. */
import { describe, expect, it } from 'vitest';
import type { Wheel } from '../../solver/movement/schema.ts';
import { cuttingDataOf } from '../../solver/teeth/cutting/index.ts';
import { overTips } from '../../solver/teeth/cutting/toothCalliper.ts';
import { formOfWheel, halfAngleAt } from '../../solver/teeth/index.ts';
import { checkOffLines, cutterSays, cuttingSheet, speakerOf, teethSay } from '../../solver/words/index.ts';
import { movementOf, wheelOf } from './makeWheels.ts';

const clock = (id: string, teeth: number, fields: Partial<Omit<Wheel, 'id'>> = {}) =>
  wheelOf({ id, teeth, form: 'cycloidal', ...fields });

function dataOf(wheel: Wheel, ...others: Wheel[]) {
  const movement = movementOf(wheel, ...others);
  const speaker = speakerOf(movement);
  const data = cuttingDataOf(wheel, movement);
  return { data, speaker, cutter: cutterSays(data.cutter, speaker), text: cuttingSheet(data, 90, speaker) };
}

describe('cutting data', () => {
  it('a tabulated clock wheel: blank, depth, tooth, family, simple dividing', () => {
    const { data, text } = dataOf(
      clock('centre', 64, { size: { module: 0.8 } }),
      clock('pinion', 8, { size: { module: 0.8 } }),
    );
    expect(data.blankDiameter).toBeCloseTo(53.408, 9);
    expect(data.wholeDepth).toBeCloseTo(2.704, 9);
    expect(data.thickness).toBeCloseTo(1.256, 9);
    expect(data.cutter).toMatchObject({ kind: 'clockWheel' });
    expect(data.dividing.map(({ kind }) => kind)).toEqual(['simple', 'simple', 'simple']);
    expect(data.nearest).toEqual([]);
    expect(text).toContain('40:1, simple: 10 holes on 16 for each tooth.');
    expect(text).toContain('wear eye protection');
  });
  it('a pinion names its cutter by leaves, and says when there is none for its count', () => {
    expect(dataOf(clock('p', 8), clock('w', 64)).data.cutter).toMatchObject({
      kind: 'clockLeaf',
      leaves: 8,
      exact: true,
    });
    const { data, cutter } = dataOf(clock('p', 11), clock('w', 64));
    expect(data.cutter).toMatchObject({ leaves: 10, exact: false });
    expect(cutter).toContain('none for 11 leaves');
  });
  it('an involute wheel: cutter by range in both numberings, span, pins, odd count', () => {
    const { data, text } = dataOf(wheelOf({ id: 'w', teeth: 17 }));
    expect(data.cutter).toMatchObject({
      kind: 'involute',
      range: { from: 17, to: 20, diametralPitchNumber: 6, moduleNumber: 3 },
    });
    // involuteValues.json, A.span.17.2 and A.mow for m = 1 (derived there).
    expect(data.span).toMatchObject({ over: 2, length: expect.closeTo(4.66629132327777, 9) });
    expect(data.overTips?.add).toBeGreaterThan(0);
    expect(text).toMatch(/callipers over the tips read 18\.\d+ mm: an odd count, add 0\.\d+/);
  });
  it('pins and triangles and rings have their own way', () => {
    expect(dataOf(wheelOf({ id: 'l', teeth: 8, form: 'lantern' })).cutter).toContain('drill the shrouds');
    expect(dataOf(wheelOf({ id: 't', teeth: 60, form: 'triangular' })).cutter).toContain(
      'less the turn of one space (6.00°)',
    );
    const { data: ring, cutter } = dataOf(wheelOf({ id: 'r', teeth: 60, internal: true }));
    expect(cutter).toContain('shaper');
    expect([ring.blankDiameter, ring.wholeDepth, ring.chord]).toEqual([58, 2.25, undefined]);
  });
  it('a count that cannot be divided simply says so, with the nearest ways and their errors', () => {
    const { data, text } = dataOf(wheelOf({ id: 'w', teeth: 127 }));
    expect(data.dividing.every(({ kind }) => kind === 'differential')).toBe(true);
    expect(data.nearest.length).toBeGreaterThan(4);
    for (const way of data.nearest) expect(way.spacingError).toBeGreaterThan(0);
    expect(text).toContain('127 has no direct or simple division with these plates');
  });
  it('teeth that cannot be cut say why, and a pointed blank is turned to its point', () => {
    const uncut = dataOf(wheelOf({ id: 'w', teeth: 6, profileShift: -0.9 }));
    const [why] = uncut.data.doubts;
    expect(why && teethSay(why, uncut.speaker)).toContain('undercut to nothing');
    expect(uncut.text).toContain('undercut to nothing');
    const { data } = dataOf(wheelOf({ id: 'w', teeth: 8, profileShift: 0.8 }));
    expect(data.blankDiameter).toBeCloseTo(11.35, 2);
  });
  it('the check-off list has a line a tooth, every tenth boxed, and closes', () => {
    const { data, speaker } = dataOf(wheelOf({ id: 'w', teeth: 96 }));
    const lines = checkOffLines(data, speaker);
    expect(lines).toHaveLength(98);
    expect(lines.at(-1)).toMatch(/closes\s+360° 00′ 00″\s+90 turns/);
    expect(lines.filter((text) => text.includes('['))).toHaveLength(9);
    expect(lines[11]).toContain('[10]');
  });
});

describe('over the tips of an odd count', () => {
  it('is what flat jaws meet on the drawn teeth', () => {
    for (const teeth of [7, 9, 17, 31]) {
      const wheel = wheelOf({ teeth });
      const form = formOfWheel(wheel, movementOf(wheel));
      if (form.kind !== 'teeth') throw new Error(form.why.kind);
      const half = Math.max(0, halfAngleAt(form, form.tip));
      // Lowest and highest point of all tip lands, the first tooth upright: the jaws' reading.
      let low = Number.POSITIVE_INFINITY;
      for (let k = 0; k < teeth; k++) {
        for (let i = -200; i <= 200; i++) {
          low = Math.min(low, form.tip * Math.cos((2 * Math.PI * k) / teeth + (half * i) / 200));
        }
      }
      const { reads, add } = overTips(teeth, form.tip, half);
      expect(reads).toBeCloseTo(form.tip - low, 6);
      expect(reads + add).toBeCloseTo(2 * form.tip, 12);
    }
  });
});
