/**
 * The ± of places and distances: against Monte-Carlo, against planting again with each length changed, and by laws.
 */
import { describe, expect, it } from 'vitest';
import type { Movement } from '../../solver/movement/schema.ts';
import { plantMovement } from '../../solver/planting/index.ts';
import type { PlacedMovement } from '../../solver/planting/placed.ts';
import { arbor, buildMovement, distance, held, placeOf, pointId, type RuleInput } from './buildMovement.ts';
import { randomFrom, randomMovement } from './randomMovement.ts';

type AnyRule = Movement['rules'][number];
type RuleChange = (rule: AnyRule) => AnyRule;

const changed = (movement: Movement, change: RuleChange): Movement => ({
  ...movement,
  rules: movement.rules.map(change),
});

/** A rule with its own number changed by `by` mm (at the radius, for a bearing); undefined for rules without one. */
function nudged(rule: AnyRule, by: number, placed: PlacedMovement): AnyRule | undefined {
  switch (rule.kind) {
    case 'distance':
    case 'radius':
      return { ...rule, length: rule.length + by };
    case 'depth':
      return { ...rule, held: (rule.held ?? 0) + by };
    case 'clearBy':
      return { ...rule, gap: rule.gap + by };
    case 'bearing': {
      const [p, c] = [placeOf(placed, rule.point), placeOf(placed, rule.centre)];
      return { ...rule, angle: rule.angle + ((by / Math.hypot(p.x - c.x, p.y - c.y)) * 180) / Math.PI };
    }
    default:
      return undefined;
  }
}

/** ± of 0.02 mm on every length (and the like at its radius on every bearing), 0.01 on held places. */
function withErrors(movement: Movement, placed: PlacedMovement): Movement {
  return changed(movement, (rule) => {
    if (rule.kind === 'held') return { ...rule, plusMinus: 0.01 };
    if (rule.kind === 'bearing') {
      const turned = nudged(rule, 0.02, placed);
      return turned?.kind === 'bearing' ? { ...rule, plusMinus: turned.angle - rule.angle } : rule;
    }
    return nudged(rule, 0, placed) ? { ...rule, plusMinus: 0.02 } : rule;
  });
}

const HUNDREDTH_THOUSANDTH = 1e-5;

describe('covariance', () => {
  it('is the sum of what each length and each held place does alone (random movements, central differences)', () => {
    for (const seed of [3, 17, 2024, 77, 5150]) {
      const known = randomMovement(seed, 14);
      const first = plantMovement(known.movement);
      const movement = withErrors(known.movement, first);
      const placed = plantMovement(movement);
      const sums = new Map([...known.places.keys()].map((id) => [id, { xx: 0, xy: 0, yy: 0 }]));
      const add = (plus: Movement, minus: Movement, sigma: number): void => {
        const [p, m] = [plantMovement(plus), plantMovement(minus)];
        for (const [id, sum] of sums) {
          const dx = ((placeOf(p, id).x - placeOf(m, id).x) / (2 * HUNDREDTH_THOUSANDTH)) * sigma;
          const dy = ((placeOf(p, id).y - placeOf(m, id).y) / (2 * HUNDREDTH_THOUSANDTH)) * sigma;
          sum.xx += dx * dx;
          sum.xy += dx * dy;
          sum.yy += dy * dy;
        }
      };
      for (const rule of movement.rules) {
        if (rule.kind === 'held') {
          for (const axis of [0, 1] as const) {
            const by = (way: number): Movement =>
              changed(movement, (each) => {
                if (each !== rule || each.kind !== 'held') return each;
                const at = [...each.at] as [number, number]; // a copy of a pair is a pair
                at[axis] += way * HUNDREDTH_THOUSANDTH;
                return { ...each, at };
              });
            add(by(1), by(-1), 0.005);
          }
        } else if (nudged(rule, 0, placed)) {
          const by = (way: number): Movement =>
            changed(movement, (each) =>
              each === rule ? (nudged(rule, way * HUNDREDTH_THOUSANDTH, placed) ?? each) : each,
            );
          add(by(1), by(-1), 0.01);
        }
      }
      for (const [id, { xx, xy, yy }] of sums) {
        const found = placeOf(placed, id).spread?.covariance ?? [0, 0, 0];
        const scale = xx + yy;
        expect(Math.abs(found[0] - xx) / scale).toBeLessThan(1e-4);
        expect(Math.abs(found[1] - xy) / scale).toBeLessThan(1e-4);
        expect(Math.abs(found[2] - yy) / scale).toBeLessThan(1e-4);
      }
    }
  });

  it('agrees with Monte-Carlo on a chain with a coupled group, an opposite point and a drilled one', () => {
    const rules: readonly RuleInput[] = [
      held('a', 'A', 0, 0),
      held('b', 'B', 60, 5),
      distance('1', 'A', 'P', Math.hypot(21, 13)),
      distance('2', 'P', 'Q', Math.hypot(17, 14)),
      { kind: 'bearing', id: '3', point: 'Q', centre: 'P', angle: (Math.atan2(14, 17) * 180) / Math.PI },
      distance('4', 'Q', 'B', Math.hypot(22, 22)),
      { kind: 'opposite', id: '5', point: 'S', centre: 'P', of: 'Q' },
      distance('6', 'S', 'T', 30),
      distance('7', 'D', 'T', 35),
    ];
    const base = buildMovement({
      arbors: [
        arbor('A', 0, 0),
        arbor('B', 60, 5),
        arbor('P', 21, 13),
        arbor('Q', 38, 27),
        arbor('S', 4, -1),
        arbor('T', -10, 25),
        arbor('D', -30, 0),
      ],
      rules,
      made: [{ point: 'D', state: 'drilled', at: [-29.5, 0.5], plusMinus: 0.08 }],
    });
    const sigma = 0.02;
    const movement = changed(base, (rule) =>
      rule.kind === 'distance'
        ? { ...rule, plusMinus: 2 * sigma }
        : rule.kind === 'bearing'
          ? { ...rule, plusMinus: 0.2 }
          : rule,
    );
    const placed = plantMovement(movement);
    const random = randomFrom(99);
    // Box and Muller's pair of normal numbers (1958).
    const normal = (): number => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
    const runs = 6000;
    const sample: Record<'Q' | 'T', [number, number][]> = { Q: [], T: [] };
    const apart: number[] = [];
    for (let run = 0; run < runs; run++) {
      const drawn: Movement = {
        ...changed(movement, (rule) => {
          if (rule.kind === 'distance') return { ...rule, length: rule.length + sigma * normal() };
          return rule.kind === 'bearing' ? { ...rule, angle: rule.angle + 0.1 * normal() } : rule;
        }),
        made: movement.made.map((made) => ({ ...made, at: [-29.5 + 0.04 * normal(), 0.5 + 0.04 * normal()] as const })),
      };
      const each = plantMovement(drawn);
      for (const id of ['Q', 'T'] as const) sample[id].push([placeOf(each, id).x, placeOf(each, id).y]);
      const [q, t] = [placeOf(each, 'Q'), placeOf(each, 'T')];
      apart.push(Math.hypot(q.x - t.x, q.y - t.y));
    }
    const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;
    const covariance = (a: readonly number[], b: readonly number[]): number => {
      const [ma, mb] = [mean(a), mean(b)];
      return mean(a.map((value, k) => (value - ma) * ((b[k] ?? 0) - mb)));
    };
    // The standard error of a variance from n draws is √(2/n) of it: 1.8 %; four of them are allowed.
    const allowed = 4 * Math.sqrt(2 / runs);
    for (const id of ['Q', 'T'] as const) {
      const [xs, ys] = [sample[id].map(([x]) => x), sample[id].map(([, y]) => y)];
      const spread = placeOf(placed, id).spread;
      if (!spread) throw new Error(`${id} has no spread`);
      const scale = spread.covariance[0] + spread.covariance[2];
      expect(Math.abs(covariance(xs, xs) - spread.covariance[0]) / scale).toBeLessThan(allowed);
      expect(Math.abs(covariance(xs, ys) - spread.covariance[1]) / scale).toBeLessThan(allowed);
      expect(Math.abs(covariance(ys, ys) - spread.covariance[2]) / scale).toBeLessThan(allowed);
      // 95 of 100 places lie in the ellipse, within four standard errors of the share.
      const [c, s] = [Math.cos(spread.azimuth), Math.sin(spread.azimuth)];
      const place = placeOf(placed, id);
      const inside = sample[id].filter(([x, y]) => {
        const u = (c * (x - place.x) + s * (y - place.y)) / spread.major95;
        const v = (-s * (x - place.x) + c * (y - place.y)) / spread.minor95;
        return u * u + v * v < 1;
      });
      expect(Math.abs(inside.length / runs - 0.95)).toBeLessThan(4 * Math.sqrt((0.95 * 0.05) / runs));
    }
    const stated = (placed.plusMinusBetween(pointId('Q'), pointId('T')) ?? 0) / 2;
    expect(Math.abs(covariance(apart, apart) / stated ** 2 - 1)).toBeLessThan(allowed);
  });
});

describe('the ± of rules that derive a place', () => {
  it('goes into the place in x and y, and on to what is planted from it', () => {
    const placed = plantMovement(
      buildMovement({
        arbors: [arbor('C', 10, 0), arbor('Q', 20, 0), arbor('S', 0, 0), arbor('B', 50, 0), arbor('P', 20, 20)],
        rules: [
          held('c', 'C', 10, 0),
          held('q', 'Q', 20, 0),
          held('b', 'B', 50, 0),
          { kind: 'opposite', id: 'o', point: 'S', centre: 'C', of: 'Q', plusMinus: 0.01 },
          { kind: 'distance', id: '1', points: ['S', 'P'], length: 30, plusMinus: 0.02 },
          { kind: 'distance', id: '2', points: ['B', 'P'], length: 40, plusMinus: 0.02 },
        ],
      }),
    );
    const s = placeOf(placed, 'S').spread;
    expect(s?.covariance[0]).toBeCloseTo(0.005 ** 2, 15);
    expect(s?.covariance[1]).toBeCloseTo(0, 15);
    expect(s?.covariance[2]).toBeCloseTo(0.005 ** 2, 15);
    // A right angle at P, as in reference G.cov.5: the ground's variance adds to its own arc's, along (0.6, 0.8).
    const [own, other] = [0.01 ** 2 + 0.005 ** 2, 0.01 ** 2];
    const p = placeOf(placed, 'P').spread;
    expect(p?.covariance[0]).toBeCloseTo(0.36 * own + 0.64 * other, 12);
    expect(p?.covariance[1]).toBeCloseTo(0.48 * (own - other), 12);
    expect(p?.covariance[2]).toBeCloseTo(0.64 * own + 0.36 * other, 12);
  });
});

describe('how far a hundredth moves a point', () => {
  it('is what planting again with a hundredth more gives, to first order', () => {
    for (const seed of [8, 31, 4711]) {
      const known = randomMovement(seed, 10);
      const placed = plantMovement(known.movement);
      for (const place of placed.places.values()) {
        place.placedBy.forEach((id, k) => {
          const rule = known.movement.rules.find((each) => each.id === id);
          const more = rule && nudged(rule, HUNDREDTH_THOUSANDTH, placed);
          if (!rule || !more) return;
          const again = placeOf(
            plantMovement(changed(known.movement, (each) => (each === rule ? more : each))),
            place.id,
          );
          const moved = (Math.hypot(again.x - place.x, again.y - place.y) / HUNDREDTH_THOUSANDTH) * 0.01;
          expect(Math.abs(moved - (place.movedBy[k] ?? 0))).toBeLessThan(1e-4 * (1 + moved));
        });
      }
    }
  });
});

describe('±', () => {
  const line = (extra: readonly RuleInput[] = []): Movement =>
    buildMovement({
      arbors: [
        arbor('A', 0, 0),
        arbor('B', 40, 0),
        { ...arbor('pipe', 40, 0), ridesOn: 'B' },
        arbor('L', 9, 9),
        arbor('C', 0, 30),
      ],
      rules: [
        { kind: 'held', id: 'a', point: 'A', at: [0, 0], plusMinus: 0.06 },
        { kind: 'bearing', id: 'dir', point: 'B', centre: 'A', angle: 0 },
        { kind: 'distance', id: 'ab', points: ['A', 'B'], length: 40, plusMinus: 0.04 },
        held('c', 'C', 0, 30),
        ...extra,
      ],
    });

  it('of a distance that was used is the rule’s own, whatever the ground does', () => {
    const placed = plantMovement(line());
    expect(placed.plusMinusBetween(pointId('A'), pointId('B'))).toBeCloseTo(0.04, 12);
    expect(placed.plusMinusBetween(pointId('B'), pointId('A'))).toBeCloseTo(0.04, 12);
    expect(placed.plusMinusBetween(pointId('A'), pointId('pipe'))).toBeCloseTo(0.04, 12);
  });

  it('adds up in squares towards ground that is known better', () => {
    const placed = plantMovement(line());
    // B moves with A in x and y, and by the distance along x; C is exact.
    const [dx, dy, length] = [40, 30, 50];
    const along = ((dx / length) * Math.hypot(0.06, 0.04)) ** 2 + ((dy / length) * 0.06) ** 2;
    expect(placed.plusMinusBetween(pointId('B'), pointId('C'))).toBeCloseTo(Math.sqrt(along), 12);
  });

  it('is undefined for loose points, for exact ones, and nothing between a pipe and its arbor', () => {
    const placed = plantMovement(line());
    expect(placeOf(placed, 'L').spread).toBeUndefined();
    expect(placed.plusMinusBetween(pointId('L'), pointId('A'))).toBeUndefined();
    expect(placeOf(placed, 'C').spread).toBeUndefined();
    expect(placed.plusMinusBetween(pointId('B'), pointId('pipe'))).toBeUndefined();
    const exact = plantMovement({ ...line(), rules: line().rules.map(({ plusMinus: _, ...rule }) => rule as AnyRule) }); // the rule without its ±
    expect(placeOf(exact, 'B').spread).toBeUndefined();
  });

  it('of a spare rule does not change the places’ own', () => {
    const before = placeOf(plantMovement(line()), 'B').spread;
    const spare = line([{ kind: 'distance', id: 'bc', points: ['B', 'C'], length: 50, plusMinus: 0.01 }]);
    expect(placeOf(plantMovement(spare), 'B').spread).toEqual(before);
  });

  it('grows in proportion to the stated ones', () => {
    const twice = plantMovement({
      ...line(),
      rules: line().rules.map((rule) =>
        rule.plusMinus === undefined ? rule : { ...rule, plusMinus: 2 * rule.plusMinus },
      ),
    });
    const [one, two] = [placeOf(plantMovement(line()), 'B').spread, placeOf(twice, 'B').spread];
    expect(two?.major).toBeCloseTo(2 * (one?.major ?? 0), 12);
    expect(two?.azimuth).toBeCloseTo(one?.azimuth ?? 9, 12);
  });
});
