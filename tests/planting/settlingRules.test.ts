/** The rules that would settle a loose point, with the value that holds now. */
import { describe, expect, it } from 'vitest';
import type { Movement } from '../../solver/movement/schema.ts';
import { plantMovement, ruleValueNow, settlingRules } from '../../solver/planting/index.ts';
import { arbor, buildMovement, clockWheel, held, placeOf, pointId } from './buildMovement.ts';
import { off } from './linkage.ts';
import { stateSaid } from './said.ts';

describe('rules that would settle a point', () => {
  const train = buildMovement({
    arbors: [arbor('A', 0, 0), { ...arbor('C', 28, 8), name: 'Centre' }, arbor('B', 60, 0)],
    wheels: [
      clockWheel('WA', 'A', 60, 0.8),
      clockWheel('PC', 'C', 8, 0.8),
      clockWheel('WC', 'C', 64, 0.8, 5),
      clockWheel('PB', 'B', 8, 0.8, 5),
    ],
    rules: [held('a', 'A', 0, 0), held('b', 'B', 60, 0), { kind: 'depth', id: 'd', wheels: ['WA', 'PC'] }],
  });

  it('are named in the strip, a depth first', () => {
    expect(stateSaid(plantMovement(train))).toBe(
      '2 planted, 1 loose. 1 free motion: a depth, a distance or a direction would settle Centre.',
    );
    expect(stateSaid(plantMovement(buildMovement({})))).toBe('Nothing to plant yet.');
  });

  it('carry the value that holds now: adding one settles the point where it stands', () => {
    const placed = plantMovement(train);
    const offers = settlingRules(placed, pointId('C'));
    const kinds = new Set(offers.map(({ rule }) => rule.kind));
    for (const kind of ['depth', 'distance', 'bearing', 'inLine', 'clearBy', 'held']) expect(kinds).toContain(kind);
    const depth = offers.find(({ rule }) => rule.kind === 'depth');
    expect(depth?.calculated).toBeCloseTo(28.8, 9);
    const here = placeOf(placed, 'C');
    expect(depth?.value.value).toBeCloseTo(Math.hypot(here.x - 60, here.y), 12);
    for (const offer of offers) {
      expect(offer.settles).toBe(true);
      expect(offer.sharpness).toBeGreaterThan(0);
      expect(ruleValueNow(train, placed, offer.rule)?.value).toBeCloseTo(offer.value.value, 12);
      // Depths set their own distance, and a line or an overlap has no number to take over.
      if (offer.rule.kind === 'depth' || offer.rule.kind === 'inLine') continue;
      if (offer.rule.kind === 'clearBy' && offer.value.value < 0) continue;
      const rule = { ...offer.rule, id: 'new', leaveOut: false } as Movement['rules'][number]; // an id for the draft
      const again = plantMovement({ ...train, rules: [...train.rules, rule] });
      expect(again.freeMotions).toBe(0);
      expect(off(again, 'C', here.x, here.y)).toBeLessThan(1e-6);
    }
  });

  it('are none for a planted point, and take one freedom of two from a free one', () => {
    const placed = plantMovement(train);
    expect(settlingRules(placed, pointId('A'))).toEqual([]);
    const free = plantMovement({ ...train, rules: train.rules.filter(({ id }) => id !== 'd') });
    const offers = settlingRules(free, pointId('C'));
    expect(offers.find(({ rule }) => rule.kind === 'distance')).toMatchObject({ takes: 1, settles: false });
    expect(offers.find(({ rule }) => rule.kind === 'held')).toMatchObject({ takes: 2, settles: true });
  });
});
