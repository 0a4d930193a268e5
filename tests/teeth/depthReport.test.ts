/** Windows, words and reports of depths; and no distance, pair or form may give a number that is none. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Movement, Wheel } from '../../solver/movement/schema.ts';
import { sideShakeOf } from '../../solver/teeth/contact/windowOfDepth.ts';
import { contactOfPair, depthReport, windowOfDepth } from '../../solver/teeth/index.ts';
import { depthLines, pairFaultSays, remarkWords, speakerOf } from '../../solver/words/index.ts';
import { movementOf, wheelOf } from './makeWheels.ts';

const clock = (id: string, teeth: number, fields: Partial<Omit<Wheel, 'id'>> = {}) =>
  wheelOf({ id, teeth, form: 'cycloidal', ...fields });

/** A movement whose one depth is held at a distance. */
function heldAt(a: Wheel, b: Wheel, held: number): Movement {
  const movement = movementOf(a, b);
  return { ...movement, rules: movement.rules.map((rule) => ({ ...rule, use: 'held', held })) } as Movement; // a depth with two more fields
}

function entryOf(movement: Movement) {
  const [entry] = depthReport(movement, { shakes: [0.1] });
  if (!entry) throw new Error('no depth');
  const speaker = speakerOf(movement);
  const words = entry.remarks.map((remark) => ({ kind: remark.kind, ...remarkWords(remark, speaker) }));
  const kinds = words.map(({ kind }) => kind);
  return { entry, words, kinds, text: depthLines(entry, speaker).join('\n') };
}

describe('what a maker would say', () => {
  it('an involute pair at its calculated distance is tight, with the distance for a little shake', () => {
    const { entry, words, text } = entryOf(movementOf(wheelOf({ id: 'a' }), wheelOf({ id: 'b', teeth: 60 })));
    expect(entry.verdict).toBe('tight');
    expect(words[0]?.remedy).toBe('For 0.020 mm set it at 40.027 mm, 0.027 mm farther apart.');
    expect(text).toContain('window 40.000 mm (binding) to 40.720 mm');
  });
  it('clock teeth at theirs run', () => {
    const { entry } = entryOf(movementOf(clock('a', 64), clock('b', 10)));
    expect([entry.verdict, entry.distanceFrom]).toEqual(['runs', 'calculated']);
  });
  it('deep binds and bottoms, and the remedy is free when tried', () => {
    const [a, b] = [clock('a', 60), clock('b', 6)];
    const { entry, words, kinds } = entryOf(heldAt(a, b, 32.7));
    expect(entry.verdict).toBe('bottoms');
    expect(kinds).toContain('binding');
    expect(kinds).toContain('bottoming');
    const to = Number(/Set it at (\d+\.\d+)/.exec(words.find(({ kind }) => kind === 'binding')?.remedy ?? '')?.[1]);
    const tried = contactOfPair(a, b, movementOf(a, b), to + 0.001);
    expect(tried.kind === 'contact' && !tried.binds && !tried.bottoms).toBe(true);
  });
  it('a shallow six-leaf pinion rubs before the line of centres', () => {
    const { words } = entryOf(heldAt(clock('a', 60), clock('b', 6), 33.5));
    const engaging = words.find(({ kind }) => kind === 'engaging');
    expect(engaging?.says).toMatch(/\d+ % of the pitch/);
    expect(engaging?.remedy).toContain('10 leaves or more');
  });
  it('a driver with the fewer teeth rubs before the line, and is told that it must', () => {
    const { words, text } = entryOf(movementOf(clock('a', 15), clock('b', 45)));
    expect(words.find(({ kind }) => kind === 'engaging')?.remedy).toContain('where the smaller wheel drives');
    expect(text).not.toMatch(/-0\.0+\b/);
  });
  it('out of reach: says how short, and between what distances it runs', () => {
    const { entry, words } = entryOf(heldAt(wheelOf({ id: 'a' }), wheelOf({ id: 'b', teeth: 60 }), 43));
    expect(entry.verdict).toBe('lost');
    expect(words[0]?.says).toContain('short by 1.000 mm');
    expect(words[0]?.remedy).toContain('between 40.000 mm and 40.720 mm');
  });
  it('a planted distance comes before the stated ones, which stand beside it', () => {
    const movement = heldAt(wheelOf({ id: 'a' }), wheelOf({ id: 'b', teeth: 60 }), 40.1);
    const rule = movement.rules[0]?.id;
    if (rule === undefined) throw new Error('no rule');
    const [entry] = depthReport(movement, { distances: new Map([[rule, 40.2]]) });
    expect(entry).toMatchObject({
      distance: 40.2,
      distanceFrom: 'planted',
      held: 40.1,
    });
  });
  it('only the depths that are asked for are looked at', () => {
    const movement = movementOf(wheelOf({ id: 'a' }), wheelOf({ id: 'b' }));
    expect(depthReport(movement, { rules: [] })).toEqual([]);
    expect(depthReport(movement, { rules: movement.rules.map(({ id }) => id) })).toHaveLength(1);
  });
});

describe('over a whole turn', () => {
  it('run-out counts half on each side, side shake half of the play of the worst bearing', () => {
    const [a, b] = [clock('a', 64, { runOut: 0.1 }), clock('b', 10)];
    const bare = movementOf(a, b);
    const arbors = [
      {
        id: 'arbor',
        bearings: [
          { bore: 1.04, pivot: 1 },
          { bore: 1.1, pivot: 1 },
        ],
      },
    ];
    const movement = { ...bare, arbors } as unknown as Movement; // only what the reading needs
    expect(sideShakeOf(a, movement)).toBeCloseTo(0.05, 12);
    const window = windowOfDepth(a, b, bare);
    if (window.kind !== 'window') throw new Error(window.why.kind);
    // practice: e = 0.05 gives C ± 0.05.
    expect([window.turn.nearest, window.turn.farthest]).toEqual([expect.closeTo(36.95, 9), expect.closeTo(37.05, 9)]);
    expect(window.turn.staysInside).toBe(true);
    expect(window.turn.leastBacklash).toBeLessThan(window.backlash);
  });
});

describe('windows', () => {
  it.each<[string, Wheel, Wheel]>([
    ['clock', clock('a', 64), clock('b', 8)],
    ['lantern', clock('a', 64), wheelOf({ id: 'b', teeth: 8, form: 'lantern' })],
    [
      'triangular',
      wheelOf({ id: 'a', teeth: 64, form: 'triangular' }),
      wheelOf({ id: 'b', teeth: 38, form: 'triangular' }),
    ],
    ['ring', wheelOf({ id: 'a', teeth: 24 }), wheelOf({ id: 'b', teeth: 72, internal: true })],
  ])(
    '%s: just inside the deep end is free, just outside is not; the other drive binds at the same place',
    (_, a, b) => {
      const movement = movementOf(a, b);
      const window = windowOfDepth(a, b, movement);
      if (window.kind !== 'window') throw new Error(window.why.kind);
      const open = window.internal ? -1 : 1;
      const at = (d: number) => contactOfPair(a, b, movement, d);
      const [inside, outside] = [at(window.deepest + open * 2e-3), at(window.deepest - open * 2e-3)];
      expect(inside.kind === 'contact' && !inside.binds && !inside.bottoms).toBe(true);
      expect(outside.kind === 'contact' && (outside.binds || outside.bottoms)).toBe(true);
      const back = windowOfDepth(b, a, movementOf(b, a));
      if (back.kind !== 'window') throw new Error(back.why.kind);
      expect(Math.abs(back.deepest - window.deepest)).toBeLessThan(2e-3);
      expect(at(window.lostAt + open * 0.02).kind).toBe('none');
      expect(at(window.lostAt - open * 0.02).kind).toBe('contact');
    },
  );
});

describe('no numbers that are none', () => {
  const anyWheel = (id: string) =>
    fc
      .record({
        teeth: fc.integer({ min: 4, max: 120 }),
        form: fc.constantFrom('involute' as const, 'cycloidal' as const, 'triangular' as const, 'lantern' as const),
        internal: fc.boolean(),
        profileShift: fc.double({ min: -1, max: 1, noNaN: true }),
      })
      .map((fields) => wheelOf({ id, ...fields, internal: fields.internal && fields.form !== 'lantern' }));
  it('any pair at any distance: a contact of finite numbers, or a sentence', () => {
    fc.assert(
      fc.property(anyWheel('a'), anyWheel('b'), fc.double({ min: -2, max: 4, noNaN: true }), (a, b, off) => {
        const plain = a.internal || b.internal ? Math.abs(a.teeth - b.teeth) / 2 : (a.teeth + b.teeth) / 2;
        const contact = contactOfPair(a, b, movementOf(a, b), plain + off, { steps: 6 });
        const found = JSON.stringify(contact, (_, value) =>
          typeof value === 'number' && !Number.isFinite(value) ? 'NOT FINITE' : value,
        );
        expect(found).not.toContain('NOT FINITE');
        if (contact.kind === 'none') {
          expect(pairFaultSays(contact.why, speakerOf(movementOf(a, b))).length).toBeGreaterThan(20);
        } else {
          for (const curve of Object.values(contact.curves)) {
            for (const value of curve) expect(Number.isFinite(value)).toBe(true);
          }
        }
      }),
      { numRuns: 150 },
    );
  });
  it.each([Number.NaN, Number.POSITIVE_INFINITY, 0, -3, 1e9])('a distance of %f is refused in words', (distance) => {
    const [a, b] = [wheelOf({ id: 'a' }), wheelOf({ id: 'b' })];
    expect(contactOfPair(a, b, movementOf(a, b), distance)).toMatchObject({ kind: 'none' });
  });
});
