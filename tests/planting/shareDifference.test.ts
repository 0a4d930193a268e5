/** The difference of several lengths, shared: against least squares done another way, and what is told of it. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applyEdit } from '../../solver/movement/index.ts';
import type { Movement } from '../../solver/movement/schema.ts';
import { plantMovement } from '../../solver/planting/index.ts';
import type { PlacedMovement } from '../../solver/planting/placed.ts';
import { arbor, buildMovement, clockWheel, distance, held, placeOf, type RuleInput, ruleOf } from './buildMovement.ts';

type XY = readonly [number, number];

/** One length from a held place. */
interface Length {
  readonly from: XY;
  readonly length: number;
  readonly plusMinus?: number | undefined;
}

/** Least squares by steps on a grid that halve: slow, and no relation of the kernel. */
function leastSquares(lengths: readonly Length[], start: XY): XY {
  const cost = ([x, y]: XY): number =>
    lengths.reduce((sum, { from, length, plusMinus }) => {
      const miss = (Math.hypot(x - from[0], y - from[1]) - length) / (plusMinus ?? 0.02);
      return sum + miss * miss;
    }, 0);
  let [best, least] = [start, cost(start)];
  for (let step = 1; step > 1e-10; ) {
    const [x, y] = best;
    const tries = [-1, 0, 1].flatMap((i) => [-1, 0, 1].map((j): XY => [x + i * step, y + j * step]));
    const better = tries.find((at) => cost(at) < least);
    if (better) [best, least] = [better, cost(better)];
    else step /= 2;
  }
  return best;
}

function sharing(lengths: readonly Length[], sketch: XY, more: readonly RuleInput[] = []): Movement {
  return buildMovement({
    arbors: [...lengths.map(({ from }, k) => arbor(`Q${k}`, ...from)), arbor('P', ...sketch), arbor('R', 55, 60)],
    rules: [
      ...lengths.map(({ from }, k) => held(`h${k}`, `Q${k}`, ...from)),
      ...lengths.map(({ length, plusMinus }, k) => ({
        ...distance(`d${k}`, `Q${k}`, 'P', length),
        ...(plusMinus === undefined ? {} : { plusMinus }),
      })),
      { kind: 'shareDifference', id: 'share', point: 'P', among: lengths.map((_, k) => `d${k}`) },
      distance('r1', 'R', 'P', 30),
      { kind: 'bearing', id: 'r2', point: 'R', centre: 'P', angle: 40 },
      ...more,
    ],
  });
}

const shared = (lengths: readonly Length[], sketch: XY, more: readonly RuleInput[] = []): PlacedMovement =>
  plantMovement(sharing(lengths, sketch, more));

/** Three to five places about P, none behind another, and lengths off by up to 0.3. */
const scene = fc
  .record({
    at: fc.tuple(fc.double({ min: -20, max: 20, noNaN: true }), fc.double({ min: -20, max: 20, noNaN: true })),
    others: fc.array(
      fc.record({
        turn: fc.double({ min: 0, max: 0.6, noNaN: true }),
        away: fc.double({ min: 15, max: 60, noNaN: true }),
        off: fc.double({ min: -0.3, max: 0.3, noNaN: true }),
        plusMinus: fc.option(fc.double({ min: 0.01, max: 0.1, noNaN: true }), { nil: undefined }),
      }),
      { minLength: 3, maxLength: 5 },
    ),
  })
  .map(({ at, others }) => ({
    at,
    lengths: others.map(({ turn, away, off, plusMinus }, k): Length => {
      const angle = (2 * Math.PI * (k + turn)) / others.length;
      return { from: [at[0] + away * Math.cos(angle), at[1] + away * Math.sin(angle)], length: away + off, plusMinus };
    }),
  }));

const AGREEING: readonly Length[] = [
  { from: [0, 0], length: 50 },
  { from: [60, 0], length: 50 },
  { from: [30, 80], length: 40 },
];

describe('the shared place', () => {
  it('is that of least squares weighted with ±, and every length tells what it misses by', () => {
    fc.assert(
      fc.property(scene, ({ at, lengths }) => {
        const placed = shared(lengths, [at[0] + 0.7, at[1] - 0.4]);
        const place = placeOf(placed, 'P');
        expect(place.state).toBe('planted');
        const [x, y] = leastSquares(lengths, at);
        expect(Math.hypot(place.x - x, place.y - y)).toBeLessThan(1e-5);
        lengths.forEach(({ from, length, plusMinus }, k) => {
          const miss = Math.abs(Math.hypot(place.x - from[0], place.y - from[1]) - length);
          expect(ruleOf(placed, `d${k}`)).toMatchObject({ role: miss > (plusMinus ?? 0.02) ? 'disagrees' : 'checks' });
          expect(ruleOf(placed, `d${k}`)?.missBy).toBeCloseTo(miss, 9);
        });
        const over = placed.disagreements.map(({ cause }) => (cause.kind === 'over' ? cause.check : cause.kind));
        const disagreeing = [...placed.rules.values()].filter(({ role }) => role === 'disagrees');
        expect(new Set(over)).toEqual(new Set(disagreeing.map(({ id }) => id)));
      }),
      { numRuns: 60 },
    );
  });

  it('moves nothing that it hangs on, and is where the lengths agree if they do', () => {
    const placed = shared(AGREEING, [31, 39]);
    expect(placed.disagreements).toEqual([]);
    expect(placeOf(placed, 'P')).toMatchObject({ state: 'planted', placedBy: ['share'] });
    expect(placeOf(placed, 'P').x).toBeCloseTo(30, 9);
    expect(placeOf(placed, 'P').y).toBeCloseTo(40, 9);
    expect(placeOf(placed, 'Q2')).toMatchObject({ x: 30, y: 80 });
    expect(placed.freeMotions).toBe(0);
  });

  it('what is placed from it follows', () => {
    const placed = shared([{ from: [0, 0], length: 50.1 }, ...AGREEING.slice(1)], [31, 39]);
    const [p, r] = [placeOf(placed, 'P'), placeOf(placed, 'R')];
    expect(r.state).toBe('planted');
    expect(Math.hypot(r.x - p.x, r.y - p.y)).toBeCloseTo(30, 9);
    expect(p.hangsOn).toContain('R');
    expect(placeOf(placed, 'Q0').hangsOn).toContain('P');
  });

  it('depths share too, and one that is left out does not count', () => {
    const rules: RuleInput[] = [
      held('ha', 'A', 0, 0),
      held('hb', 'B', 40, 0),
      held('hc', 'C', 20, 45),
      { kind: 'depth', id: 'da', wheels: ['a', 'p'] },
      { kind: 'depth', id: 'db', wheels: ['b', 'p'] },
      { kind: 'depth', id: 'dc', wheels: ['c', 'p'] },
      { kind: 'shareDifference', id: 'share', point: 'pipe', among: ['da', 'db', 'dc'] },
    ];
    const parts = {
      // The wheel rides on the arbor that the share names by its pipe: one place is one place.
      arbors: [
        arbor('A', 0, 0),
        arbor('B', 40, 0),
        arbor('C', 20, 45),
        arbor('P', 20, 18),
        { ...arbor('pipe', 20, 18), ridesOn: 'P' },
      ],
      wheels: ['a', 'b', 'c'].map((id) => clockWheel(id, id.toUpperCase(), 40, 1)).concat(clockWheel('p', 'P', 14, 1)),
    };
    const place = placeOf(plantMovement(buildMovement({ ...parts, rules })), 'P');
    const centres: readonly XY[] = [
      [0, 0],
      [40, 0],
      [20, 45],
    ];
    const [x, y] = leastSquares(
      centres.map((from) => ({ from, length: 27 })),
      [20, 18],
    );
    expect(Math.hypot(place.x - x, place.y - y)).toBeLessThan(1e-5);
    const two = rules.map((rule) => (rule.id === 'dc' ? { ...rule, leaveOut: true } : rule));
    const crossing = placeOf(plantMovement(buildMovement({ ...parts, rules: two })), 'P');
    expect(crossing.x).toBeCloseTo(20, 9);
    expect(crossing.y).toBeCloseTo(Math.sqrt(27 ** 2 - 20 ** 2), 9);
  });

  it('± reaches it as least squares carries it: of n lengths about it each way 2 / n of the square', () => {
    const lengths = [0, 1, 2, 3].map((k): Length => {
      const angle = (Math.PI / 2) * k + 0.3;
      return { from: [30 * Math.cos(angle), 30 * Math.sin(angle)], length: 30, plusMinus: 0.06 };
    });
    const spread = placeOf(shared(lengths, [0.2, 0.1]), 'P').spread;
    expect(2 * (spread?.major ?? 0)).toBeCloseTo(0.06 * Math.sqrt(2 / 4), 9);
    expect(2 * (spread?.minor ?? 0)).toBeCloseTo(0.06 * Math.sqrt(2 / 4), 9);
  });
});

describe('laws', () => {
  it('moved, turned, mirrored and scaled, the place goes along', () => {
    const motion = fc.record({
      angle: fc.double({ min: -Math.PI, max: Math.PI, noNaN: true }),
      size: fc.double({ min: -1, max: 1, noNaN: true }).map((power) => 10 ** power),
      by: fc.tuple(fc.double({ min: -500, max: 500, noNaN: true }), fc.double({ min: -500, max: 500, noNaN: true })),
      isMirrored: fc.boolean(),
    });
    fc.assert(
      fc.property(scene, motion, ({ at, lengths }, { angle, size, by, isMirrored }) => {
        const [c, s] = [size * Math.cos(angle), size * Math.sin(angle)];
        const moved = ([x, y]: XY): XY => {
          const up = isMirrored ? -y : y;
          return [by[0] + c * x - s * up, by[1] + s * x + c * up];
        };
        const sketch: XY = [at[0] + 0.7, at[1] - 0.4];
        const still = placeOf(shared(lengths, sketch), 'P');
        const gone = placeOf(
          shared(
            lengths.map(({ from, length, plusMinus }) => ({
              from: moved(from),
              length: length * size,
              // Only the relation of the ± counts, so what states none keeps its own weight by stating it.
              plusMinus: (plusMinus ?? 0.02) * size,
            })),
            moved(sketch),
          ),
          'P',
        );
        const [x, y] = moved([still.x, still.y]);
        expect(Math.hypot(gone.x - x, gone.y - y)).toBeLessThan(1e-7 * (1 + size * 100));
      }),
      { numRuns: 60 },
    );
  });

  it('two points that share a length between them share it together: the sum of all squares is least', () => {
    const ends: readonly (readonly [string, string, number])[] = [
      ['A', 'P', 30.1],
      ['C', 'P', 40.05],
      ['P', 'R', 40.1],
      ['B', 'R', 30.1],
      ['D', 'R', 39.9],
    ];
    const placed = plantMovement(
      buildMovement({
        arbors: [
          arbor('A', 0, 0),
          arbor('B', 100, 0),
          arbor('C', 35, 42),
          arbor('D', 65, -38),
          arbor('P', 30, 2),
          arbor('R', 70, 1),
        ],
        rules: [
          held('a', 'A', 0, 0),
          held('b', 'B', 100, 0),
          held('c', 'C', 35, 42),
          held('d', 'D', 65, -38),
          ...ends.map(([one, other, length]) => distance(one + other, one, other, length)),
          { kind: 'shareDifference', id: 's1', point: 'P', among: ['AP', 'CP', 'PR'] },
          { kind: 'shareDifference', id: 's2', point: 'R', among: ['PR', 'BR', 'DR'] },
        ],
      }),
    );
    const at = new Map<string, [number, number]>(
      [...placed.places.values()].map(({ id, x, y }) => [id as string, [x, y]]),
    );
    const cost = (): number =>
      ends.reduce((sum, [one, other, length]) => {
        const [[ax, ay], [bx, by]] = [at.get(one) ?? [0, 0], at.get(other) ?? [0, 0]];
        return sum + (Math.hypot(ax - bx, ay - by) - length) ** 2;
      }, 0);
    const least = cost();
    expect(least).toBeGreaterThan(1e-3);
    for (const id of ['P', 'R']) {
      expect(placeOf(placed, id).state).toBe('planted');
      for (const axis of [0, 1]) {
        const place = at.get(id) as [number, number]; // a point above
        const was = place[axis] ?? 0;
        const slopes = [1e-4, -1e-4].map((step) => {
          place[axis] = was + step;
          return (cost() - least) / step;
        });
        place[axis] = was;
        // A valley floor: as steep up on both sides.
        expect(slopes[0]).toBeGreaterThan(0);
        expect((slopes[0] ?? 0) + (slopes[1] ?? 0)).toBeCloseTo(0, 7);
      }
    }
  });
});

describe('what cannot be shared is told', () => {
  const parts = (among: string[], more: RuleInput[] = []): Movement =>
    buildMovement({
      arbors: [arbor('A', 0, 0), arbor('B', 40, 0), arbor('P', 20, 18)],
      rules: [
        held('ha', 'A', 0, 0),
        held('hb', 'B', 40, 0),
        distance('d1', 'A', 'P', 27),
        distance('d2', 'B', 'P', 27),
        ...more,
        { kind: 'shareDifference', id: 'share', point: 'P', among },
      ],
    });
  const edited = (movement: Movement, edit: Parameters<typeof applyEdit>[1]): Movement => {
    const outcome = applyEdit(movement, edit);
    if (outcome.kind === 'refused') throw new Error('refused');
    return outcome.movement;
  };

  it('a rule that is no length of the point', () => {
    expect(plantMovement(parts(['d1', 'd2', 'hb'])).disagreements).toMatchObject([
      { rules: ['share'], cause: { why: { kind: 'noLengthOfPoint', rule: 'hb' } } },
    ]);
  });

  it('fewer than two that count', () => {
    const left = edited(parts(['d1', 'd2']), { kind: 'leaveOut', rules: ['d2'], leaveOut: true });
    expect(plantMovement(left).disagreements).toMatchObject([
      { rules: ['share'], cause: { why: { kind: 'fewLengths' } } },
    ]);
  });

  it('a length that goes leaves the share with the others, and takes it along when too few are left', () => {
    const fewer = edited(parts(['d1', 'd2', 'd3'], [distance('d3', 'P', 'A', 26.9)]), { kind: 'remove', ids: ['d3'] });
    expect(fewer.rules.find(({ id }) => id === 'share')).toMatchObject({ among: ['d1', 'd2'] });
    expect(edited(fewer, { kind: 'remove', ids: ['B'] }).rules.map(({ id }) => id)).toEqual(['ha', 'd1']);
  });

  it('a drilled place stands, and tells what the lengths miss by there', () => {
    const drilled = edited(parts(['d1', 'd2']), {
      kind: 'setMade',
      made: { point: 'P', state: 'drilled', at: [20.2, Math.sqrt(329)] },
    });
    const placed = plantMovement(drilled);
    expect(placeOf(placed, 'P')).toMatchObject({ x: 20.2, state: 'planted' });
    expect(placed.disagreements.length).toBeGreaterThan(0);
    expect(placed.disagreements.every(({ cause }) => cause.kind === 'over')).toBe(true);
  });
});
