/** Measures of involute wheels against the geometry of pins and jaws, drawn as points. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  pinOnPitchCircle,
  sizeOverPins,
  spanOver,
  thicknessAt,
  usualMeasures,
} from '../../solver/teeth/cutting/involuteMeasures.ts';

/** Wheels of usual proportions, thick and thin teeth among them. */
const wheels = fc.record({
  teeth: fc.integer({ min: 14, max: 160 }),
  module: fc.double({ min: 0.2, max: 4, noNaN: true }),
  alpha: fc.constantFrom(14.5, 20, 25).map((degrees) => (degrees * Math.PI) / 180),
  thin: fc.double({ min: 0.9, max: 1.05, noNaN: true }),
});
const of = ({ thin, ...wheel }: { teeth: number; module: number; alpha: number; thin: number }) => ({
  ...wheel,
  thickness: (Math.PI / 2) * wheel.module * thin,
});

describe('pins in the spaces of an involute wheel', () => {
  it('touch on the pitch circle where they are chosen so: the involute there is square to the line to their centre', () => {
    fc.assert(
      fc.property(wheels, (drawn) => {
        const wheel = of(drawn);
        const pin = pinOnPitchCircle(wheel);
        const over = sizeOverPins(wheel, pin);
        if (!over) throw new Error('such a pin touches');
        // From the centre of the pin a tangent to the base circle passes through the touching point, half a pin away.
        const base = ((wheel.module * wheel.teeth) / 2) * Math.cos(wheel.alpha);
        const tangent = Math.sqrt((over.centres / 2) ** 2 - base ** 2);
        const touching = Math.hypot(base, tangent - pin / 2);
        expect(touching / ((wheel.module * wheel.teeth) / 2)).toBeCloseTo(1, 9);
      }),
    );
  });

  it('stand in the middle of their spaces, half a pin from both flanks', () => {
    fc.assert(
      fc.property(wheels, fc.double({ min: 1, max: 1.15, noNaN: true }), (drawn, proud) => {
        const wheel = of(drawn);
        const pin = proud * pinOnPitchCircle(wheel);
        const over = sizeOverPins(wheel, pin);
        if (!over) throw new Error('such a pin touches');
        const centre = over.centres / 2;
        // Nearest point of the flank at the space's side, found by walking along it.
        const step = Math.PI / wheel.teeth;
        const base = ((wheel.module * wheel.teeth) / 2) * Math.cos(wheel.alpha);
        let nearest = Number.POSITIVE_INFINITY;
        for (let i = 0; i <= 4000; i++) {
          const radius = base + ((centre + pin - base) * i) / 4000;
          const half = step - thicknessAt(wheel, radius) / (2 * radius);
          nearest = Math.min(nearest, Math.hypot(radius * Math.cos(half) - centre, radius * Math.sin(half)));
        }
        expect(nearest / (pin / 2)).toBeCloseTo(1, 4);
      }),
      { numRuns: 25 },
    );
  });

  it('of an odd count are measured across the two nearest to opposite', () => {
    fc.assert(
      fc.property(wheels, (drawn) => {
        const wheel = of(drawn);
        const over = sizeOverPins(wheel, pinOnPitchCircle(wheel));
        if (!over) throw new Error('such a pin touches');
        const [pitch, steps] = [(2 * Math.PI) / wheel.teeth, Math.floor(wheel.teeth / 2)];
        const apart = Math.hypot(
          (over.centres / 2) * (1 - Math.cos(steps * pitch)),
          (over.centres / 2) * Math.sin(steps * pitch),
        );
        expect(over.size - over.pin).toBeCloseTo(apart, 9);
      }),
    );
  });

  it('are not found where they fall between the flanks to the base circle', () => {
    expect(sizeOverPins({ teeth: 30, module: 1, alpha: Math.PI / 9, thickness: 0.5 }, 0.1)).toBeUndefined();
  });
});

describe('the usual measures', () => {
  it('take a pin of full tenths, no smaller than the one that touches on the pitch circle', () => {
    fc.assert(
      fc.property(wheels, (drawn) => {
        const wheel = of(drawn);
        const { pins, span } = usualMeasures(wheel);
        const least = pinOnPitchCircle(wheel);
        expect(pins?.pin).toBeGreaterThanOrEqual(least);
        expect((pins?.pin ?? 0) - least).toBeLessThan(0.1);
        expect(Math.abs((pins?.pin ?? 0) * 10 - Math.round((pins?.pin ?? 0) * 10))).toBeLessThan(1e-9);
        expect(span).toEqual(spanOver(wheel, span.over));
      }),
    );
  });

  it('span teeth so that the jaws touch on the flanks, between base and tips', () => {
    fc.assert(
      fc.property(wheels, (drawn) => {
        const wheel = of(drawn);
        const { touches } = usualMeasures(wheel).span;
        expect(touches).toBeGreaterThan(wheel.module * wheel.teeth * Math.cos(wheel.alpha));
        expect(touches).toBeLessThan(wheel.module * (wheel.teeth + 2));
      }),
    );
  });
});
