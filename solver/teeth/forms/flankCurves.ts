/** The curves that flanks are made of, each as half-angle of the tooth against radius. */
import { epicycloidAt, rollAtRadius } from '../sizes/epicycloid.ts';
import { triangleHalfAngle } from '../sizes/triangle.ts';
import type { FlankPiece } from './toothForm.ts';

type Kind = FlankPiece['kind'];

/** Half of the opening angle, seen from the origin, between a circle's centre and where the circle meets `radius`. */
export function openingAt(radius: number, centreRadius: number, circle: number): number {
  // Half-angle form of the cosine rule: keeps its digits where the circle is just reached.
  const s = (circle - (radius - centreRadius)) * (circle + (radius - centreRadius));
  return 2 * Math.asin(Math.min(1, Math.sqrt(Math.max(0, s) / (4 * radius * centreRadius))));
}

/** inv of the pressure angle at a radius ≥ base. */
export function involuteAt(radius: number, base: number): number {
  const t = Math.sqrt(Math.max(0, (radius - base) * (radius + base))) / base;
  return t - Math.atan(t);
}

/** Involute flank of an external tooth whose half-angle would be `atBase` on the base circle. */
export function involutePiece(base: number, atBase: number, from: number, to: number): FlankPiece {
  return { kind: 'face', from, to, half: (radius) => atBase - involuteAt(radius, base) };
}

/** Involute flank of a ring's tooth (hollow: it thickens outwards). */
export function ringInvolutePiece(base: number, atBase: number, from: number, to: number): FlankPiece {
  return { kind: 'face', from, to, half: (radius) => atBase + involuteAt(radius, base) };
}

/** Flank along a radius. */
export function radialPiece(half: number, from: number, to: number): FlankPiece {
  return { kind: 'flank', from, to, half: () => half, straight: true };
}

/** The epicycloid above the pitch circle, starting there at half-angle `start`. */
export function epicycloidPiece(fixed: number, rolling: number, start: number, to: number): FlankPiece {
  const cycloid = { fixed, rolling };
  const crown = Math.PI * (rolling / fixed);
  return {
    kind: 'face',
    from: fixed,
    to,
    half: (radius) => start - epicycloidAt(cycloid, rollAtRadius(cycloid, radius) ?? crown).angle,
  };
}

/** Straight flank of a triangular tooth: apex on the centre line, `g` half of the included angle. */
export function trianglePiece(apex: number, g: number, internal: boolean, from: number, to: number): FlankPiece {
  const half = internal
    ? (radius: number) => g - Math.asin(Math.min(1, (apex * Math.sin(g)) / radius))
    : (radius: number) => triangleHalfAngle(radius, apex, g);
  return { kind: 'face', from, to, half, straight: true };
}

/** A round pin with its centre on the centre line. */
export function pinPiece(centre: number, pin: number): FlankPiece {
  return {
    kind: 'pin',
    from: centre - pin,
    to: centre + pin,
    half: (radius) => openingAt(radius, centre, pin),
    circle: { x: centre, y: 0, radius: pin },
  };
}

/**
 * A flank on a circle given by its centre (tooth frame: centre line on +x). `bulges`: the tooth's flank is the far side
 * of the circle, seen from the centre line; otherwise the near side, as in a root corner.
 */
export function circlePiece(
  kind: Kind,
  centre: readonly [number, number],
  radius: number,
  bulges: boolean,
  from: number,
  to: number,
): FlankPiece {
  const centreRadius = Math.hypot(centre[0], centre[1]);
  const at = Math.atan2(centre[1], centre[0]);
  const half = bulges
    ? (r: number) => at + openingAt(r, centreRadius, radius)
    : (r: number) => at - openingAt(r, centreRadius, radius);
  return { kind, from, to, half, circle: { x: centre[0], y: centre[1], radius } };
}
