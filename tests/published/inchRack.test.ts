/** Full-depth teeth of 14½° by diametral pitch, against the printed table of the American Standard (SOURCES.md). */
import { describe, expect, it } from 'vitest';
import { cuttingDataOf } from '../../solver/teeth/cutting/index.ts';
import { sizeOfWheel } from '../../solver/teeth/index.ts';
import { movementOf, wheelOf } from '../teeth/makeWheels.ts';

/** Table: "addendum 1/P, minimum dedendum 1.157/P, working depth 2/P, minimum total depth 2.157/P, clearance 0.157/P". */
const TABLE = { addendum: 1, dedendum: 1.157, workingDepth: 2, wholeDepth: 2.157, clearance: 0.157, thickness: 1.5708 };

describe('teeth of 14½° by diametral pitch', () => {
  it.each([4, 16, 32, 64])('have the printed proportions at %d DP', (diametralPitch) => {
    const wheel = wheelOf({ teeth: 40, size: { diametralPitch }, pressureAngle: 14.5 });
    const movement = movementOf(wheel);
    const size = sizeOfWheel(wheel, movement);
    const inch = (mm: number): number => (mm / 25.4) * diametralPitch;
    expect(inch(size.addendum)).toBeCloseTo(TABLE.addendum, 9);
    expect(inch(size.dedendum)).toBeCloseTo(TABLE.dedendum, 9);
    expect(inch(size.thickness)).toBeCloseTo(TABLE.thickness, 4);
    expect(inch(cuttingDataOf(wheel, movement).wholeDepth)).toBeCloseTo(TABLE.wholeDepth, 9);
    expect(inch(size.dedendum - size.addendum)).toBeCloseTo(TABLE.clearance, 9);
    expect(size.source).toContain('ASA B6.1');
    expect(size.source).not.toContain('own factors');
  });

  it('are not those of a module, nor of 20°, unless the table is named', () => {
    const deep = (fields: object): number => {
      const wheel = wheelOf({ teeth: 40, ...fields });
      const { dedendum, module } = sizeOfWheel(wheel, movementOf(wheel));
      return dedendum / module;
    };
    expect(deep({ size: { module: 1 }, pressureAngle: 14.5 })).toBeCloseTo(1.25, 9);
    expect(deep({ size: { diametralPitch: 16 } })).toBeCloseTo(1.25, 9);
    expect(deep({ size: { module: 1 }, table: '14½° full depth' })).toBeCloseTo(TABLE.dedendum, 9);
    expect(deep({ size: { diametralPitch: 16 }, pressureAngle: 14.5, dedendum: 1.3 })).toBeCloseTo(1.3, 9);
  });
});
