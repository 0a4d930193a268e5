/** Sizes of wheels with triangular teeth that fill their pitch at the root, as the ancient instruments have them. */
import type { Wheel } from '../../movement/schema.ts';
import { moduleOf } from './moduleOf.ts';
import { apexRadius, fillingRoot } from './triangle.ts';
import type { WheelSize } from './wheelSize.ts';

/** Included angle of the teeth, degrees: equilateral triangles (al-Biruni, c. 1000, after Price 1959). */
export const USUAL_TOOTH_ANGLE = 60;
/**
 * Thickness on the pitch circle × module: our own assumption, a little under half the pitch, so that straight flanks,
 * which are not conjugate, have the play they need.
 */
export const USUAL_TRIANGLE_THICKNESS = 1.35;

/** Half of the included angle of a triangular wheel's teeth, radians. */
export const halfToothAngle = (wheel: Wheel): number => ((wheel.toothAngle ?? USUAL_TOOTH_ANGLE) * Math.PI) / 360;

/** The triangle itself: apex and the root where neighbours meet, mm, and half of its included angle, radians. */
export function triangleOf(wheel: Wheel): { readonly apex: number; readonly root: number; readonly g: number } {
  const module = moduleOf(wheel.size);
  const pitchRadius = (module * wheel.teeth) / 2;
  const thickness = wheel.toothThickness ?? (wheel.thicknessFactor ?? USUAL_TRIANGLE_THICKNESS) * module;
  const g = halfToothAngle(wheel);
  const half = thickness / (2 * pitchRadius);
  if (wheel.internal) return { ...ringTriangle(pitchRadius, half, g, wheel.teeth), g };
  const apex = apexRadius(pitchRadius, half, g);
  return { apex, root: fillingRoot(apex, wheel.teeth, g), g };
}

/** Circles and teeth of a triangular wheel; a ring's teeth are the same triangles pointing inwards. */
export function triangularSize(wheel: Wheel): WheelSize {
  const module = moduleOf(wheel.size);
  const pitchRadius = (module * wheel.teeth) / 2;
  const thickness = wheel.toothThickness ?? (wheel.thicknessFactor ?? USUAL_TRIANGLE_THICKNESS) * module;
  const { apex, root } = triangleOf(wheel);
  const side = wheel.internal ? -1 : 1;
  const wanted = wheel.addendum === undefined ? apex : pitchRadius + side * wheel.addendum * module;
  const cut = wheel.tipDiameter === undefined ? wanted : wheel.tipDiameter / 2;
  const tipRadius = side * cut > side * apex ? apex : cut;
  const rootRadius = wheel.dedendum === undefined ? root : pitchRadius - side * wheel.dedendum * module;
  const asCut = wheel.tipDiameter !== undefined || wheel.toothThickness !== undefined;
  const size: WheelSize = {
    module,
    pitchRadius,
    tipRadius,
    rootRadius: Math.max(0, rootRadius),
    addendum: side * (tipRadius - pitchRadius),
    dedendum: side * (pitchRadius - rootRadius),
    thickness,
    source: `${asCut ? 'as cut; else ' : ''}triangular teeth of ${wheel.toothAngle ?? USUAL_TOOTH_ANGLE}°`,
  };
  if (side * (cut - apex) <= 1e-9 * apex) return size;
  const [pointDiameter, tipDiameter] = [2 * apex, 2 * cut];
  return { ...size, doubts: [{ kind: 'pointedTriangles', wheel: wheel.id, pointDiameter, tipDiameter }] };
}

/** Apex and filling root of triangles that point to the centre of a ring. */
function ringTriangle(pitchRadius: number, half: number, g: number, teeth: number): { apex: number; root: number } {
  // Flank point on the pitch circle; the flank climbs outwards from the apex: x = A + y / tan g.
  const apex = pitchRadius * (Math.cos(half) - Math.sin(half) / Math.tan(g));
  const step = Math.PI / teeth;
  return { apex, root: apex / (Math.cos(step) - Math.sin(step) / Math.tan(g)) };
}
