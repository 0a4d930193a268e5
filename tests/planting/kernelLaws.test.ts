/** Laws of the planting kernel, on random networks with a known placement (fast-check prints its seed). */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { plantNetwork } from '../../solver/planting/kernel/plant.ts';
import { type Network, type NetworkResult, PointState, RuleKind } from '../../solver/planting/network.ts';
import { chainedNetwork } from './scenes/chained.ts';
import { constructedNetwork } from './scenes/constructed.ts';
import type { KnownNetwork } from './scenes/coupled.ts';
import { everyKind } from './scenes/everyKind.ts';
import { farthest } from './scenes/recovered.ts';

const seed = fc.integer({ min: 1, max: 1_000_000 });
const scene = fc.oneof(
  seed.map((s) => constructedNetwork(s, 12, 0.4)),
  seed.map((s) => chainedNetwork(s, 8, 0.4)),
  seed.map((s) => everyKind(s, 0.4)),
);
const runs = { numRuns: 60 };

/** What must be true of every result, whatever the network. */
function validate(network: Network, result: NetworkResult): void {
  expect(result.coords.every(Number.isFinite)).toBe(true);
  expect(result.missBy.every((miss) => miss >= 0 && Number.isFinite(miss))).toBe(true);
  for (let r = 0; r < network.ruleCount; r++) {
    // What only checks may miss: the points stand where the others put them.
    const missing = (result.missBy[r] as number) > 1e-3 && !result.checks[r]; // one a rule
    const points = Array.from(network.points.subarray(4 * r, 4 * r + 3)).filter((p) => p >= 0);
    const free = points.filter((p) => !network.held[p]);
    if (missing && free.length > 0) expect(free.some((p) => result.states[p] === PointState.contested)).toBe(true);
  }
  expect(result.motions.length).toBe(result.freeMotions);
  const listed = result.steps.flatMap((step) => step.points);
  expect(new Set(listed).size).toBe(listed.length);
}

/** A copy with another rule added at the end. */
function withRule(network: Network, kind: number, points: readonly number[], values: readonly number[]): Network {
  const ruleCount = network.ruleCount + 1;
  const next = {
    ...network,
    ruleCount,
    kinds: Uint8Array.from([...network.kinds, kind]),
    points: new Int32Array(4 * ruleCount).fill(-1),
    values: new Float64Array(3 * ruleCount),
  };
  next.points.set(network.points);
  next.points.set(points, 4 * network.ruleCount);
  next.values.set(network.values);
  next.values.set(values, 3 * network.ruleCount);
  return next;
}

function withoutRule(network: Network, rule: number): Network {
  const keep = Array.from({ length: network.ruleCount }, (_, r) => r).filter((r) => r !== rule);
  return pick(network, keep);
}

/** A copy with the rules in the given order. */
function pick(network: Network, order: readonly number[]): Network {
  return {
    ...network,
    ruleCount: order.length,
    kinds: Uint8Array.from(order, (r) => network.kinds[r] as number), // order names rules
    points: Int32Array.from(order.flatMap((r) => Array.from(network.points.subarray(4 * r, 4 * r + 4)))),
    values: Float64Array.from(order.flatMap((r) => Array.from(network.values.subarray(3 * r, 3 * r + 3)))),
  };
}

describe('a network built from a known placement', () => {
  it('is recovered, every rule to 1e-9 mm', () => {
    fc.assert(
      fc.property(scene, ({ network, known }: KnownNetwork) => {
        const result = plantNetwork(network);
        validate(network, result);
        expect(Math.max(...result.missBy)).toBeLessThanOrEqual(1e-9);
        expect(farthest(result.coords, known)).toBeLessThan(1e-7);
        expect(result.freeMotions).toBe(0);
        expect(result.spare).toEqual([]);
        expect(result.states.every((s) => s === PointState.planted)).toBe(true);
      }),
      runs,
    );
  });

  it('gains exactly one free motion for each rule taken away', () => {
    fc.assert(
      fc.property(scene, fc.nat(), ({ network }, which) => {
        const rule = which % network.ruleCount;
        const kind = network.kinds[rule] as number; // below the count
        const lost = kind >= RuleKind.samePlace ? 2 : 1;
        const loosened = withoutRule(network, rule);
        const result = plantNetwork(loosened);
        validate(loosened, result);
        expect(result.freeMotions).toBe(lost);
        expect(Math.max(0, ...result.missBy)).toBeLessThanOrEqual(1e-9);
        expect(result.states.some((s) => s === PointState.loose)).toBe(true);
        // Each motion keeps every rule to first order: a small step along it misses by a square.
        for (const motion of result.motions) expect(slipAlong(loosened, result.coords, motion)).toBeLessThan(1e-4);
      }),
      runs,
    );
  });

  it('stays as it is when a spare rule is added that agrees, and names it', () => {
    fc.assert(
      fc.property(scene, fc.nat(), fc.nat(), ({ network, known }, i, j) => {
        const [a, b] = twoApart(network, known, i, j);
        const d = Math.hypot(
          (known[2 * a] as number) - (known[2 * b] as number),
          (known[2 * a + 1] as number) - (known[2 * b + 1] as number),
        ); // in range
        // From the planted places: a sketch half a millimetre off may lie nearer to another crossing that the spare
        // rule opens, and then the sketch decides.
        const planted = { ...network, coords: plantNetwork(network).coords };
        const result = plantNetwork(withRule(planted, RuleKind.distance, [a, b], [d]));
        expect(farthest(result.coords, known)).toBeLessThan(1e-7);
        expect(result.freeMotions).toBe(0);
        expect(result.spare.length).toBe(1);
        expect(result.states.every((s) => s === PointState.planted)).toBe(true);
      }),
      runs,
    );
  });

  it('lets a rule that contradicts check, moves nothing for it, and stays finite', () => {
    fc.assert(
      fc.property(scene, fc.nat(), fc.nat(), ({ network, known }, i, j) => {
        const [a, b] = twoApart(network, known, i, j);
        const d = Math.hypot(
          (known[2 * a] as number) - (known[2 * b] as number),
          (known[2 * a + 1] as number) - (known[2 * b + 1] as number),
        ); // in range
        const wrong = withRule(network, RuleKind.distance, [a, b], [d + 0.5]);
        const result = plantNetwork(wrong);
        validate(wrong, result);
        // What was settled before stands; the rule that came last checks, and shows all of its difference.
        expect(result.disagreements).toEqual([]);
        expect(
          Array.from(result.checks.keys()).filter((r) => result.checks[r] && !plantNetwork(network).checks[r]),
        ).toEqual([network.ruleCount]);
        expect(result.coords).toEqual(plantNetwork(network).coords);
        expect(result.missBy[network.ruleCount]).toBeCloseTo(0.5, 6);
        expect(result.against(network.ruleCount)).toContain(network.ruleCount);
      }),
      runs,
    );
  });

  it('is planted alike from a warm start and from cold', () => {
    fc.assert(
      fc.property(scene, ({ network }) => {
        const moved = { ...network, coords: network.coords.map((v, k) => (network.held[k >> 1] ? v + 0.2 : v)) };
        const warm = plantNetwork(moved, plantNetwork(network));
        expect(Array.from(warm.coords)).toEqual(Array.from(plantNetwork(moved).coords));
      }),
      runs,
    );
  });

  it('does not depend on the order of its rules', () => {
    fc.assert(
      fc.property(scene, seed, ({ network }, s) => {
        const order = Array.from({ length: network.ruleCount }, (_, r) => r);
        order.sort((a, b) => ((a * s) % 7919) - ((b * s) % 7919) || a - b);
        const result = plantNetwork(network);
        expect(farthest(plantNetwork(pick(network, order)).coords, result.coords)).toBeLessThan(1e-8);
      }),
      runs,
    );
  });

  it('is its own answer: planted twice is planted once', () => {
    fc.assert(
      fc.property(scene, ({ network }) => {
        const once = plantNetwork(network);
        const twice = plantNetwork({ ...network, coords: once.coords });
        expect(farthest(twice.coords, once.coords)).toBeLessThan(1e-9);
      }),
      runs,
    );
  });
});

describe('moving the plane moves the answer with it', () => {
  const turned = (network: Network, angle: number, scale: number, x: number, y: number, flip: 1 | -1): Network => {
    const [c, s] = [scale * Math.cos(angle), scale * Math.sin(angle)];
    const coords = new Float64Array(network.coords.length);
    for (let i = 0; i < network.pointCount; i++) {
      const [px, py] = [network.coords[2 * i] as number, flip * (network.coords[2 * i + 1] as number)]; // in range
      coords[2 * i] = x + c * px - s * py;
      coords[2 * i + 1] = y + s * px + c * py;
    }
    const values = network.values.slice();
    for (let r = 0; r < network.ruleCount; r++) {
      const kind = network.kinds[r];
      const [v0, v1, v2] = [values[3 * r] as number, values[3 * r + 1] as number, values[3 * r + 2] as number]; // in range
      if (kind === RuleKind.distance) values[3 * r] = scale * v0;
      if (kind === RuleKind.ray) values[3 * r] = flip * v0 + ((network.points[4 * r + 2] as number) < 0 ? angle : 0); // in range
      if (kind === RuleKind.turned) values[3 * r] = flip * v0;
      if (kind !== RuleKind.onLine) continue;
      const [nx, ny] = [
        Math.cos(angle) * v0 - Math.sin(angle) * flip * v1,
        Math.sin(angle) * v0 + Math.cos(angle) * flip * v1,
      ];
      values.set([nx, ny, scale * v2 + nx * x + ny * y], 3 * r);
    }
    const sides = network.sides.map((side) => (flip < 0 && (side === 1 || side === 2) ? 3 - side : side));
    return { ...network, coords, values, sides };
  };

  for (const [name, angle, scale, x, y, flip] of [
    ['shifted by ten metres', 0, 1, 10_000, -10_000, 1],
    ['turned', 1.1, 1, 0, 0, 1],
    ['mirrored', 0.3, 1, 0, 0, -1],
    ['as small as a watch', 0, 0.01, 0, 0, 1],
    ['as large as a tower', 0, 100, 0, 0, 1],
    ['all together', -2.5, 3.7, 120, 80, -1],
  ] as const) {
    it(name, () => {
      fc.assert(
        fc.property(scene, ({ network, known }) => {
          const there = turned({ ...network, coords: known }, angle, scale, x, y, flip).coords;
          const result = plantNetwork(turned(network, angle, scale, x, y, flip));
          expect(Math.max(...result.missBy)).toBeLessThanOrEqual(1e-9);
          expect(farthest(result.coords, there)).toBeLessThan(1e-7 * Math.max(1, scale));
          expect(result.states.every((s) => s === PointState.planted)).toBe(true);
        }),
        { numRuns: 25 },
      );
    });
  }
});

/** Two different points that are not both held and not at one place, by two numbers. */
function twoApart(network: Network, known: Float64Array, i: number, j: number): [number, number] {
  const n = network.pointCount;
  for (let k = 0; ; k++) {
    const [a, b] = [(i + k) % n, (j + 3 * k + 1) % n];
    const apart = Math.hypot(
      (known[2 * a] as number) - (known[2 * b] as number),
      (known[2 * a + 1] as number) - (known[2 * b + 1] as number),
    ); // in range
    const joined = Array.from({ length: network.ruleCount }).some((_, r) => {
      const pair = [network.points[4 * r], network.points[4 * r + 1], network.points[4 * r + 2]];
      return pair.includes(a) && pair.includes(b);
    });
    if (a !== b && apart > 3 && !(network.held[a] && network.held[b]) && !joined) return [a, b];
  }
}

/** Largest change of any rule's miss, over the step, for a step of 1e-6 mm along a motion. */
function slipAlong(network: Network, coords: Float64Array, motion: Float64Array): number {
  const step = 1e-6;
  const moved = { ...network, held: new Uint8Array(network.pointCount).fill(1) };
  const at = coords.map((v, k) => v + step * (motion[k] as number)); // same length
  const misses = plantNetwork({ ...moved, coords: at }).missBy;
  return Math.max(0, ...misses) / step;
}
