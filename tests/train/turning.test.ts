import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { ArborId, WheelId } from '../../solver/movement/ids.ts';
import { emptyMovement } from '../../solver/movement/index.ts';
import { fractionText } from '../../solver/train/turning/rational.ts';
import type { Turning } from '../../solver/train/turning/turning.ts';
import { turnMovement } from '../../solver/train/turning/turnMovement.ts';
import { speakerOf } from '../../solver/words/index.ts';
import { indicationSays, periodSays, sharedAxesSay, turningProblemSays } from '../../solver/words/train/index.ts';
import { type Sketch, sketchMovement } from './turningMovement.ts';

const hour = { arbor: 'A', period: { value: 1, unit: 'h' }, sense: 'clockwise' };
const turn = (sketch: Sketch): Turning => turnMovement(sketchMovement({ drive: hour, ...sketch }));
function turnsOf(turning: Turning, arbor: string): string {
  const rate = turning.arbors.get(arbor as ArborId)?.rate;
  return rate ? fractionText(rate.turns) : (turning.arbors.get(arbor as ArborId)?.state ?? 'missing');
}
/** Parts of these movements are called by their ids, which a speaker that does not know them gives back. */
const speaker = speakerOf(emptyMovement());
const says = (turning: Turning): string =>
  turning.problems.map((problem) => turningProblemSays(problem, speaker)).join('\n');

describe('turning of plain trains', () => {
  it('gives exact fractions, senses from both sides, and periods of motion work', () => {
    const turning = turn({
      wheels: { cannon: ['A', 12], minute: ['B', 36], pinion: ['B', 10], hour: ['C', 40] },
      depths: ['cannon minute', 'pinion hour'],
      arbors: { C: { ridesOn: 'A' } },
      // Sums 48 and 50 between the same axes: the second pair needs 48/50 of the module.
      modules: { pinion: 0.96, hour: 0.96 },
    });
    expect(turnsOf(turning, 'B')).toBe('-1/3');
    expect(turnsOf(turning, 'C')).toBe('1/12');
    const hand = turning.arbors.get('C' as ArborId);
    expect(hand?.rate?.sense).toBe('clockwise');
    expect(hand?.senseFromBehind).toBe('anticlockwise');
    expect(hand?.rate?.periodSeconds).toBe(12 * 3600);
    expect(hand?.rate?.period && periodSays(hand.rate.period)).toBe('12 h');
    expect(turning.wheels.get('pinion' as WheelId)?.id).toBe('B');
    expect(turning.problems).toEqual([]);
  });

  it('leaves a pipe to turn freely on its arbor unless it is fixed to it', () => {
    const wheels = { a: ['A', 20] as const, p: ['P', 30] as const };
    expect(turnsOf(turn({ wheels, arbors: { P: { ridesOn: 'A' } } }), 'P')).toBe('notDriven');
    expect(turnsOf(turn({ wheels, arbors: { P: { ridesOn: 'A', turns: 'withArbor' } } }), 'P')).toBe('1');
  });

  it('keeps the sense through an internal wheel, and lets an idler change only the sense', () => {
    const ring = turn({ wheels: { a: ['A', 20], r: ['R', 80, 'internal'] }, depths: ['a r'] });
    expect(turnsOf(ring, 'R')).toBe('1/4');
    const idler = turn({ wheels: { a: ['A', 20], i: ['I', 33], b: ['B', 80] }, depths: ['a i', 'i b'] });
    expect(turnsOf(idler, 'B')).toBe('1/4');
  });

  it('turns worms by starts and hand, contrate wheels by their stated sense, stepped wheels by teeth', () => {
    const wheels = { w: ['W', 90] as const, c: ['A', 30] as const, d: ['D', 60] as const };
    const couplings = [
      { kind: 'worm', id: 'x', arbor: 'A', starts: 2, hand: 'left', wheel: 'w' },
      { kind: 'contrate', id: 'y', wheels: ['c', 'd'], sense: 'same' },
      { kind: 'stepped', id: 'z', arbor: 'D', wheel: 's', teeth: 1 },
    ];
    const turning = turn({ wheels: { ...wheels, s: ['S', 31] }, couplings });
    expect(turnsOf(turning, 'W')).toBe('-1/45');
    expect(turnsOf(turning, 'D')).toBe('1/2');
    expect(turnsOf(turning, 'S')).toBe('-1/62');
  });

  it('does not depend on the order of arbors or rules (property)', () => {
    const teeth = fc.integer({ min: 6, max: 120 });
    fc.assert(
      fc.property(fc.array(fc.tuple(teeth, teeth), { minLength: 1, maxLength: 12 }), fc.integer(), (stages, seed) => {
        const wheels: Record<string, readonly [string, number]> = {};
        const depths = stages.map(([driver, driven], index) => {
          wheels[`p${index}`] = [index === 0 ? 'A' : `S${index}`, driver];
          wheels[`w${index}`] = [`S${index + 1}`, driven];
          return `p${index} w${index}`;
        });
        const movement = sketchMovement({ wheels, depths, drive: hour });
        const mixed = {
          ...movement,
          arbors: [...movement.arbors].sort((a, b) => hash(a.id, seed) - hash(b.id, seed)),
          rules: [...movement.rules].sort((a, b) => hash(a.id, seed) - hash(b.id, seed)),
        };
        const last = `S${stages.length}` as ArborId;
        // Independent: one product over the stages, in plain whole numbers.
        const top = stages.reduce((product, [driver]) => product * BigInt(driver), 1n);
        const bottom = stages.reduce((product, [, driven]) => product * BigInt(driven), 1n);
        for (const turning of [turnMovement(movement), turnMovement(mixed)]) {
          const rate = turning.arbors.get(last)?.rate?.turns;
          expect((rate?.n ?? 0n) * bottom).toBe((stages.length % 2 === 1 ? -top : top) * (rate?.d ?? 1n));
        }
      }),
    );
  });
});

const hash = (text: string, seed: number): number =>
  [...text].reduce((sum, letter) => (Math.imul(sum, 31) + letter.charCodeAt(0)) | 0, seed | 0);

describe('turning with carriers', () => {
  const planets = {
    wheels: { sun: ['A', 30] as const, planet: ['P', 20] as const, ring: ['R', 70, 'internal'] as const },
    depths: ['sun planet', 'planet ring'],
    couplings: [{ kind: 'carrier', id: 'c', arm: 'M', carries: ['P'] }],
  };
  const onAxis = { M: { ridesOn: 'A' } };

  it('fixed ring, sun driven: arm turns 1/(1 + ring/sun), planet both in space and against the arm', () => {
    const turning = turn({ ...planets, arbors: { ...onAxis, R: { ridesOn: 'A', turns: 'never' } } });
    // Common practice (epicyclic by Willis' formula): arm = S/(S+R) = 30/100.
    expect(turnsOf(turning, 'M')).toBe('3/10');
    const planet = turning.arbors.get('P' as ArborId);
    // Against the arm the sun makes 7/10, so the planet -7/10 * 30/20.
    expect(planet?.carrier?.rate && fractionText(planet.carrier.rate.turns)).toBe('-21/20');
    expect(turnsOf(turning, 'P')).toBe('-3/4');
    expect(turnsOf(turning, 'R')).toBe('0');
    expect(turning.problems).toEqual([]);
  });

  it('a differential whose other side is free is open, and settles when that side is driven', () => {
    const free = turn({ ...planets, arbors: { ...onAxis, R: { ridesOn: 'A' } } });
    expect(turnsOf(free, 'M')).toBe('open');
    expect(says(free)).toContain('other side is free');
    const driven = turn({
      ...planets,
      wheels: { ...planets.wheels, a2: ['A', 20], i: ['I', 40], m: ['M', 60] },
      depths: [...planets.depths, 'a2 i', 'i m'],
      arbors: { ...onAxis, R: { ridesOn: 'A' } },
    });
    // Arm at 1/3 from the idler; ring = arm - (1 - arm) * 30/70.
    expect(turnsOf(driven, 'M')).toBe('1/3');
    expect(turnsOf(driven, 'R')).toBe('1/21');
  });

  it('a wheel fixed in the middle and an equal one carried by two equal steps keeps its direction in space', () => {
    // The paradox: fixed 40, idler, 40 on the arm: the last wheel does not turn in space.
    const turning = turn({
      wheels: { fixed: ['F', 40], idler: ['I', 17], last: ['L', 40] },
      depths: ['fixed idler', 'idler last'],
      arbors: { A: {}, F: { ridesOn: 'A', turns: 'never' } },
      couplings: [{ kind: 'carrier', id: 'c', arm: 'A', carries: ['I', 'L'] }],
    });
    expect(turnsOf(turning, 'L')).toBe('0');
    expect(turning.arbors.get('L' as ArborId)?.carrier?.rate?.sense).toBe('anticlockwise');
  });

  it('an arm carried by an arm adds both turns', () => {
    const turning = turn({
      wheels: { sun: ['F', 50], planet: ['P', 25], inner: ['P', 30], moon: ['Q', 10] },
      depths: ['sun planet', 'inner moon'],
      arbors: { A: {}, F: { ridesOn: 'A', turns: 'never' } },
      couplings: [
        { kind: 'carrier', id: 'c', arm: 'A', carries: ['P', 'Q'] },
        { kind: 'carrier', id: 'd', arm: 'Q', carries: ['X'] },
      ],
    });
    // Against A the fixed sun makes -1, so P makes +2 and Q -6; in space P = 3, Q = -5.
    expect(turnsOf(turning, 'P')).toBe('3');
    expect(turnsOf(turning, 'Q')).toBe('-5');
  });

  it('names a carrier on itself, carriers in a circle, two arms, and a mate off the axis', () => {
    const self = turn({
      wheels: {},
      arbors: { A: {} },
      couplings: [{ kind: 'carrier', id: 'c', arm: 'A', carries: ['A'] }],
    });
    expect(says(self)).toContain('the arm itself');
    const circle = turn({
      wheels: {},
      arbors: { A: {}, B: {} },
      couplings: [
        { kind: 'carrier', id: 'c', arm: 'A', carries: ['B'] },
        { kind: 'carrier', id: 'd', arm: 'B', carries: ['A'] },
      ],
    });
    expect(says(circle)).toContain('in a circle');
    const two = turn({
      wheels: {},
      arbors: { A: {}, B: {}, P: {} },
      couplings: [
        { kind: 'carrier', id: 'c', arm: 'A', carries: ['P'] },
        { kind: 'carrier', id: 'd', arm: 'B', carries: ['P'] },
      ],
    });
    expect(says(two)).toContain('two arms');
    const off = turn({ ...planets, arbors: { M: {} } });
    expect(says(off)).toContain('not on the axis of the arm');
  });
});

describe('what stands in the way', () => {
  it('names a locked ring of three and says that the senses disagree', () => {
    const turning = turn({ wheels: { a: ['A', 20], b: ['B', 30], c: ['C', 40] }, depths: ['a b', 'b c', 'c a'] });
    expect(turning.lockedRings).toHaveLength(1);
    expect(turning.lockedRings[0]?.kind).toBe('senses');
    expect(new Set(turning.lockedRings[0]?.arbors)).toEqual(new Set(['A', 'B', 'C']));
    expect(turnsOf(turning, 'B')).toBe('locked');
    expect(turning.problems[0]?.severity).toBe('stops');
  });

  it('names a locked ring with the counts that disagree, and lets a ring that agrees turn', () => {
    const ring = (teeth: number): Turning =>
      turn({
        wheels: {
          a: ['A', 20],
          b: ['B', 30],
          b2: ['B', 10],
          c: ['C', teeth],
          c2: ['C', 15],
          d: ['D', 25],
          d2: ['D', 40],
          a2: ['A', 40],
        },
        depths: ['a b', 'b2 c', 'c2 d', 'd2 a2'],
      });
    // Once round: 20/30 * 10/c * 15/25 * 40/40 = 1 would need c = 4.
    expect(ring(4).lockedRings).toEqual([]);
    expect(turnsOf(ring(4), 'C')).toBe('5/3');
    expect(ring(12).lockedRings[0]?.kind).toBe('ratios');
    expect(['1/3', '3']).toContain(fractionText(ring(12).lockedRings[0]?.onceRound ?? { n: 0n, d: 1n }));
  });

  it('says a drive joined to a wheel that never turns, wheels on one arbor, a small ring, missing drives', () => {
    const held = turn({ wheels: { a: ['A', 20], b: ['B', 30] }, depths: ['a b'], arbors: { B: { turns: 'never' } } });
    expect(says(held)).toContain('cannot turn');
    const same = turn({ wheels: { a: ['A', 20], b: ['A', 30] }, depths: ['a b'] });
    expect(says(same)).toContain('on one arbor');
    const small = turn({ wheels: { a: ['A', 80], b: ['B', 30, 'internal'] }, depths: ['a b'] });
    expect(says(small)).toContain('must be more than the 80');
    const { drive, ...none } = sketchMovement({ wheels: { a: ['A', 20] }, drive: hour });
    expect(drive).toBeDefined();
    expect(says(turnMovement(none))).toContain('Nothing drives');
    const zero = {
      ...none,
      drive: { arbor: 'A' as ArborId, sense: 'clockwise', period: { value: 0, unit: 's' } },
    } as const;
    expect(says(turnMovement(zero))).toContain('more than 0');
  });

  it('checks depths that share two axes, and computes the second module (practice: sums 52 and 46 as 46 : 52)', () => {
    const shared = (teeth: number) =>
      turn({
        wheels: { a: ['A', 12], b: ['B', 40], c: ['B', 10], d: ['C', teeth] },
        depths: ['a b', 'c d'],
        arbors: { C: { ridesOn: 'A' } },
      });
    expect(shared(42).sharedAxes[0]?.fits).toBe(true);
    const wrong = shared(36).sharedAxes[0];
    expect(wrong?.fits).toBe(false);
    expect(wrong?.depths[1]?.moduleThatFits).toBeCloseTo(52 / 46, 12);
    expect(wrong?.depths[1]?.misfit).toBeCloseTo(-3, 12);
    expect(wrong && sharedAxesSay(wrong, speaker)).toContain('too shallow');
  });
});

describe('indications', () => {
  it('tells the error in trade words and ten digits, and a wrong sense', () => {
    const turning = turn({
      wheels: { p: ['A', 9], w: ['B', 46], q: ['B', 9], v: ['C', 104] },
      depths: ['p w', 'q v'],
      drive: { arbor: 'A', period: { value: 12, unit: 'h' } },
      indications: [
        { id: 'moon', arbor: 'C', period: { value: 29.530588853, unit: 'd' }, sense: 'anticlockwise', tolerancePpm: 5 },
        { id: 'exact', arbor: 'C', ratio: '81/4784' },
      ],
    });
    const [moon, exact] = turning.indications;
    // Reference F3: +9.3240e-06, one day in 293.6 years.
    expect(moon?.errorPpm).toBeCloseTo(9.324, 4);
    expect(moon?.yearsPerDay).toBeCloseTo(293.6, 1);
    expect(moon?.gainSecondsPerDay).toBeCloseTo(-0.80558, 4);
    expect(moon?.achievedPeriod && periodSays(moon.achievedPeriod)).toBe('29.53086420 d');
    expect(moon && indicationSays(moon, speaker)).toContain('29.530588853'.slice(0, 10));
    expect(moon?.senseIsWrong).toBe(true);
    expect(moon?.withinTolerance).toBe(false);
    expect(exact?.errorPpm).toBe(0);
    expect(exact && indicationSays(exact, speaker)).toContain('exact');
  });

  it('says what is wrong with a wish that makes no sense', () => {
    const wish = (indication: Record<string, unknown>): string =>
      says(turn({ wheels: { a: ['A', 20] }, indications: [{ id: 'i', arbor: 'A', ...indication }] }));
    expect(wish({})).toContain('neither a period nor a ratio');
    expect(wish({ ratio: '1/0' })).toContain('other than 0');
    expect(wish({ ratio: 1, period: { value: 1, unit: 'h' } })).toContain('keep one of the two');
    expect(wish({ arbor: 'Z', ratio: 1 })).toContain('not in the movement');
  });
});
