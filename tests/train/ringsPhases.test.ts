import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { ArborId, WheelId } from '../../solver/movement/ids.ts';
import type { Movement } from '../../solver/movement/schema.ts';
import { closeRing } from '../../solver/train/turning/closeRing.ts';
import { keepDepths } from '../../solver/train/turning/keepDepths.ts';
import { meshesOf } from '../../solver/train/turning/meshes.ts';
import { planetSpacing } from '../../solver/train/turning/planets.ts';
import { checkRings, meshRings } from '../../solver/train/turning/ringClosure.ts';
import { toothPhases } from '../../solver/train/turning/toothPhases.ts';
import { type DrawnWheel, meshed, missOf } from '../teeth/twoWheels.ts';
import { ringMovement, spots } from './ringSketch.ts';
import { sketchMovement } from './turningMovement.ts';

describe('compound wheels', () => {
  /** Two arbors joined by two depths: a on A with b on B, c on A with d on B, equal ratios. */
  const twice = (phases: Readonly<Record<string, number>>): Movement => {
    const movement = sketchMovement({
      wheels: { a: ['A', 20], b: ['B', 40], c: ['A', 15], d: ['B', 30] },
      depths: ['a b', 'c d'],
    });
    return {
      ...movement,
      wheels: movement.wheels.map((wheel) =>
        phases[wheel.id] === undefined ? wheel : { ...wheel, phase: phases[wheel.id] as number },
      ),
    };
  };
  const places = spots([
    ['A', 0, 0],
    ['B', 30, 7],
  ]);

  it('with known phases close or miss as brute force over the teeth says (property)', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 47 }), fc.integer({ min: 0, max: 47 }), (c, d) => {
        const [cDeg, dDeg] = [c * 0.25, d * 0.25];
        const [ring] = checkRings(twice({ a: 0, b: 0, c: cDeg, d: dDeg }), places);
        expect(ring?.kind === 'closes' || ring?.kind === 'misses').toBe(true);
        if (ring?.kind !== 'closes' && ring?.kind !== 'misses') return;
        // Independent: B may be put in at any of its 40 teeth; the least miss of the second pair counts.
        const turn = Math.PI / 180;
        const a: DrawnWheel = { x: 0, y: 0, teeth: 20, angle: 0.123 };
        const b = meshed(a, { x: 30, y: 7, teeth: 40, angle: 0 });
        const least = Math.min(
          ...Array.from({ length: 40 }, (_, tooth) => {
            const body = b.angle + (2 * Math.PI * tooth) / 40;
            return Math.abs(
              missOf(
                { x: 0, y: 0, teeth: 15, angle: 0.123 + cDeg * turn },
                { x: 30, y: 7, teeth: 30, angle: body + dDeg * turn },
              ),
            );
          }),
        );
        // The solver closes one depth and measures at the other, in teeth of either; here both pairs are in proportion.
        const inOther = ring.depths[ring.depths.length - 1] === 'c-d' ? 1 : 15 / 20;
        expect(Math.abs(ring.missTeeth) * inOther).toBeCloseTo(least, 9);
      }),
      { numRuns: 80 },
    );
  });

  it('with an unknown phase say how far to turn the wheel on its arbor, and then close', () => {
    const [ring] = checkRings(twice({ a: 0, b: 0, c: 3.21 }), places);
    expect(ring?.kind).toBe('setOnArbor');
    if (ring?.kind !== 'setOnArbor') return;
    expect(ring.wheel).toBe('d');
    const [after] = checkRings(twice({ a: 0, b: 0, c: 3.21, d: ring.turnDeg }), places);
    expect(after?.kind).toBe('closes');
  });
});

describe('the smallest movement that closes a ring', () => {
  it('moves the loose corners of a rhombus along their rules to the nearest place where it closes', () => {
    const teeth = 32;
    const half = (40 * Math.PI) / 180;
    const [x, y] = [teeth * Math.cos(half), teeth * Math.sin(half)];
    // A0 and A1 are planted; A2 and A3 can swing together.
    const places = spots([
      ['A0', -x, 0],
      ['A1', 0, y],
      ['A2', x, 0],
      ['A3', 0, -y],
    ]);
    const movement = ringMovement([teeth, teeth, teeth, teeth]);
    const [ring] = meshRings(meshesOf(movement));
    if (!ring) throw new Error('no ring');
    // A3 turns about A0 and A2 about A1, both by the same small angle: a parallelogram.
    const swing = { x: y / teeth, y: x / teeth };
    const motion = new Map([
      ['A2' as ArborId, swing],
      ['A3' as ArborId, swing],
    ]);
    const pairs = [
      ['A0', 'A1'],
      ['A1', 'A2'],
      ['A2', 'A3'],
      ['A3', 'A0'],
    ].map(([a, b]) => [a as ArborId, b as ArborId] as const);
    const mover = keepDepths(places, motion, pairs);
    const cure = closeRing(ring, places, mover);
    expect(cure.kind).toBe('closes');
    if (cure.kind !== 'closes') return;
    const after = mover(cure.amount) ?? places;
    expect(checkRings(movement, after)[0]?.kind).toBe('closes');
    for (const [a, b] of pairs) {
      const [pa, pb] = [after.get(a), after.get(b)];
      expect(Math.hypot((pb?.x ?? 0) - (pa?.x ?? 0), (pb?.y ?? 0) - (pa?.y ?? 0))).toBeCloseTo(teeth, 9);
    }
    // Independent: the corner angle must make 32 (2 phi - 180) / 360 * 2 whole: phi moves by the least that does.
    const phi = 80;
    const wanted =
      [-4, -3].map((k) => 90 + (k * 360) / (4 * teeth)).sort((a, b) => Math.abs(a - phi) - Math.abs(b - phi))[0] ?? 0;
    const swung = cure.moved.find((move) => move.arbor === 'A2')?.distance ?? 0;
    expect(2 * teeth * Math.sin((Math.abs(wanted - phi) * Math.PI) / 360)).toBeCloseTo(swung, 6);
  });

  it('says so where the motion does not reach', () => {
    const movement = ringMovement([30, 30, 30, 30]);
    const half = (40 * Math.PI) / 180;
    const places = spots([
      ['A0', -30 * Math.cos(half), 0],
      ['A1', 0, 30 * Math.sin(half)],
      ['A2', 30 * Math.cos(half), 0],
      ['A3', 0, -30 * Math.sin(half)],
    ]);
    const [ring] = meshRings(meshesOf(movement));
    if (!ring) throw new Error('no ring');
    expect(closeRing(ring, places, () => undefined).kind).toBe('none');
  });
});

describe('tooth phases and marks', () => {
  it('put every depth of a ring in mesh by the independent construction, and number the marks (property)', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 10, max: 60 }),
        fc.integer({ min: 8, max: 50 }),
        fc.integer({ min: 1, max: 30 }),
        (sun, planet, step) => {
          const ringTeeth = sun + 2 * planet;
          const angle =
            planetSpacing(sun, ringTeeth, [0, (360 * step) / (sun + ringTeeth) + 40]).planets[1]?.nearestDeg ?? 0;
          const at = (angle * Math.PI) / 180;
          const radius = (sun + planet) / 2;
          const movement = sketchMovement({
            wheels: { s: ['S', sun], p: ['P', planet], q: ['Q', planet], r: ['R', ringTeeth, 'internal'] },
            depths: ['s p', 's q', 'p r', 'q r'],
          });
          const places = spots([
            ['S', 0, 0],
            ['R', 0, 0],
            ['P', radius, 0],
            ['Q', radius * Math.cos(at), radius * Math.sin(at)],
          ]);
          const { angleDeg, marks } = toothPhases(movement, places);
          const wheels = new Map(
            movement.wheels.map((wheel): [WheelId, DrawnWheel] => {
              const place = places.get(wheel.arbor) ?? { x: 0, y: 0 };
              return [
                wheel.id,
                {
                  ...place,
                  teeth: wheel.teeth,
                  internal: wheel.internal,
                  angle: ((angleDeg.get(wheel.id) ?? 0) * Math.PI) / 180,
                },
              ];
            }),
          );
          for (const rule of movement.rules) {
            if (rule.kind !== 'depth') continue;
            const [a, b] = rule.wheels.map((id) => wheels.get(id));
            if (!a || !b) throw new Error('wheel lost');
            expect(Math.abs(missOf(a, b))).toBeLessThan(1e-7);
          }
          for (const mark of marks) {
            expect(Math.abs(mark.missTeeth)).toBeLessThan(1e-7);
            const rule = movement.rules.find((candidate) => candidate.id === mark.rule);
            const b = rule?.kind === 'depth' ? (wheels.get(rule.wheels[1])?.teeth ?? 0) : 0;
            expect((mark.between[0] % b) + 1).toBe(mark.between[1]);
          }
        },
      ),
      { numRuns: 60 },
    );
  });

  it('move whole teeth where compound wheels need it', () => {
    const movement = sketchMovement({
      wheels: { a: ['A', 20], b: ['B', 40], c: ['A', 15], d: ['B', 30] },
      depths: ['a b', 'c d'],
    });
    const places = spots([
      ['A', 0, 0],
      ['B', 30, 0],
    ]);
    // Ring factors are 3 and -4; the fitting phase of d comes from the check itself, all others are 0.
    const open = {
      ...movement,
      wheels: movement.wheels.map((wheel) => (wheel.id === 'd' ? wheel : { ...wheel, phase: 0 })),
    };
    const [ring] = checkRings(open, places);
    const turnDeg = ring?.kind === 'setOnArbor' ? ring.turnDeg : 0;
    const known = {
      ...open,
      wheels: open.wheels.map((wheel) => (wheel.id === 'd' ? { ...wheel, phase: turnDeg } : wheel)),
    };
    for (const mark of toothPhases(known, places).marks) expect(Math.abs(mark.missTeeth)).toBeLessThan(1e-9);
  });
});
