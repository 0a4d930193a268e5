/** Dividing against published plates and tables (workshopValues.json), and exact arithmetic of its own. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkOffList } from '../../solver/teeth/cutting/checkOffList.ts';
import { compoundWay, differentialWay, directWays, simpleMoves } from '../../solver/teeth/cutting/divideExactly.ts';
import { nearCompoundWay, nearestHoleWay, nearWays } from '../../solver/teeth/cutting/divideNearly.ts';
import { type DividingHead, PLATES_A, PLATES_B, USUAL_CHANGE_WHEELS } from '../../solver/teeth/cutting/dividing.ts';
import { exactWays, settingGives, USUAL_KIT } from '../../solver/teeth/cutting/index.ts';
import { moveSays } from '../../solver/words/teeth/dividingWords.ts';
import { input, valuesOf } from './checkValues.ts';
import values from './workshopValues.json' with { type: 'json' };

const head = (ratio: number, plates = PLATES_A): DividingHead => ({ name: `${ratio}:1`, ratio, plates });
const of = (id: string) => valuesOf(values, id)[0]?.expected;

describe('simple dividing at 40 to 1', () => {
  it('the plates are the published ones', () => {
    expect(Object.values(of('E.plates.A') as object)).toEqual(PLATES_A);
    expect(Object.values(of('E.plates.B') as object)).toEqual(PLATES_B);
  });
  const rows = valuesOf(values, 'E.index.').filter(({ id }) => /^E\.index\.\d+$/.test(id));
  it.each(rows.map((v) => [v.id, v] as const))('%s', (_, value) => {
    const want = value.expected as {
      full: number;
      setA: { circle: number; holes: number }[];
      setB: { circle: number; holes: number }[];
    }; // shape of these entries
    for (const [plates, rowsOf] of [
      [PLATES_A, want.setA],
      [PLATES_B, want.setB],
    ] as const) {
      const moves = simpleMoves(input(value, 'N'), head(40, plates));
      expect(moves.map(({ circle, holes }) => ({ circle, holes }))).toEqual(
        rowsOf.map(({ circle, holes }) => ({ circle, holes })),
      );
      for (const { turns } of moves) expect(turns).toBe(want.full);
    }
  });
  it('set A divides every number to 50 and every even one to 100 except 96 (published treatise on milling)', () => {
    const want = of('E.index.coverage.A') as { all_up_to: number; even_up_to_100_except: number[] }; // shape of this entry
    const can = (n: number) => simpleMoves(n, head(40)).length > 0;
    for (let n = 2; n <= want.all_up_to; n++) expect(can(n), String(n)).toBe(true);
    for (let n = 52; n <= 100; n += 2) expect(can(n), String(n)).toBe(!want.even_up_to_100_except.includes(n));
    expect([...Array(25).keys()].map((i) => 51 + 2 * i).filter(can)).toEqual(of('E.index.odd51_99.A'));
  });
  it('what set B cannot divide', () => {
    const cannot = [...Array(99).keys()]
      .map((i) => i + 2)
      .filter((n) => simpleMoves(n, head(40, PLATES_B)).length === 0);
    expect(cannot).toEqual(of('E.index.missing.B'));
  });
});

describe('compound and differential', () => {
  it('77 by two circles of one plate (9 on 21 and 3 on 33 is one way: handbook, memory; the identity is exact)', () => {
    const way = compoundWay(77, head(40));
    if (way?.kind !== 'compound') throw new Error('no way');
    const { first, second } = way;
    const sum = first.turns + first.holes / first.circle + second.holes / second.circle;
    expect(Math.abs(sum - 40 / 77)).toBeLessThan(1e-15);
    expect([first.circle, second.circle].sort()).toEqual([21, 33]);
  });
  it('61 and 127 by change wheels: the plate makes up the difference exactly', () => {
    for (const count of [61, 127, 223]) {
      const way = differentialWay(count, head(40), USUAL_CHANGE_WHEELS);
      if (way?.kind !== 'differential') throw new Error('no way');
      const product = (list: readonly number[]) => list.reduce((a, b) => a * b, 1);
      const plate = (product(way.driving) / product(way.driven)) * (way.sense === 'with' ? 1 : -1);
      // For one tooth the crank turns by the hole setting and by what the plate has turned meanwhile.
      const crank = way.move.turns + way.move.holes / way.move.circle + plate / count;
      expect(Math.abs(crank - 40 / count)).toBeLessThan(1e-14);
      for (const gear of new Set([...way.driving, ...way.driven])) {
        const used = [...way.driving, ...way.driven].filter((g) => g === gear).length;
        expect(used).toBeLessThanOrEqual(USUAL_CHANGE_WHEELS.filter((g) => g === gear).length);
      }
    }
  });
  it('every exact way is exact, whatever the count', () => {
    fc.assert(
      fc.property(fc.integer({ min: 4, max: 400 }), (count) => {
        const kit = { ...USUAL_KIT, plainPlates: [[360, 192, 144, 120, 96]] };
        for (const way of exactWays(count, kit)) {
          if (way.kind === 'direct') expect(way.circle).toBe(way.holes * count);
          if (way.kind === 'simple') {
            const ratio = kit.heads.find(({ name }) => name === way.head)?.ratio ?? 0;
            for (const { turns, holes, circle } of way.moves) {
              expect((turns * circle + holes) * count).toBe(ratio * circle);
            }
          }
          if (way.kind === 'compound') {
            const ratio = kit.heads.find(({ name }) => name === way.head)?.ratio ?? 0;
            const { first, second } = way;
            const holes = (first.turns * first.circle + first.holes) * second.circle + second.holes * first.circle;
            expect(holes * count).toBe(ratio * first.circle * second.circle);
          }
        }
      }),
      { numRuns: 60 },
    );
  });
  it('direct on a plain plate, and words for moves', () => {
    expect(directWays(24, [[96, 100]])).toMatchObject([{ circle: 96, holes: 4 }]);
    expect(moveSays({ turns: 1, holes: 1, circle: 20 })).toBe('1 turn and 1 hole on 20');
    expect(moveSays({ turns: 0, holes: 3, circle: 33 })).toBe('3 holes on 33');
    expect(moveSays({ turns: 2, holes: 0, circle: 15 })).toBe('2 turns');
  });
});

describe('counts that cannot be divided', () => {
  it('the error of the nearest holes is what a search over all teeth finds, and does not add up', () => {
    const way = nearestHoleWay(127, head(40));
    if (!way) throw new Error('no way');
    // Half a hole of the finest circle at most, a whole hole between two.
    expect(way.placeError).toBeLessThanOrEqual(Math.PI / (40 * 37));
    expect(way.spacingError).toBeLessThanOrEqual((2 * Math.PI) / (40 * 37));
  });
  it('near compound comes at least as near as 1 + 7/39 + 29/41 for 200/106, five teeth at a time', () => {
    const way = nearCompoundWay(106, head(40));
    if (!way) throw new Error('no way');
    const known = Math.abs(1 + 7 / 39 + 29 / 41 - 200 / 106);
    expect(known).toBeCloseTo(1.1796e-5, 8);
    expect(way.placeError).toBeLessThanOrEqual((known / 40) * 2 * Math.PI * 105 * (1 + 1e-9));
  });
  it('the ways are ranked by the error of a space', () => {
    const ways = nearWays(127, USUAL_KIT);
    expect(ways.length).toBeGreaterThan(4);
    expect(ways.map((way) => way.spacingError)).toEqual([...ways.map((way) => way.spacingError)].sort((a, b) => a - b));
  });
});

describe('settings read back, and the check-off list', () => {
  it('40/94 = 20/47 and 40/96 = 20/48: one circle wrong makes 96 into 94', () => {
    expect(settingGives(40, 0, 20, 48)).toMatchObject({ teeth: 96, rounds: 1 });
    expect(settingGives(40, 0, 20, 47)).toMatchObject({ teeth: 94, rounds: 1 });
  });
  it('reading back any simple setting gives the count', () => {
    for (let count = 4; count <= 120; count++) {
      for (const { turns, holes, circle } of simpleMoves(count, head(60))) {
        expect(settingGives(60, turns, holes, circle)).toMatchObject({ teeth: count, rounds: 1 });
      }
    }
  });
  it('a setting that does not close says how often it goes round; one that moves nothing is refused', () => {
    expect(settingGives(40, 0, 7, 20)).toMatchObject({ teeth: 800, rounds: 7 });
    expect(settingGives(40, 0, 0, 20)).toMatchObject({ kind: 'none' });
    expect(settingGives(40, 0.5, 1, 20)).toMatchObject({ kind: 'none' });
  });
  it('90/7 is 12 turns and 3° 25′ 43″ (42.86″ exactly)', () => {
    expect(checkOffList(7, 90)[1]).toMatchObject({ turns: 12, beyond: '3° 25′ 43″' });
  });
  it('360/127 = 2.834645669°: the list is within half a second everywhere and closes to the full turn', () => {
    for (const count of [7, 17, 96, 127, 223, 1000]) {
      const list = checkOffList(count, 90);
      expect(list).toHaveLength(count + 1);
      expect(list.at(-1)).toMatchObject({
        tooth: count,
        arcSeconds: 1_296_000,
        angle: '360° 00′ 00″',
        turns: 90,
        beyond: '0° 00′ 00″',
      });
      for (const { tooth, arcSeconds, boxed } of list) {
        expect(Math.abs(arcSeconds - (1_296_000 * tooth) / count)).toBeLessThanOrEqual(0.5);
        expect(boxed).toBe(tooth > 0 && tooth % 10 === 0);
      }
    }
  });
});
