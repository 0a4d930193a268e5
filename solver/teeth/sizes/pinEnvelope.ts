/**
 * The wheel face that drives a lantern pinion: the curve at one pin radius from the epicycloid that the pin's centre
 * describes on the wheel (the pinion's whole pitch circle rolls on the wheel's). Lengths in one unit of choice.
 * Common practice of the trade; derivation here: the common normal of pin and tooth passes through the pitch point.
 */
import { epicycloidAt } from './epicycloid.ts';

/** A wheel and a lantern pinion, by the radii that decide the wheel's face, mm. */
export interface PinPair {
  /** Pitch radius of the wheel, of the pinion (the trundle circle), and the radius of a pin. */
  readonly wheel: number;
  readonly pinion: number;
  readonly pin: number;
}

/** Angle, about the wheel's centre, from a pin's centre on the pitch circle to where the pin cuts that circle. */
export function pinHalfAngle(pair: PinPair): number {
  return 2 * Math.asin(Math.min(1, pair.pin / (2 * pair.wheel)));
}

/**
 * Point of the face when the pinion's centre has turned by φ past the line of centres, the cusp of the pin's path on
 * +x: polar radius and angle, the angle measured from the path's cusp towards the tooth that pushes (negative side).
 */
export function pinFaceAt(pair: PinPair, phi: number): { readonly radius: number; readonly angle: number } {
  const path = epicycloidAt({ fixed: pair.wheel, rolling: pair.pinion }, phi);
  const centre = [path.radius * Math.cos(path.angle), path.radius * Math.sin(path.angle)] as const;
  // The rolling contact I lies on the fixed circle at φ; the tooth touches the pin on the line from its centre to I.
  const towards = [pair.wheel * Math.cos(phi) - centre[0], pair.wheel * Math.sin(phi) - centre[1]] as const;
  const chord = Math.hypot(towards[0], towards[1]);
  // At the line of centres the chord vanishes; its limit direction is square to the radius, away from the roll.
  const unit = chord > 1e-12 * pair.wheel ? [towards[0] / chord, towards[1] / chord] : [0, 1];
  const x = centre[0] + pair.pin * (unit[0] ?? 0);
  const y = centre[1] + pair.pin * (unit[1] ?? 0);
  return { radius: Math.hypot(x, y), angle: Math.atan2(y, x) };
}

/**
 * Radius at which the two faces of a tooth meet, for a tooth whose thickness on the pitch circle spans `half` to each
 * side of its centre line (radians). The faces run from the pin's place at rest, so the roll at the point solves
 * angle(φ) = half + pinHalfAngle.
 */
export function pointedPinFace(pair: PinPair, half: number): number {
  const wanted = half + pinHalfAngle(pair);
  let low = 0;
  let high = 1e-4;
  while (pinFaceAt(pair, high).angle < wanted && high < 4) {
    low = high;
    high *= 1.5;
  }
  for (let i = 0; i < 100; i++) {
    const middle = (low + high) / 2;
    if (pinFaceAt(pair, middle).angle < wanted) low = middle;
    else high = middle;
  }
  return pinFaceAt(pair, (low + high) / 2).radius;
}
