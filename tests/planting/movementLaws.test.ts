/** Laws of planting on whole movements, for random movements that are built from a known placement. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Movement } from '../../solver/movement/schema.ts';
import { plantMovement } from '../../solver/planting/index.ts';
import type { PlacedMovement } from '../../solver/planting/placed.ts';
import { largestMiss, placeOf, pointId, type RuleInput, ruleOf } from './buildMovement.ts';
import { changedMovement, changedPlace, shuffled } from './changed.ts';
import { type Known, randomFrom, randomMovement, type XY } from './randomMovement.ts';

/** Every rule of a planted movement holds to this, mm. */
const PROOF = 1e-9;
/** Places are recovered to this, mm, on crossings of 25° and more, chained some ten deep. */
const RECOVERED = 1e-9;

const seeds = fc.integer({ min: 0, max: 2 ** 31 });
const counts = fc.integer({ min: 3, max: 24 });
const runs = (numRuns: number) => ({ numRuns });

function farthest(placed: PlacedMovement, places: ReadonlyMap<string, XY>): number {
  let most = 0;
  for (const [id, [x, y]] of places) {
    const place = placeOf(placed, id);
    most = Math.max(most, Math.hypot(place.x - x, place.y - y));
  }
  return most;
}

const without = (movement: Movement, id: string): Movement => ({
  ...movement,
  rules: movement.rules.map((rule) => (rule.id === id ? { ...rule, leaveOut: true } : rule)),
});

const withRule = (movement: Movement, rule: RuleInput): Movement => ({
  ...movement,
  rules: [...movement.rules, { leaveOut: false, ...rule } as Movement['rules'][number]], // inputs with the default filled in
});

/** Picks an item by a random number. */
function pick<T>(items: readonly T[], seed: number): T {
  const item = items[Math.floor(randomFrom(seed)() * items.length)];
  if (item === undefined) throw new Error('nothing to pick from');
  return item;
}

/** Two points of a known placement that stand well apart. */
function pairOf(known: Known, seed: number): { a: string; b: string; length: number } {
  const random = randomFrom(seed);
  const ids = [...known.places.keys()];
  for (;;) {
    const a = pick(ids, Math.floor(random() * 1e9));
    const b = pick(ids, Math.floor(random() * 1e9));
    const [[ax, ay], [bx, by]] = [known.places.get(a) ?? [0, 0], known.places.get(b) ?? [0, 0]];
    const length = Math.hypot(bx - ax, by - ay);
    if (length > 5) return { a, b, length };
  }
}

describe('random movements built from a known placement', () => {
  it('are recovered, every rule proved, nothing loose or spare', () => {
    fc.assert(
      fc.property(seeds, counts, (seed, count) => {
        const known = randomMovement(seed, count);
        const placed = plantMovement(known.movement);
        expect(placed.disagreements).toEqual([]);
        expect(placed.freeMotions).toBe(0);
        for (const place of placed.places.values()) expect(place.state).toBe('planted');
        for (const rule of placed.rules.values()) expect(rule.role).toBe('places');
        expect(largestMiss(placed)).toBeLessThan(PROOF);
        expect(farthest(placed, known.places)).toBeLessThan(RECOVERED);
      }),
      runs(150),
    );
  });

  it('gain exactly the freedom of a rule that is left out, and motions that keep all others', () => {
    fc.assert(
      fc.property(seeds, counts, fc.nat(), (seed, count, which) => {
        const known = randomMovement(seed, count);
        const rule = pick(known.movement.rules, which);
        const placed = plantMovement(without(known.movement, rule.id));
        expect(placed.freeMotions).toBe(known.takes.get(rule.id));
        expect(placed.motions).toHaveLength(placed.freeMotions);
        expect(placed.disagreements).toEqual([]);
        expect(largestMiss(placed)).toBeLessThan(PROOF);
        expect(ruleOf(placed, rule.id)?.role).toBe('leftOut');
        expect([...placed.places.values()].some(({ state }) => state === 'loose')).toBe(true);
        // A point moves exactly when a motion moves it.
        for (const place of placed.places.values()) {
          const most = Math.max(
            0,
            ...placed.motions.map((motion) => Math.hypot(motion.get(place.id)?.x ?? 0, motion.get(place.id)?.y ?? 0)),
          );
          expect(place.state === 'loose').toBe(most > 1e-7);
          expect(place.free.length > 0).toBe(most > 1e-7);
        }
      }),
      runs(100),
    );
  });

  it('do not change by a spare rule that is consistent', () => {
    fc.assert(
      fc.property(seeds, counts, fc.nat(), (seed, count, which) => {
        const known = randomMovement(seed, count);
        const before = plantMovement(known.movement);
        const { a, b, length } = pairOf(known, which);
        const placed = plantMovement(
          withRule(known.movement, { kind: 'distance', id: 'spare', points: [a, b], length }),
        );
        expect(placed.disagreements).toEqual([]);
        expect(placed.freeMotions).toBe(0);
        expect([...placed.rules.values()].filter(({ role }) => role === 'checks')).toHaveLength(1);
        for (const place of placed.places.values()) {
          const was = placeOf(before, place.id);
          expect(place.state).toBe('planted');
          expect(Math.hypot(place.x - was.x, place.y - was.y)).toBeLessThan(RECOVERED);
        }
      }),
      runs(100),
    );
  });

  it('name a rule that conflicts, and its cure cures', () => {
    fc.assert(
      fc.property(seeds, counts, fc.nat(), (seed, count, which) => {
        const known = randomMovement(seed, count);
        const { a, b, length } = pairOf(known, which);
        const wrong = withRule(known.movement, { kind: 'distance', id: 'wrong', points: [a, b], length: length + 1 });
        const placed = plantMovement(wrong);
        // A typed length places before a calculated one of the same pair, and a wanted gap may be wider than asked.
        if (ruleOf(placed, 'wrong')?.role === 'places') return;
        expect(placed.disagreements.length).toBeGreaterThan(0);
        expect(placed.disagreements.some(({ rules }) => rules.some((id) => id === 'wrong'))).toBe(true);
        expect(ruleOf(placed, 'wrong')?.role).toBe('disagrees');
        const before = plantMovement(known.movement);
        for (const [id, { x, y }] of placed.places) {
          expect([x, y]).toEqual([before.places.get(id)?.x, before.places.get(id)?.y]);
        }
        for (const place of placed.places.values()) expect(Number.isFinite(place.x + place.y)).toBe(true);
        const told = placed.disagreements.find(({ rules }) => rules.some((id) => id === 'wrong'));
        expect(told?.gap).toBeGreaterThan(0);
        if (told?.cure?.rule !== 'wrong') return;
        expect(told.cure.value).toBeCloseTo(length, 6);
      }),
      runs(60),
    );
  });

  it('move, turn and mirror with the whole movement', () => {
    fc.assert(
      fc.property(
        seeds,
        counts,
        fc.double({ min: -180, max: 180, noNaN: true }),
        fc.double({ min: -500, max: 500, noNaN: true }),
        fc.double({ min: -500, max: 500, noNaN: true }),
        fc.boolean(),
        (seed, count, angleDeg, x, y, mirror) => {
          const known = randomMovement(seed, count);
          const change = { angleDeg, by: [x, y], mirror } as const;
          const before = plantMovement(known.movement);
          const placed = plantMovement(changedMovement(known.movement, change));
          expect(largestMiss(placed)).toBeLessThan(PROOF);
          for (const place of placed.places.values()) {
            const was = placeOf(before, place.id);
            const [ex, ey] = changedPlace(change, [was.x, was.y]);
            expect(Math.hypot(place.x - ex, place.y - ey)).toBeLessThan(1e-8);
            expect(place.state).toBe('planted');
          }
        },
      ),
      runs(100),
    );
  });

  it('do not depend on the order of arbors, wheels and rules', () => {
    fc.assert(
      fc.property(seeds, counts, fc.nat(), (seed, count, order) => {
        const known = randomMovement(seed, count);
        const before = plantMovement(known.movement);
        const placed = plantMovement(shuffled(known.movement, order));
        for (const place of placed.places.values()) {
          const was = placeOf(before, place.id);
          expect(Math.hypot(place.x - was.x, place.y - was.y)).toBeLessThan(RECOVERED);
          expect(place.state).toBe(was.state);
        }
      }),
      runs(100),
    );
  });

  it('come out the same warm and cold, to the bit, from a planting of another sketch', () => {
    fc.assert(
      fc.property(seeds, counts, (seed, count) => {
        const { movement } = randomMovement(seed, count);
        const cold = plantMovement(movement);
        const elsewhere = {
          ...movement,
          arbors: movement.arbors.map((each): Movement['arbors'][number] => ({
            ...each,
            at: [each.at[0] + 3, -each.at[1]],
          })),
        };
        const warm = plantMovement(movement, plantMovement(elsewhere));
        for (const place of warm.places.values()) {
          const was = placeOf(cold, place.id);
          expect([place.x, place.y, place.state]).toEqual([was.x, was.y, was.state]);
        }
      }),
      runs(60),
    );
  });

  it('leave drilled points at exactly their place and plant the rest', () => {
    fc.assert(
      fc.property(seeds, counts, fc.nat(), (seed, count, which) => {
        const known = randomMovement(seed, count);
        // The last point bears no other, so that its own rules are the only ones to contradict.
        const id = pick([...known.places.keys()], which);
        const [x, y] = known.places.get(id) ?? [0, 0];
        const at = [x + 0.37, y - 0.21] as const;
        const made = { point: id, state: 'drilled', at } as unknown as Movement['made'][number]; // a test's own id
        const placed = plantMovement({ ...known.movement, made: [made] });
        const place = placeOf(placed, id);
        expect([place.x, place.y]).toEqual([...at]);
        // What it was placed by only checks now: each tells by how much it misses.
        const released = [...placed.rules.values()].filter(({ duty }) => duty === 'released');
        expect(released.some(({ missBy }) => missBy > 0.01)).toBe(true);
      }),
      runs(60),
    );
  });

  it('are recovered when a rule gives way to a distance that couples them', () => {
    fc.assert(
      fc.property(seeds, counts, fc.nat(), (seed, count, which) => {
        const known = randomMovement(seed, count);
        const single = known.movement.rules.filter(({ id }) => known.takes.get(id) === 1);
        if (single.length === 0) return;
        const loose = without(known.movement, pick(single, which).id);
        const placed = plantMovement(loose);
        const [motion] = placed.motions;
        const { a, b, length } = pairOf(known, which);
        const [[ax, ay], [bx, by]] = [known.places.get(a) ?? [0, 0], known.places.get(b) ?? [0, 0]];
        const [va, vb] = [motion?.get(pointId(a)), motion?.get(pointId(b))];
        const rate = (((vb?.x ?? 0) - (va?.x ?? 0)) * (bx - ax) + ((vb?.y ?? 0) - (va?.y ?? 0)) * (by - ay)) / length;
        // Only a distance that really holds the motion settles it.
        fc.pre(Math.abs(rate) > 0.2);
        const coupled = plantMovement(withRule(loose, { kind: 'distance', id: 'couple', points: [a, b], length }));
        expect(coupled.disagreements).toEqual([]);
        expect(coupled.freeMotions).toBe(0);
        expect(largestMiss(coupled)).toBeLessThan(PROOF);
        for (const place of coupled.places.values()) expect(place.state).toBe('planted');
        expect(farthest(coupled, known.places)).toBeLessThan(1e-7);
      }),
      runs(60),
    );
  });
});
