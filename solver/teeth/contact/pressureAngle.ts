/** Direction of the push at a touching point. */
import { halfAngleAt, type ToothForm } from '../forms/toothForm.ts';
import type { Touch } from './driveOfTooth.ts';

/** Where two flanks touch, and in which direction they push, radians. */
export interface TouchingPoint {
  /** Along the line of centres from the driver's axis, and across it (positive the way the teeth go), mm. */
  readonly x: number;
  readonly y: number;
  readonly pressureAngle: number;
}

/** Step of the differences that give a slope, × module: truncation and rounding are both near 1e-10 there. */
const STEP = 3e-6;

/** Slope dθ/dr of a form's half-angle, by three-point differences that stay within the piece. */
function slopeAt(form: ToothForm, radius: number): number {
  const piece = form.pieces.find(({ to }) => radius <= to) ?? form.pieces.at(-1);
  if (!piece) return 0;
  const step = Math.min(STEP * form.module, (piece.to - piece.from) / 4);
  const at = Math.min(piece.to, Math.max(piece.from, radius));
  const f = (steps: number) => piece.half(at + steps * step);
  if (at - step < piece.from) return (-3 * f(0) + 4 * f(1) - f(2)) / (2 * step);
  if (at + step > piece.to) return (3 * f(0) - 4 * f(-1) + f(-2)) / (2 * step);
  return (f(1) - f(-1)) / (2 * step);
}

/**
 * Place of the touching point at (φ, radius) of the driver's leading flank, and the pressure angle there: between the
 * line of centres and the tangent of the flank that touches with its side (the driven one when the driver's corner touches).
 */
export function pressureAngleAt(
  driver: ToothForm,
  driven: ToothForm,
  distance: number,
  phi: number,
  radius: number,
  touch: Touch,
): TouchingPoint {
  const angle = phi + halfAngleAt(driver, radius);
  const [x, y] = [radius * Math.cos(angle), radius * Math.sin(angle)];
  if (touch !== 'driverTip') {
    const turn = radius * slopeAt(driver, radius);
    const tangent = [Math.cos(angle) - turn * Math.sin(angle), Math.sin(angle) + turn * Math.cos(angle)] as const;
    return { x, y, pressureAngle: Math.atan(Math.abs(tangent[1] / tangent[0])) };
  }
  const dx = driven.internal ? x + distance : driver.internal ? x - distance : distance - x;
  const drivenRadius = Math.hypot(dx, y);
  const b = Math.atan2(y, dx);
  // The driven tooth's near edge lies at β − half₂(r₂).
  const turn = -drivenRadius * slopeAt(driven, drivenRadius);
  const tangent = [Math.cos(b) - turn * Math.sin(b), Math.sin(b) + turn * Math.cos(b)] as const;
  return { x, y, pressureAngle: Math.atan(Math.abs(tangent[1] / tangent[0])) };
}
