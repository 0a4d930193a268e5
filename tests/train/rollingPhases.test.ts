/** Wheels that are carried about roll on their mates: teeth stay in spaces, what stands still keeps its angle. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { ArborId, WheelId } from '../../solver/movement/ids.ts';
import { rollingPhases, toothPhases } from '../../solver/train/index.ts';
import { sketchMovement } from './turningMovement.ts';

type Spots = ReadonlyMap<ArborId, { readonly x: number; readonly y: number }>;
const teeth = fc.integer({ min: 6, max: 90 });
/** Places that are all different: of five arbors before and after. */
const way = fc.integer({ min: -5000, max: 5000 });
const spots = fc
  .uniqueArray(fc.tuple(way, way), { minLength: 10, maxLength: 10, selector: ([x, y]) => `${x} ${y}` })
  .map((list) => list.map(([x, y]) => ({ x: x / 97, y: y / 97 })));

/** A train of compound arbors that branches: B and E mesh with A, C with B, D with C. */
function trainOf(counts: readonly number[]) {
  const [a = 60, b = 8, b2 = 40, c = 10, c2 = 30, d = 12, e = 20] = counts;
  return sketchMovement({
    wheels: { a: ['A', a], b: ['B', b], b2: ['B', b2], c: ['C', c], c2: ['C', c2], d: ['D', d], e: ['E', e] },
    depths: ['a b', 'b2 c', 'c2 d', 'a e'],
  });
}
const IDS = ['A', 'B', 'C', 'D', 'E'] as ArborId[];
const train = fc.array(teeth, { minLength: 7, maxLength: 7 });
/** What hangs behind each arbor is carried along with it. */
const BEHIND: Readonly<Record<string, readonly string[]>> = { A: ['B', 'C', 'D', 'E'], B: ['C', 'D'], C: ['D'] };

/** By how much of a tooth two outside wheels do not mesh, from where teeth and spaces stand on the line of centres. */
function missOf(movement: ReturnType<typeof trainOf>, angles: ReadonlyMap<string, number>, places: Spots): number {
  let worst = 0;
  for (const rule of movement.rules) {
    if (rule.kind !== 'depth') continue;
    const [a, b] = rule.wheels.map((id) => movement.wheels.find((wheel) => wheel.id === id));
    const [pa, pb] = [places.get(a?.arbor as ArborId), places.get(b?.arbor as ArborId)]; // every wheel has an arbor here
    if (!a || !b || !pa || !pb) throw new Error('a wheel is lost');
    const line = Math.atan2(pb.y - pa.y, pb.x - pa.x) / (2 * Math.PI);
    const onA = (line - (angles.get(a.id) ?? Number.NaN) / 360) * a.teeth;
    const onB = (line + 0.5 - (angles.get(b.id) ?? Number.NaN) / 360) * b.teeth;
    const off = onA + onB - 0.5;
    worst = Math.max(worst, Math.abs(off - Math.round(off)));
  }
  return worst;
}

describe('wheels that are carried about', () => {
  it('keep their teeth in the spaces of their mates, wherever any of them are carried', () => {
    fc.assert(
      fc.property(train, spots, fc.subarray(IDS), (counts, places, led) => {
        const movement = trainOf(counts);
        const carried = IDS.filter((id) => led.some((each) => each === id || BEHIND[each]?.includes(id)));
        const from: Spots = new Map(IDS.map((id, index) => [id, places[index] ?? { x: 0, y: 0 }]));
        const now: Spots = new Map([
          ...from,
          ...carried.map((id) => [id, places[5 + IDS.indexOf(id)] ?? { x: 0, y: 0 }] as const),
        ]);
        const standing = toothPhases(movement, from).angleDeg;
        const rolled = rollingPhases(movement, standing, from)(now, new Set(carried));
        const angles = new Map<WheelId, number>([...standing, ...rolled]);
        for (const wheel of movement.wheels) expect(rolled.has(wheel.id)).toBe(carried.includes(wheel.arbor));
        expect(missOf(movement, angles, now)).toBeLessThan(1e-8);
      }),
    );
  });

  it('turn as a planet does: 1 + sun/planet turns for a turn of the arm', () => {
    // Planet outside a fixed sun. Common practice of epicyclic trains.
    const movement = sketchMovement({ wheels: { s: ['A', 20], p: ['B', 60], p2: ['B', 31] }, depths: ['s p'] });
    const at = (angle: number): Spots =>
      new Map([
        ['A' as ArborId, { x: 0, y: 0 }],
        ['B' as ArborId, { x: 40 * Math.cos(angle), y: 40 * Math.sin(angle) }],
      ]);
    const standing = toothPhases(movement, at(0)).angleDeg;
    const roll = rollingPhases(movement, standing, at(0));
    for (const degrees of [1, 30, -45, 120, 179]) {
      const rolled = roll(at((degrees * Math.PI) / 180), new Set(['B' as ArborId]));
      for (const id of ['p', 'p2'] as WheelId[]) {
        const turned = (rolled.get(id) ?? Number.NaN) - (standing.get(id) ?? 0) - degrees * (1 + 20 / 60);
        expect(turned - 360 * Math.round(turned / 360)).toBeCloseTo(0, 9);
      }
    }
  });

  it('finds the spaces of a mate that a new depth joins it to', () => {
    const apart = sketchMovement({ wheels: { a: ['A', 40], b: ['B', 17] }, depths: [] });
    const joined = sketchMovement({ wheels: { a: ['A', 40], b: ['B', 17] }, depths: ['a b'] });
    const from: Spots = new Map([
      ['A' as ArborId, { x: 0, y: 0 }],
      ['B' as ArborId, { x: 90, y: 3 }],
    ]);
    const now: Spots = new Map([...from, ['B' as ArborId, { x: 20, y: 11 }]]);
    const standing = toothPhases(apart, from).angleDeg;
    const rolled = rollingPhases(joined, standing, from)(now, new Set(['B' as ArborId]));
    expect(missOf(joined, new Map([...standing, ...rolled]), now)).toBeLessThan(1e-9);
    expect(missOf(joined, standing, now)).toBeGreaterThan(0.01);
  });
});
