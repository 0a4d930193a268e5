/**
 * The picture of a pair at its distance: outlines of both wheels, how far each is turned, the path of contact.
 *
 * Millimetres, y up, the driver's axis at the origin and the other axis on +x (a ring about its pinion: on −x). At angle
 * 0 a tooth of the driver stands on the line of centres, in a space of the driven wheel.
 */

import type { Movement, Outline, Wheel } from '../../solver/movement/schema.ts';
import type { ContactOfPair, PairContact } from '../../solver/teeth/index.ts';
import { wheelOutline } from '../../solver/teeth/outlines/index.ts';

/** A wheel of the picture, mm, its loops about its own axis. */
export interface DrawnWheel {
  readonly wheel: Wheel;
  readonly loops: readonly Outline[];
  /** Where its axis stands. */
  readonly x: number;
}

/** Both wheels of a depth side by side. */
export interface PairDrawing {
  readonly driver: DrawnWheel;
  readonly driven: DrawnWheel;
  readonly internal: boolean;
}

/** Outlines of both wheels with a tooth on angle 0; `undefined` where one has no teeth to draw. */
export function pairDrawing(
  driver: Wheel,
  driven: Wheel,
  movement: Movement,
  distance: number,
): PairDrawing | undefined {
  const [a, b] = [driver, driven].map((wheel) => wheelOutline(wheel, movement, { phase: 0 }));
  if (a?.kind !== 'outline' || b?.kind !== 'outline') return undefined;
  // The shroud of a lantern pinion would hide the teeth between its trundles.
  const loops = (drawn: typeof a): readonly Outline[] => {
    const isLantern = drawn.loops.some(({ role }) => role === 'pin');
    return drawn.loops.filter(({ role }) => !isLantern || role !== 'body').map(({ shape }) => shape as Outline); // same shape, other room
  };
  return {
    driver: { wheel: driver, loops: loops(a), x: 0 },
    driven: { wheel: driven, loops: loops(b), x: driven.internal ? -distance : distance },
    internal: driver.internal || driven.internal,
  };
}

/** Operating pitch radii: the distance shared out by the teeth (their difference, in a ring). */
export function operatingRadii(driver: Wheel, driven: Wheel, distance: number): readonly [number, number] {
  const inside = driver.internal || driven.internal;
  const apart = inside ? Math.abs(driver.teeth - driven.teeth) || 1 : driver.teeth + driven.teeth;
  return [(distance * driver.teeth) / apart, (distance * driven.teeth) / apart];
}

/** Value of a curve over one pitch at an angle of the driver, between its samples. */
export function curveAt(contact: PairContact, curve: ArrayLike<number>, angle: number, pitch: number): number {
  const count = contact.curves.driverAngle.length;
  const along = ((((angle % pitch) + pitch) % pitch) / pitch) * count;
  const before = Math.floor(along) % count;
  const after = (before + 1) % count;
  const share = along - Math.floor(along);
  return (curve[before] ?? 0) * (1 - share) + (curve[after] ?? 0) * share;
}

/** How far the driven wheel is turned from its tooth on +x, radians, anticlockwise, with the driver at `angle`. */
export function drivenTurn(drawing: PairDrawing, contact: ContactOfPair, angle: number): number {
  const { teeth: a } = drawing.driver.wheel;
  const { teeth: b } = drawing.driven.wheel;
  const error = contact.kind === 'contact' ? curveAt(contact, contact.curves.error, angle, (2 * Math.PI) / a) : 0;
  const turned = (angle * a) / b + error;
  return drawing.internal ? Math.PI / b + turned : Math.PI + Math.PI / b - turned;
}

/** Where the leading pair touches at an angle of the driver, and the whole path of contact. */
export function contactPointAt(contact: PairContact, angle: number, teeth: number): readonly [number, number] {
  const pitch = (2 * Math.PI) / teeth;
  const count = contact.curves.driverAngle.length;
  const step = Math.round(((((angle % pitch) + pitch) % pitch) / pitch) * count) % count;
  return [contact.curves.pointX[step] ?? 0, contact.curves.pointY[step] ?? 0];
}

/** The path of contact in order along the line across the centres. */
export function contactPathOf({ curves }: PairContact): readonly (readonly [number, number])[] {
  return Array.from(curves.pointX, (x, i): readonly [number, number] => [x, curves.pointY[i] ?? 0]).sort(
    (a, b) => a[1] - b[1],
  );
}
