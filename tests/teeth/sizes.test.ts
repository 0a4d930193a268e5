/** Sizes of wheels and calculated depths: roles, own factors, as-cut values, mismatches and bad input. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Movement, Wheel } from '../../solver/movement/schema.ts';
import {
  calculatedDepth,
  formOfWheel,
  halfAngleAt,
  isPinion,
  moduleOf,
  sizeOfWheel,
} from '../../solver/teeth/index.ts';
import { mismatchSays, speakerOf, teethSay } from '../../solver/words/index.ts';
import { movementOf, wheelOf } from './makeWheels.ts';

const clock = (id: string, teeth: number, fields: Partial<Omit<Wheel, 'id'>> = {}) =>
  wheelOf({ id, teeth, form: 'cycloidal', ...fields });

/** What is doubtful in a wheel's size, in words. */
const doubtsOf = (wheel: Wheel, movement: Movement = movementOf(wheel)): string[] =>
  (sizeOfWheel(wheel, movement).doubts ?? []).map((doubt) => teethSay(doubt, speakerOf(movement)));

describe('size of teeth', () => {
  it('module, diametral pitch and circular pitch are one thing', () => {
    expect(moduleOf({ module: 1.5 })).toBe(1.5);
    expect(moduleOf({ diametralPitch: 16 })).toBe(1.5875);
    expect(moduleOf({ circularPitch: Math.PI })).toBeCloseTo(1, 15);
  });
  it('an internal wheel has its tips inside and its roots outside', () => {
    const size = sizeOfWheel(wheelOf({ teeth: 60, internal: true }), movementOf());
    expect([size.tipRadius, size.pitchRadius, size.rootRadius]).toEqual([29, 30, 31.25]);
  });
  it('values as cut override what is calculated and say so', () => {
    const wheel = wheelOf({ teeth: 30, tipDiameter: 31.8, toothThickness: 1.5 });
    const size = sizeOfWheel(wheel, movementOf(wheel));
    expect([size.tipRadius, size.thickness, size.addendum]).toEqual([15.9, 1.5, expect.closeTo(0.9, 12)]);
    expect(size.source).toContain('as cut');
  });
  it('an unknown table is said, and the usual one used', () => {
    const wheel = wheelOf({ teeth: 30, table: 'nonesuch' });
    expect(doubtsOf(wheel)[0]).toMatch(/"nonesuch" is not known.*ISO 53 A/);
    const cut = clock('c', 60, { table: 'nonesuch' });
    expect(doubtsOf(cut)[0]).toMatch(/"nonesuch".*BS 978/);
  });
});

describe('own tooth tables', () => {
  const table = (rows: object[], ...wheels: Wheel[]): Movement =>
    ({ ...movementOf(...wheels), toothTables: rows }) as Movement; // rows as the schema gives them
  it('a named row gives the proportions, by its counts, and says where they come from', () => {
    const rows = [
      {
        name: 'shop',
        form: 'cycloidal',
        to: 16,
        addendum: 0.8,
        dedendum: 1.7,
        thickness: 1.1,
        faceRadius: 0.9,
        source: 'measured cutters',
      },
      { name: 'shop', form: 'cycloidal', from: 17, addendum: 1.3, dedendum: 1.6, thickness: 1.5, faceRadius: 1.9 },
    ];
    const [a, b] = [clock('a', 60, { table: 'shop' }), clock('b', 8, { table: 'shop' })];
    const movement = table(rows, a, b);
    expect(sizeOfWheel(a, movement)).toMatchObject({ tipRadius: 31.3, rootRadius: 28.4, thickness: 1.5 });
    const leaf = sizeOfWheel(b, movement);
    expect(leaf).toMatchObject({ tipRadius: 4.8, thickness: 1.1, source: 'own table "shop" (measured cutters)' });
    expect(leaf.doubts).toBeUndefined();
    expect([formOfWheel(a, movement).kind, formOfWheel(b, movement).kind]).toEqual(['teeth', 'teeth']);
  });
  it('an own rack for involute teeth: pressure angle, thinning and depth of both wheels', () => {
    const rows = [
      { name: 'stub', form: 'involute', addendum: 0.8, dedendum: 1, thickness: 1.5, pressureAngle: 25, fillet: 0.2 },
    ];
    const [a, b] = [wheelOf({ id: 'a', teeth: 20, table: 'stub' }), wheelOf({ id: 'b', teeth: 30, table: 'stub' })];
    const movement = table(rows, a, b);
    const size = sizeOfWheel(a, movement);
    expect([size.tipRadius, size.rootRadius, size.thickness]).toEqual([10.8, 9, 1.5]);
    expect(size.baseRadius).toBeCloseTo(10 * Math.cos((25 * Math.PI) / 180), 12);
    expect(calculatedDepth(a, b, movement)).toMatchObject({ kind: 'depth', distance: 25 });
    expect(calculatedDepth(a, wheelOf({ id: 'c', teeth: 30 }), movement)).toMatchObject({ kind: 'mismatch' });
  });
  it('a row for another form or count is not taken', () => {
    const rows = [{ name: 'shop', form: 'cycloidal', from: 30, addendum: 9, dedendum: 1 }];
    const wheel = clock('a', 20, { table: 'shop' });
    expect(doubtsOf(wheel, table(rows, wheel))[0]).toContain('"shop" is not known');
  });
});

describe('wheel or pinion', () => {
  it('by count and by the larger of the pair', () => {
    const [a, b] = [clock('a', 60), clock('b', 10)];
    expect([isPinion(a, movementOf(a, b)), isPinion(b, movementOf(a, b))]).toEqual([false, true]);
    const [c, d] = [clock('c', 12), clock('d', 8)];
    expect([isPinion(c, movementOf(c, d)), isPinion(d, movementOf(c, d))]).toEqual([false, true]);
    const [e, f] = [clock('e', 8), clock('f', 8)];
    expect([isPinion(e, movementOf(e, f)), isPinion(f, movementOf(e, f))]).toEqual([false, true]);
  });
  it('the mate decides an exact addendum: stated leaves before the depth', () => {
    const [a, b] = [clock('a', 60, { table: 'epicycloid' }), clock('b', 10, { table: 'epicycloid' })];
    const drawn = sizeOfWheel(a, movementOf(a, b)).addendum;
    expect(drawn).toBeCloseTo(0.95 * 1.67186898, 7); // cycloidalValues.json, B.fa.10.6
    const stated = clock('a', 60, { table: 'epicycloid', mateTeeth: 6 });
    expect(sizeOfWheel(stated, movementOf(stated, b)).addendum).toBeLessThan(drawn);
  });
});

describe('what does not match', () => {
  const says = (a: Wheel, b: Wheel) => {
    const depth = calculatedDepth(a, b, movementOf(a, b));
    return depth.kind === 'mismatch' ? mismatchSays(depth.why, speakerOf(movementOf(a, b))) : '';
  };
  it('16 DP is not module 1.5', () => {
    const text = says(
      wheelOf({ id: 'a', teeth: 30, size: { diametralPitch: 16 } }),
      wheelOf({ id: 'b', teeth: 20, size: { module: 1.5 } }),
    );
    expect(text).toContain('16 DP is module 1.5875, not 1.5');
    expect(text).toContain('differ by 0.275 mm a tooth');
  });
  it('pressure angles, forms, two lanterns, two rings, a wheel too large for its ring', () => {
    const a = wheelOf({ id: 'a', teeth: 30 });
    expect(says(a, wheelOf({ id: 'b', teeth: 20, pressureAngle: 14.5 }))).toMatch(/base pitches differ by 0\.089 mm/);
    expect(says(a, clock('b', 8))).toMatch(/do not run together/);
    expect(
      says(wheelOf({ id: 'a', teeth: 8, form: 'lantern' }), wheelOf({ id: 'b', teeth: 9, form: 'lantern' })),
    ).toMatch(/pins cannot drive pins/);
    expect(
      says(wheelOf({ id: 'a', internal: true, teeth: 60 }), wheelOf({ id: 'b', internal: true, teeth: 50 })),
    ).toMatch(/both rings/);
    expect(says(wheelOf({ id: 'a', internal: true, teeth: 60 }), wheelOf({ id: 'b', teeth: 61 }))).toMatch(
      /does not fit inside/,
    );
  });
  it('equal sizes stated in different ways match', () => {
    expect(
      says(
        wheelOf({ id: 'a', teeth: 30, size: { diametralPitch: 25.4 } }),
        wheelOf({ id: 'b', size: { circularPitch: Math.PI } }),
      ),
    ).toBe('');
  });
  it('a ring and its wheel stand half the difference apart; shifts that cannot close are said', () => {
    const [ring, wheel] = [wheelOf({ id: 'a', internal: true, teeth: 72 }), wheelOf({ id: 'b', teeth: 24 })];
    expect(calculatedDepth(ring, wheel, movementOf(ring, wheel))).toMatchObject({
      kind: 'depth',
      distance: 24,
      internal: true,
    });
    expect(
      says(wheelOf({ id: 'a', teeth: 12, profileShift: -3 }), wheelOf({ id: 'b', teeth: 12, profileShift: -3 })),
    ).toMatch(/no distance at which/);
  });
});

describe('teeth that cannot be', () => {
  it.each<[string, Partial<Omit<Wheel, 'id'>>, RegExp]>([
    ['undercut to nothing', { teeth: 6, profileShift: -0.9 }, /undercut to nothing/],
    ['no space', { teeth: 30, toothThickness: 3.2 }, /leave no space/],
    ['tips below roots', { teeth: 30, tipDiameter: 20 }, /there is no tooth/],
    ['deeper than the wheel', { teeth: 4, dedendum: 2.1 }, /there is no tooth|centre|undercut/],
  ])('%s', (_, fields, words) => {
    const wheel = wheelOf({ ...fields });
    const form = formOfWheel(wheel, movementOf());
    expect(form.kind).toBe('none');
    if (form.kind === 'none') expect(teethSay(form.why, speakerOf(movementOf(wheel)))).toMatch(words);
  });
  it('pointed teeth end at their point and say where', () => {
    const form = formOfWheel(wheelOf({ teeth: 8, profileShift: 0.8 }), movementOf());
    if (form.kind !== 'teeth') throw new Error(form.why.kind);
    expect(form.doubts.map((doubt) => teethSay(doubt, speakerOf(movementOf()))).join(' ')).toMatch(
      /come to a point at diameter 11\.348 mm/,
    );
    expect(Math.abs(halfAngleAt(form, form.tip))).toBeLessThan(1e-9);
  });
  it('no numbers in, no NaN out: any wheel of the schema gives finite sizes and a form or a sentence', () => {
    const anyWheel = fc.record({
      teeth: fc.integer({ min: 4, max: 400 }),
      form: fc.constantFrom('involute' as const, 'cycloidal' as const, 'triangular' as const, 'lantern' as const),
      internal: fc.boolean(),
      profileShift: fc.double({ min: -3, max: 3, noNaN: true }),
      size: fc.oneof(
        fc.record({ module: fc.double({ min: 0.01, max: 100, noNaN: true }) }),
        fc.record({ diametralPitch: fc.double({ min: 0.25, max: 2540, noNaN: true }) }),
      ),
      extra: fc.constantFrom(
        {},
        { addendum: 3 },
        { dedendum: 4 },
        { thicknessFactor: 0.1 },
        { pressureAngle: 40 },
        { pressureAngle: 5 },
        { toothAngle: 120 },
        { trundleDiameter: 5 },
        { table: 'epicycloid' },
      ),
    });
    fc.assert(
      fc.property(anyWheel, ({ extra, ...fields }) => {
        const wheel = wheelOf({ ...fields, ...extra });
        const size = sizeOfWheel(wheel, movementOf(wheel));
        for (const value of Object.values(size)) {
          if (typeof value === 'number') expect(Number.isFinite(value)).toBe(true);
        }
        const form = formOfWheel(wheel, movementOf(wheel));
        if (form.kind === 'none') {
          const says = teethSay(form.why, speakerOf(movementOf(wheel)));
          expect(says.length).toBeGreaterThan(20);
          expect(says).not.toMatch(/NaN|Infinity|undefined/);
          return;
        }
        let before: number | undefined;
        for (const piece of form.pieces) {
          expect(piece.to).toBeGreaterThan(piece.from);
          if (before !== undefined) expect(piece.from).toBeCloseTo(before, 9);
          before = piece.to;
          for (let i = 0; i <= 8; i++) {
            const half = piece.half(piece.from + ((piece.to - piece.from) * i) / 8);
            expect(half).toBeGreaterThan(-1e-6);
            expect(half).toBeLessThanOrEqual(Math.PI / wheel.teeth + 1e-6);
          }
        }
      }),
      { numRuns: 400 },
    );
  });
});
