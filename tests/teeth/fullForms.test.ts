/** Two full wheel forms in mesh, pitches that differ, and distances that mean another size. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Movement, Wheel } from '../../solver/movement/schema.ts';
import {
  calculatedDepth,
  type DepthEntry,
  depthReport,
  faultsOfPair,
  isPinion,
  windowOfDepth,
} from '../../solver/teeth/index.ts';
import { depthLines, speakerOf } from '../../solver/words/index.ts';
import { movementOf, wheelOf } from './makeWheels.ts';

type Fields = Omit<Parameters<typeof wheelOf>[0], 'id'>;

function pair(first: Fields, second: Fields): { a: Wheel; b: Wheel; movement: Movement } {
  const a = wheelOf({ id: 'a', arbor: 'A' as Wheel['arbor'], form: 'cycloidal', ...first });
  const b = wheelOf({ id: 'b', arbor: 'B' as Wheel['arbor'], form: 'cycloidal', ...second });
  return { a, b, movement: movementOf(a, b) };
}

function entryOf(movement: Movement, distance?: number): DepthEntry {
  const distances = distance === undefined ? undefined : new Map(movement.rules.map(({ id }) => [id, distance]));
  const [entry] = depthReport(movement, distances ? { distances } : {});
  if (!entry) throw new Error('one depth');
  return entry;
}

describe('two full wheel forms', () => {
  it('bind at their calculated depth, and the smaller cut as a pinion frees them', () => {
    fc.assert(
      fc.property(fc.integer({ min: 17, max: 120 }), fc.integer({ min: 17, max: 120 }), (p, q) => {
        const { a, b, movement } = pair({ teeth: p }, { teeth: q });
        const { never, fullForms } = faultsOfPair(a, b, movement);
        expect(never).toEqual([]);
        expect(fullForms).toMatchObject({ kind: 'fullForms', calculated: (p + q) / 2, pinion: p < q ? 'a' : 'b' });
        const cut = { cutAs: 'pinion' } as const;
        const freed = p < q ? pair({ teeth: p, ...cut }, { teeth: q }) : pair({ teeth: p }, { teeth: q, ...cut });
        expect(faultsOfPair(freed.a, freed.b, freed.movement)).toEqual({ never: [] });
        expect(['runs', 'tight', 'free']).toContain(entryOf(freed.movement).verdict);
      }),
      { numRuns: 25 },
    );
  });

  it('are offered a lower addendum only where that frees them', () => {
    // The teeth of the exact curve have no play, and their tips stand in each other's roots: shorter teeth cure that.
    const exact = pair({ teeth: 20, table: 'epicycloid' }, { teeth: 20, table: 'epicycloid' });
    const { fullForms } = faultsOfPair(exact.a, exact.b, exact.movement);
    const addendum = fullForms?.addendum;
    if (addendum === undefined) throw new Error('a lower addendum frees them');
    const at = (factor: number) => {
      const { movement } = pair(
        { teeth: 20, table: 'epicycloid', addendum: factor },
        { teeth: 20, table: 'epicycloid', addendum: factor },
      );
      return entryOf(movement).verdict;
    };
    expect(at(addendum)).not.toBe('bottoms');
    expect(at(addendum + 0.05)).toBe('bottoms');
    // Full tabulated teeth fill the whole pitch: no shortening makes room.
    const table = pair({ teeth: 30 }, { teeth: 30 });
    expect(faultsOfPair(table.a, table.b, table.movement).fullForms?.addendum).toBeUndefined();
  });

  it('are told in the report of the depth where they bind, and not where they stand far enough apart', () => {
    const { a, b, movement } = pair({ teeth: 60 }, { teeth: 20 });
    const bound = entryOf(movement);
    expect(bound.verdict).toBe('binds');
    expect(bound.remarks[0]).toMatchObject({ kind: 'fullForms', full: { pinion: 'b' } });
    expect(depthLines(bound, speakerOf(movement)).join('\n')).toMatch(/cut .* as a pinion or set them at 40\.479 mm/i);
    const free = faultsOfPair(a, b, movement).fullForms?.free;
    const apart = entryOf(movement, (free ?? 0) + 0.3);
    expect(['runs', 'tight', 'free']).toContain(apart.verdict);
    expect(apart.remarks.map(({ kind }) => kind)).not.toContain('fullForms');
  });

  it('are none where one is a pinion, a ring, or of another form', () => {
    for (const [first, second] of [
      [{ teeth: 60 }, { teeth: 8 }],
      [{ teeth: 17 }, { teeth: 60, cutAs: 'pinion' }],
      [{ teeth: 60 }, { teeth: 20, form: 'lantern' }],
      [
        { teeth: 40, form: 'triangular' },
        { teeth: 40, form: 'triangular' },
      ],
      [
        { teeth: 40, form: 'involute' },
        { teeth: 40, form: 'involute' },
      ],
    ] as const) {
      const { a, b, movement } = pair(first, second);
      expect(faultsOfPair(a, b, movement)).toEqual({ never: [] });
    }
  });
});

describe('cut as a wheel or as a pinion', () => {
  it('is chosen at any count, and by count and mates where nothing is said', () => {
    fc.assert(
      fc.property(fc.integer({ min: 6, max: 200 }), fc.integer({ min: 6, max: 200 }), (p, q) => {
        for (const cutAs of ['wheel', 'pinion'] as const) {
          const { a, movement } = pair({ teeth: p, cutAs }, { teeth: q });
          expect(isPinion(a, movement)).toBe(cutAs === 'pinion');
        }
        const { b, movement } = pair({ teeth: p }, { teeth: q });
        expect(isPinion(b, movement)).toBe(q <= 16 && p >= q);
      }),
    );
  });

  it('leaves pins pinions and rings wheels', () => {
    const pins = pair({ teeth: 60 }, { teeth: 8, form: 'lantern', cutAs: 'wheel' });
    expect(isPinion(pins.b, pins.movement)).toBe(true);
    const ring = pair({ teeth: 60, internal: true, cutAs: 'pinion' }, { teeth: 8 });
    expect(isPinion(ring.a, ring.movement)).toBe(false);
  });
});

describe('pitches that differ', () => {
  const both = pair({ teeth: 60, size: { module: 1 } }, { teeth: 8, size: { module: 0.9 } });

  it('are a fault of the pair at every distance, and no distance is offered', () => {
    for (const distance of [28, 33.6, 34, 40]) {
      const entry = entryOf(both.movement, distance);
      expect(entry.verdict).toBe('unfit');
      expect(entry.remarks.map(({ kind }) => kind)).toEqual(['lost']);
      const text = depthLines(entry, speakerOf(both.movement)).join('\n');
      expect(text).toContain('does not fit');
      expect(text).toMatch(/Cut .* with module 1\./);
      // The only length besides the planted distance is the difference of the pitches.
      expect(text.match(/\d+\.\d+ mm/g)).toEqual([`${distance.toFixed(3)} mm`, '0.314 mm']);
    }
    expect(windowOfDepth(both.a, both.b, both.movement).kind).toBe('none');
  });

  it('name the wheel that meshes with nothing else, or none', () => {
    const third = wheelOf({
      id: 'c',
      arbor: 'C' as Wheel['arbor'],
      teeth: 40,
      size: { module: 0.9 },
      form: 'cycloidal',
    });
    const depth = both.movement.rules[0];
    const more = (mate: Wheel): Movement =>
      ({
        ...both.movement,
        wheels: [both.a, both.b, third],
        rules: [depth, { ...depth, id: 'more', wheels: [third.id, mate.id] }],
      }) as Movement; // made of the rule that is there
    const cut = (movement: Movement) => {
      const found = calculatedDepth(both.a, both.b, movement);
      return found.kind === 'mismatch' && found.why.kind === 'pitches' ? found.why.cut : undefined;
    };
    expect(cut(both.movement)).toEqual({ wheel: 'b', size: { module: 1 } });
    expect(cut(more(both.b))).toEqual({ wheel: 'a', size: { module: 0.9 } });
    const all = { ...more(both.b), rules: [...more(both.b).rules, ...more(both.a).rules.slice(1)] };
    expect(cut(all)).toBeUndefined();
  });
});

describe('a distance that means another size', () => {
  it('12 for 15 of module 0.5 is module 0.4, and so in the other terms', () => {
    for (const [size, fits] of [
      [{ module: 0.5 }, { module: 0.4 }],
      [{ circularPitch: Math.PI / 2 }, { circularPitch: Number(((Math.PI / 2) * 0.8).toPrecision(5)) }],
      [{ diametralPitch: 50.8 }, { diametralPitch: 63.5 }],
    ] as const) {
      const { movement } = pair({ teeth: 50, size }, { teeth: 10, size });
      const entry = entryOf(movement, 12);
      expect(entry.remarks).toContainEqual({
        kind: 'otherSize',
        distance: 12,
        calculated: expect.closeTo(15, 9),
        size: fits,
      });
      expect(entry.verdict).not.toBe('runs');
      expect(entryOf(movement).remarks.map(({ kind }) => kind)).not.toContain('otherSize');
    }
  });
});
