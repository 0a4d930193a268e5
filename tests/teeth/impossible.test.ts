/** Wheels that cannot be made, or not so: told where sizes become teeth, so that every door says the same. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Wheel } from '../../solver/movement/schema.ts';
import { cuttingDataOf } from '../../solver/teeth/cutting/index.ts';
import { formOfWheel, type ToothDoubt, type ToothFault } from '../../solver/teeth/index.ts';
import { speakerOf, teethSay } from '../../solver/words/index.ts';
import { movementOf, wheelOf } from './makeWheels.ts';

type Fields = Parameters<typeof wheelOf>[0];

function told(fields: Fields): readonly (ToothFault | ToothDoubt)[] {
  const wheel = wheelOf(fields);
  const form = formOfWheel(wheel, movementOf(wheel));
  return form.kind === 'none' ? [form.why] : form.doubts;
}

/** What is told of one kind. */
function toldOf<K extends ToothDoubt['kind']>(kind: K, fields: Fields): Extract<ToothDoubt, { readonly kind: K }> {
  const found = told(fields).find((doubt) => doubt.kind === kind);
  if (!found) throw new Error(`nothing is told of ${kind}`);
  return found as Extract<ToothDoubt, { readonly kind: K }>; // found by its kind
}

const kinds = (fields: Fields): readonly string[] => told(fields).map(({ kind }) => kind);

describe('impossible wheels', () => {
  it.each<[string, Fields]>([
    ['noHeight', { form: 'involute', tipDiameter: 17 }],
    ['noHeight', { form: 'cycloidal', teeth: 60, tipDiameter: 55 }],
    ['tipsBelowPitch', { form: 'involute', teeth: 30, tipDiameter: 29.5 }],
    ['tipsBelowPitch', { form: 'involute', teeth: 30, addendum: 0 }],
    ['tipsBelowPitch', { form: 'cycloidal', teeth: 60, tipDiameter: 59.9 }],
    ['tipsBelowPitch', { form: 'cycloidal', teeth: 8, addendum: 0 }],
    ['tipsBelowPitch', { form: 'triangular', teeth: 40, tipDiameter: 39.8 }],
    ['tipsBelowPitch', { form: 'involute', teeth: 60, internal: true, tipDiameter: 60.2 }],
    ['blankTooLarge', { form: 'involute', teeth: 20, tipDiameter: 26 }],
    ['pointed', { form: 'cycloidal', teeth: 60, thicknessFactor: 0.9 }],
    ['pointedTriangles', { form: 'triangular', teeth: 40, tipDiameter: 46 }],
    ['undercut', { form: 'involute', teeth: 10 }],
    ['trundlesTouch', { form: 'lantern', teeth: 8, trundleDiameter: 3.1 }],
    ['ringThin', { form: 'involute', teeth: 60, internal: true, outerDiameter: 64 }],
  ])('tells %s of %o', (kind, fields) => {
    expect(kinds(fields)).toContain(kind);
    const wheel = wheelOf(fields);
    const movement = movementOf(wheel);
    expect(cuttingDataOf(wheel, movement).doubts.map((doubt) => doubt.kind)).toContain(kind);
  });

  it.each<[string, Fields]>([
    ['an involute wheel', { teeth: 20 }],
    ['an involute wheel whose tips a shift takes to its pitch circle', { teeth: 60, profileShift: -1 }],
    ['a clock wheel', { form: 'cycloidal', teeth: 60 }],
    ['leaves', { form: 'cycloidal', teeth: 8 }],
    ['triangles', { form: 'triangular', teeth: 40 }],
    ['pins', { form: 'lantern', teeth: 8 }],
    ['pins that just leave a hair', { form: 'lantern', teeth: 8, trundleDiameter: 8 * Math.sin(Math.PI / 8) - 0.001 }],
    ['a ring', { teeth: 60, internal: true }],
    ['a ring with its rim', { teeth: 60, internal: true, outerDiameter: 67.1 }],
  ])('tells nothing of %s', (_, fields) => {
    expect(told(fields)).toEqual([]);
  });

  it('tells how far short of the pitch circle the tips end', () => {
    expect(told({ teeth: 30, tipDiameter: 29.5 })).toContainEqual({
      kind: 'tipsBelowPitch',
      wheel: 'wheel',
      below: 0.25,
    });
    const wheel = wheelOf({ teeth: 30, tipDiameter: 29.5 });
    const movement = movementOf(wheel);
    const [says] = cuttingDataOf(wheel, movement).doubts.map((doubt) => teethSay(doubt, speakerOf(movement)));
    expect(says).toMatch(/end 0\.250 mm short of it, and no addendum is left\.$/);
  });

  it('tells of a thin ring the outer diameter that leaves the depth of its teeth', () => {
    const fields = { teeth: 60, internal: true, outerDiameter: 64 };
    const { outerDiameter } = toldOf('ringThin', fields);
    expect(kinds({ ...fields, outerDiameter })).toEqual([]);
    expect(kinds({ ...fields, outerDiameter: outerDiameter - 0.01 })).toEqual(['ringThin']);
  });
});

/**
 * Undercut against the generation itself: the straight side of the rack's tooth is swept through the blank; the involute
 * is cut wherever the sweep takes more than its tangent there, above the base circle.
 */
function bites(teeth: number, alpha: number, shift: number, straightTo: number): boolean {
  const pitch = teeth / 2;
  const base = pitch * Math.cos(alpha);
  const halfTooth = (Math.PI / 2 + 2 * shift * Math.tan(alpha)) / teeth + Math.tan(alpha) - alpha;
  // The end of the straight side: depth below the rolling line, and sideways from the middle of the wheel's tooth.
  const depth = straightTo - shift;
  const side = Math.PI / 4 + shift * Math.tan(alpha) + depth * Math.tan(alpha);
  // Far enough that the end of the straight side passes the whole line of action.
  const farthest = side + depth / Math.tan(alpha) + 2;
  for (let i = 0; i <= 40_000; i++) {
    const roll = (i / 20_000 - 1) * farthest;
    // The rack moves by `roll` while the wheel turns by roll / pitch.
    const [x, y] = [pitch - depth, side + roll];
    const radius = Math.hypot(x, y);
    if (radius <= base) continue;
    const angle = Math.atan2(y, x) - roll / pitch;
    const across = Math.sqrt(radius * radius - base * base);
    const flank = halfTooth - (across / base - Math.atan2(across, base));
    if (angle > 0 && angle < flank - 1e-8) return true;
  }
  return false;
}

describe('undercut', () => {
  const RACKS = [
    { table: 'ISO 53 A', angle: 20, dedendum: 1.25, fillet: 0.38 },
    { table: 'ISO 53 B', angle: 20, dedendum: 1.25, fillet: 0.3 },
    { table: 'ISO 53 C', angle: 20, dedendum: 1.25, fillet: 0.25 },
    { table: '14½° full depth', angle: 14.5, dedendum: 1.157, fillet: (4 / 3) * 0.157 },
  ];
  const straightOf = ({ angle, dedendum, fillet }: (typeof RACKS)[number]): number =>
    dedendum - fillet * (1 - Math.sin((angle * Math.PI) / 180));

  it.each(RACKS)('is told where the tool of $table bites, and nowhere else', (rack) => {
    const alpha = (rack.angle * Math.PI) / 180;
    for (let teeth = 9; teeth <= 44; teeth++) {
      const missing = straightOf(rack) - (teeth * Math.sin(alpha) ** 2) / 2;
      // Nearer to the limit the sweep of this test is too coarse to see the bite; the handbooks' counts are tested below.
      if (Math.abs(missing) < 0.04) continue;
      const isTold = kinds({ teeth, table: rack.table }).some(
        (kind) => kind === 'undercut' || kind === 'undercutThrough',
      );
      expect(isTold, `${teeth} teeth`).toBe(bites(teeth, alpha, 0, straightOf(rack)));
    }
  });

  it('hangs on the tool and not on the addendum of the wheel', () => {
    for (const addendum of [0.6, 0.8, 1, 1.2]) {
      expect(kinds({ teeth: 12, addendum })).toContain('undercut');
      expect(kinds({ teeth: 24, addendum })).not.toContain('undercut');
    }
    // A deeper tool bites where the standard one does not.
    expect(kinds({ teeth: 20, dedendum: 1.6 })).toContain('undercut');
  });

  it('names a profile shift that just avoids it', () => {
    fc.assert(
      fc.property(fc.integer({ min: 8, max: 15 }), (teeth) => {
        const { shift } = toldOf('undercut', { teeth });
        const alpha = Math.PI / 9;
        expect(bites(teeth, alpha, shift + 0.001, straightOf(RACKS[0] as (typeof RACKS)[number]))).toBe(false);
        expect(bites(teeth, alpha, shift - 0.06, straightOf(RACKS[0] as (typeof RACKS)[number]))).toBe(true);
        expect(kinds({ teeth, profileShift: shift })).not.toContain('undercut');
      }),
    );
  });

  it('begins at 17 teeth of 20° and at 32 of 14½°, as handbooks have it', () => {
    expect(kinds({ teeth: 16 })).toContain('undercut');
    expect(kinds({ teeth: 17 })).not.toContain('undercut');
    const inch = { size: { diametralPitch: 16 }, pressureAngle: 14.5 } as Partial<Wheel>;
    expect(kinds({ ...inch, teeth: 31 })).toContain('undercut');
    expect(kinds({ ...inch, teeth: 32 })).not.toContain('undercut');
  });
});
