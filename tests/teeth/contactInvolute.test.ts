/** The engine knows only forms; for involute pairs the closed formulas (ISO 21771) say what it must find. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { flankSpan } from '../../solver/teeth/contact/quickReadings.ts';
import { contactOfPair, formOfWheel, windowOfDepth } from '../../solver/teeth/index.ts';
import { involute } from '../../solver/teeth/sizes/involuteFunction.ts';
import { movementOf, wheelOf } from './makeWheels.ts';

const RADIANS = Math.PI / 180;

interface Drawn {
  readonly z1: number;
  readonly z2: number;
  readonly module: number;
  readonly alphaDeg: number;
  readonly shift: number;
  readonly open: number;
}

/** Outside pairs that the rack does not undercut, with opposite shifts, up to the end of even contact. */
const outside = fc
  .record({
    z1: fc.integer({ min: 18, max: 90 }),
    z2: fc.integer({ min: 18, max: 140 }),
    module: fc.double({ min: 0.1, max: 5, noNaN: true }),
    alphaDeg: fc.double({ min: 20, max: 25, noNaN: true }),
    shift: fc.double({ min: -0.2, max: 0.2, noNaN: true }),
    open: fc.double({ min: 0.01, max: 0.35, noNaN: true }),
  })
  .filter(({ z1, z2, alphaDeg, shift }) => {
    const least = (z: number) => 1 - (z * Math.sin(alphaDeg * RADIANS) ** 2) / 2;
    return shift >= least(z1) && -shift >= least(z2);
  });

function pairOf({ z1, z2, module, alphaDeg, shift }: Drawn, ring = false) {
  const fields = { size: { module }, pressureAngle: alphaDeg };
  const a = wheelOf({ id: 'a', teeth: z1, profileShift: shift, ...fields });
  const b = wheelOf({ id: 'b', teeth: z2, profileShift: ring ? 0 : -shift, internal: ring, ...fields });
  return [a, b, movementOf(a, b)] as const;
}

describe('outside pairs', () => {
  it('backlash, contact ratio, approach, recess and pressure angle are the closed formulas', () => {
    fc.assert(
      fc.property(outside, (drawn) => {
        const { z1, z2, module, alphaDeg, shift, open } = drawn;
        const alpha = alphaDeg * RADIANS;
        const plain = (module * (z1 + z2)) / 2;
        const distance = plain + open * module;
        const working = Math.acos((plain * Math.cos(alpha)) / distance);
        const [r1, r2] = [(module * z1) / 2, (module * z2) / 2];
        const path = (r: number, x: number) => Math.sqrt((r + module * (1 + x)) ** 2 - (r * Math.cos(alpha)) ** 2);
        const base = Math.PI * module * Math.cos(alpha);
        // Approach: from where the driven tip meets the line of action to the pitch point; recess likewise.
        const approach = (path(r2, -shift) - r2 * Math.cos(alpha) * Math.tan(working)) / base;
        const recess = (path(r1, shift) - r1 * Math.cos(alpha) * Math.tan(working)) / base;
        fc.pre(approach + recess > 1.01);
        const [a, b, movement] = pairOf(drawn);
        const contact = contactOfPair(a, b, movement, distance);
        if (contact.kind !== 'contact') throw new Error(contact.why.kind);
        const backlash = 2 * distance * (involute(working) - involute(alpha));
        expect(Math.abs(contact.backlash.least - backlash)).toBeLessThan(1e-9 * module + 1e-12);
        expect(Math.abs(contact.backlash.greatest - backlash)).toBeLessThan(1e-9 * module + 1e-12);
        expect(Math.abs(contact.approach - approach)).toBeLessThan(1e-6);
        expect(Math.abs(contact.recess - recess)).toBeLessThan(1e-6);
        expect(Math.abs(contact.pairsInContact - approach - recess)).toBeLessThan(1e-6);
        expect(Math.abs(contact.pressureAngle.least - working)).toBeLessThan(1e-6);
        expect(Math.abs(contact.pressureAngle.greatest - working)).toBeLessThan(1e-6);
        expect(contact.error.angle).toBeLessThan(1e-9);
        expect([contact.binds, contact.bottoms, contact.drop, contact.butting]).toEqual([false, false, 0, 0]);
      }),
      { numRuns: 300 },
    );
  });

  it('turning the drive round swaps approach and recess and keeps the backlash', () => {
    fc.assert(
      fc.property(outside, (drawn) => {
        const [a, b, movement] = pairOf(drawn);
        const distance = (drawn.module * (drawn.z1 + drawn.z2)) / 2 + 0.05 * drawn.module;
        const [there, back] = [contactOfPair(a, b, movement, distance), contactOfPair(b, a, movement, distance)];
        if (there.kind !== 'contact' || back.kind !== 'contact') throw new Error('no contact');
        expect(Math.abs(there.approach - back.recess)).toBeLessThan(1e-6);
        expect(Math.abs(there.recess - back.approach)).toBeLessThan(1e-6);
        expect(Math.abs(there.backlash.mean - back.backlash.mean)).toBeLessThan(1e-9 * drawn.module);
      }),
      { numRuns: 40 },
    );
  });

  it('a tight pair has the negative play of the formula and says that it binds', () => {
    const [a, b, movement] = pairOf({ z1: 20, z2: 60, module: 1, alphaDeg: 20, shift: 0, open: 0 });
    const contact = contactOfPair(a, b, movement, 39.98);
    if (contact.kind !== 'contact') throw new Error(contact.why.kind);
    // involuteValues.json, A.backlash, m = 1, 20/60, −0.02: derived.
    expect(contact.backlash.mean).toBeCloseTo(-0.014524020506, 9);
    expect(contact.binds).toBe(true);
  });
});

describe('a wheel inside a ring', () => {
  it('backlash and contact ratio are the closed formulas', () => {
    const drawn = fc.record({
      z1: fc.integer({ min: 34, max: 50 }),
      z2: fc.integer({ min: 110, max: 200 }),
      module: fc.double({ min: 0.2, max: 3, noNaN: true }),
      alphaDeg: fc.double({ min: 20, max: 25, noNaN: true }),
      shift: fc.constant(0),
      open: fc.double({ min: 0.01, max: 0.2, noNaN: true }),
    });
    fc.assert(
      fc.property(drawn, (pair) => {
        const { z1, z2, module, alphaDeg, open } = pair;
        const alpha = alphaDeg * RADIANS;
        const plain = (module * (z2 - z1)) / 2;
        const distance = plain - open * module;
        fc.pre(distance > plain * Math.cos(alpha) * 1.001);
        const working = Math.acos((plain * Math.cos(alpha)) / distance);
        const [r1, r2] = [(module * z1) / 2, (module * z2) / 2];
        const [b1, b2] = [r1 * Math.cos(alpha), r2 * Math.cos(alpha)];
        const base = Math.PI * module * Math.cos(alpha);
        const ringTip = Math.sqrt((r2 - module) ** 2 - b2 ** 2);
        // The ring's tip must meet the wheel above its generated root: the rack leaves the flank from here up.
        fc.pre(
          ringTip - distance * Math.sin(working) > r1 * Math.sin(alpha) - module / Math.sin(alpha) + 0.02 * module,
        );
        const ratio = (Math.sqrt((r1 + module) ** 2 - b1 ** 2) - ringTip + distance * Math.sin(working)) / base;
        fc.pre(ratio > 1.01);
        const [a, b, movement] = pairOf(pair, true);
        const contact = contactOfPair(a, b, movement, distance);
        if (contact.kind !== 'contact') throw new Error(contact.why.kind);
        const backlash = 2 * distance * (involute(alpha) - involute(working));
        expect(Math.abs(contact.backlash.least - backlash)).toBeLessThan(1e-8 * module);
        expect(Math.abs(contact.pairsInContact - ratio)).toBeLessThan(1e-6);
        expect(Math.abs(contact.pressureAngle.greatest - working)).toBeLessThan(1e-6);
        const driven = contactOfPair(b, a, movement, distance);
        if (driven.kind !== 'contact') throw new Error(driven.why.kind);
        expect(Math.abs(driven.backlash.mean - backlash)).toBeLessThan(1e-8 * module);
      }),
      { numRuns: 40 },
    );
  });
});

describe('the window of an involute depth', () => {
  it('begins where the play ends and ends where the contact ratio is one', () => {
    const [a, b, movement] = pairOf({ z1: 24, z2: 60, module: 0.8, alphaDeg: 20, shift: 0, open: 0 });
    const window = windowOfDepth(a, b, movement, { shakes: [0.05, 99] });
    if (window.kind !== 'window') throw new Error(window.why.kind);
    expect(window.deepestBy).toBe('binding');
    expect(window.deepest).toBeCloseTo(33.6, 7);
    expect(window.shallowestBy).toBe('evenContact');
    const at = window.shallowest;
    const alpha = 20 * RADIANS;
    const working = Math.acos((33.6 * Math.cos(alpha)) / at);
    const path = (z: number) => Math.sqrt((0.4 * z + 0.8) ** 2 - (0.4 * z * Math.cos(alpha)) ** 2);
    expect((path(24) + path(60) - at * Math.sin(working)) / (Math.PI * 0.8 * Math.cos(alpha))).toBeCloseTo(1, 4);
    // 2 ΔC tan α to first order.
    expect(window.perHundredth).toBeCloseTo(0.02 * Math.tan(alpha), 5);
    const [wanted, never] = window.shakes;
    const angle = Math.acos((33.6 * Math.cos(alpha)) / (wanted?.distance ?? Number.NaN));
    expect(2 * (wanted?.distance ?? Number.NaN) * (involute(angle) - involute(alpha))).toBeCloseTo(0.05, 6);
    expect(never?.distance).toBeUndefined();
    const forms = [formOfWheel(a, movement), formOfWheel(b, movement)];
    if (forms[0]?.kind !== 'teeth' || forms[1]?.kind !== 'teeth') throw new Error('no teeth');
    expect(flankSpan(forms[0], forms[1], at)).toBeCloseTo(1, 5);
  });
});
