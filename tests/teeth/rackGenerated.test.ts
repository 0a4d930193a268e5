/**
 * Involute teeth are what the standard rack leaves: every point of the rack's tooth is swept through the blank while its
 * line rolls on the pitch circle, and at each radius the widest cut must be the space that the form shows.
 */
import { describe, expect, it } from 'vitest';
import { formOfWheel, halfAngleAt } from '../../solver/teeth/index.ts';
import { movementOf, wheelOf } from './makeWheels.ts';

/** Points of one side of the rack's tooth for module 1: straight flank, round corner, half of the flat tip. */
function rackSide(
  alpha: number,
  shift: number,
  dedendum: number,
  corner: number,
): readonly (readonly [number, number])[] {
  // Depth below the rolling line, and sideways from the middle of the rack's tooth; thickness of the wheel π/2 + 2x tan α.
  const halfSpace = (Math.PI - (Math.PI / 2 + 2 * shift * Math.tan(alpha))) / 2;
  const depth = dedendum - shift;
  const centreDepth = depth - corner;
  const centreSide = halfSpace - centreDepth * Math.tan(alpha) - corner / Math.cos(alpha);
  const points: [number, number][] = [];
  const last = centreDepth + corner * Math.sin(alpha);
  for (let i = 0; i <= 20000; i++) {
    const d = -2.5 + ((last + 2.5) * i) / 20000;
    points.push([halfSpace - d * Math.tan(alpha), d]);
  }
  for (let i = 0; i <= 20000; i++) {
    const gamma = alpha + ((Math.PI / 2 - alpha) * i) / 20000;
    points.push([centreSide + corner * Math.cos(gamma), centreDepth + corner * Math.sin(gamma)]);
  }
  return points;
}

/** Half of the space's angle at a radius: the greatest that any point of the rack reaches there, at any moment. */
function widestCut(rack: readonly (readonly [number, number])[], pitchRadius: number, radius: number): number {
  let widest = 0;
  for (const [side, depth] of rack) {
    const across = radius * radius - (pitchRadius - depth) ** 2;
    if (across < 0) continue;
    for (const sign of [1, -1]) {
      const y = sign * Math.sqrt(across);
      // The rack has moved y − side when its point stands there, and the wheel has turned by as much.
      widest = Math.max(widest, Math.atan2(y, pitchRadius - depth) - (y - side) / pitchRadius);
    }
  }
  return widest;
}

describe('rack-generated teeth', () => {
  it.each([
    [8, 0, 'ISO 53 A', 1.25, 0.38],
    [8, 0.3, 'ISO 53 B', 1.25, 0.3],
    [12, 0, 'ISO 53 D', 1.4, 0.39],
    [17, -0.2, 'ISO 53 A', 1.25, 0.38],
    [20, 0.5, 'ISO 53 C', 1.25, 0.25],
    [60, 0, 'ISO 53 A', 1.25, 0.38],
  ])('%d teeth, shift %f, %s', (teeth, profileShift, table, dedendum, corner) => {
    const wheel = wheelOf({ teeth, profileShift, table });
    const form = formOfWheel(wheel, movementOf(wheel));
    if (form.kind !== 'teeth') throw new Error(form.why.kind);
    const alpha = (20 * Math.PI) / 180;
    // ISO 53 rounds A and D print rounded radii; no round may be wider than half of the rack's tip allows.
    const widest = (Math.PI / 4 - dedendum * Math.tan(alpha)) / Math.tan((Math.PI / 2 - alpha) / 2);
    const rack = rackSide(alpha, profileShift, dedendum, Math.min(corner, widest));
    const radii = Array.from({ length: 17 }, (_, i) => form.root + 1e-4 + ((form.tip - form.root - 2e-4) * i) / 16);
    for (const radius of radii) {
      const space = Math.PI / teeth - halfAngleAt(form, radius);
      expect(Math.abs(space - widestCut(rack, teeth / 2, radius)), `at radius ${radius}`).toBeLessThan(2e-6);
    }
  });
});
