/** Form cutters and triangular teeth against published tables; sources in workshopValues.json and triangularValues.json. */
import { describe, expect, it } from 'vitest';
import { INVOLUTE_CUTTERS, involuteCutter } from '../../solver/teeth/cutting/cutterChoice.ts';
import { sizeOfWheel } from '../../solver/teeth/index.ts';
import { fillingRoot } from '../../solver/teeth/sizes/triangle.ts';
import { USUAL_TOOTH_ANGLE } from '../../solver/teeth/sizes/triangularSize.ts';
import { movementOf, wheelOf } from '../teeth/makeWheels.ts';
import { input, valuesOf } from './checkValues.ts';
import triangles from './triangularValues.json' with { type: 'json' };
import values from './workshopValues.json' with { type: 'json' };

describe('involute cutters', () => {
  it.each(valuesOf(values, 'E.cutter.dp.').map((v) => [v.id, v] as const))('%s (published)', (_, value) => {
    const want = value.expected as { from: number; to: number | null }; // shape of these entries
    const row = INVOLUTE_CUTTERS.find((each) => each.diametralPitchNumber === value.inputs['cutter']);
    expect(row?.from).toBe(want.from);
    expect(row?.to ?? null).toBe(want.to);
    for (const teeth of [want.from, want.to ?? 1000]) expect(involuteCutter(teeth)).toBe(row);
  });
  it.each(valuesOf(values, 'E.cutter.module.').map((v) => [v.id, v] as const))(
    '%s (the other way round; memory)',
    (_, value) => {
      const want = value.expected as { from: number; to: number | null }; // shape of these entries
      const row = INVOLUTE_CUTTERS.find((each) => each.moduleNumber === value.inputs['cutter']);
      expect([row?.from, row?.to ?? null]).toEqual([want.from, want.to]);
    },
  );
  it('has none below ten teeth', () => expect(involuteCutter(9)).toBeUndefined());
});

describe('triangular teeth that fill their pitch', () => {
  it.each(valuesOf(triangles, 'C.tri.').map((v) => [v.id, v] as const))('%s', (_, value) => {
    const want = value.expected as { tip_radius: number }; // shape of these entries
    const g = (input(value, 'apex_deg') * Math.PI) / 360;
    const [teeth, root] = [input(value, 'z'), input(value, 'rf')];
    expect(Math.abs(fillingRoot(want.tip_radius, teeth, g) - root)).toBeLessThan(1e-10);
    // The same tooth from the size of a wheel: choose the thickness on the pitch circle that this root and tip give.
    const pitch = (root + want.tip_radius) / 2;
    const module = (2 * pitch) / teeth;
    const half = Math.asin((want.tip_radius * Math.sin(g)) / pitch) - g;
    const wheel = wheelOf({
      teeth,
      form: 'triangular',
      size: { module },
      toothAngle: input(value, 'apex_deg'),
      toothThickness: 2 * half * pitch,
    });
    const size = sizeOfWheel(wheel, movementOf(wheel));
    expect(Math.abs(size.tipRadius - want.tip_radius)).toBeLessThan(1e-9);
    expect(Math.abs(size.rootRadius - root)).toBeLessThan(1e-9);
  });
  it('the usual angle is that of equilateral triangles (al-Biruni, after Price 1959)', () => {
    expect(USUAL_TOOTH_ANGLE).toBe(valuesOf(triangles, 'C.angle')[0]?.expected);
  });
});
