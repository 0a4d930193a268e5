/**
 * Flank of a wheel that drives a lantern pinion: the envelope of the pin above the pitch circle; beside it the pin
 * itself, standing at the line of centres; below it a radius.
 */
import { type PinPair, pinFaceAt, pinHalfAngle } from '../sizes/pinEnvelope.ts';
import { rootBetween } from './bracketed.ts';
import { openingAt } from './flankCurves.ts';
import type { FlankPiece } from './toothForm.ts';

/** Steps of the table that stands for the envelope. */
const STEPS = 256;

/** Faces and flank of a wheel tooth for round pins; `half`: half-angle of the tooth on the pitch circle. Without root. */
export function pinFacePieces(pair: PinPair, half: number, tip: number): readonly FlankPiece[] {
  const wanted = half + pinHalfAngle(pair);
  // The pin is broadest, seen from the wheel's centre, where its tangent passes through the centre.
  const broadest = Math.sqrt(Math.max(0, (pair.wheel - pair.pin) * (pair.wheel + pair.pin)));
  const standing = (radius: number) => wanted - openingAt(Math.max(radius, broadest), pair.wheel, pair.pin);
  const start = envelopeStart(pair, standing, wanted, tip);
  const radial: FlankPiece = {
    kind: 'flank',
    from: 0,
    to: Math.min(broadest, start.radius),
    half: () => standing(broadest),
    straight: true,
  };
  const beside: FlankPiece = {
    kind: 'flank',
    from: broadest,
    to: Math.min(tip, start.radius),
    half: standing,
    circle: { x: pair.wheel * Math.cos(wanted), y: pair.wheel * Math.sin(wanted), radius: pair.pin },
  };
  if (start.radius >= tip) return [radial, beside];
  const envelope = envelopeHalf(pair, wanted, start.phi, tip);
  const face: FlankPiece = { kind: 'face', from: start.radius, to: tip, half: envelope };
  return start.radius > broadest ? [radial, beside, face] : [radial, face];
}

/** Roll at which the envelope reaches a radius, searched outwards from `from`. */
function rollBeyond(pair: PinPair, radius: number, from: number): number {
  let high = from + 0.01;
  while (pinFaceAt(pair, high).radius < radius && high < from + Math.PI) high += 0.01 + 0.2 * (high - from);
  return rootBetween((phi) => pinFaceAt(pair, phi).radius - radius, from, high);
}

/** Where the envelope leaves the standing pin: its first part is a swallow's tail inside the swept pin. */
function envelopeStart(pair: PinPair, standing: (r: number) => number, wanted: number, tip: number) {
  // Lowest point of the tail: the cusp.
  let low = 0;
  const step = 0.002;
  while (pinFaceAt(pair, low + step).radius < pinFaceAt(pair, low).radius && low < Math.PI) low += step;
  const last = rollBeyond(pair, tip, low);
  const over = (phi: number) => {
    const { radius, angle } = pinFaceAt(pair, phi);
    return wanted - angle - standing(radius);
  };
  const phi = over(low) > 0 && over(last) < 0 ? rootBetween(over, low, last) : low;
  return { phi, radius: pinFaceAt(pair, phi).radius };
}

/** The envelope as cubics in radius with its true slopes (Hermite): right to about 1e-11 rad at this many steps. */
function envelopeHalf(pair: PinPair, wanted: number, from: number, tip: number): (radius: number) => number {
  const last = rollBeyond(pair, tip, from);
  const radii = new Float64Array(STEPS + 1);
  const angles = new Float64Array(STEPS + 1);
  const slopes = new Float64Array(STEPS + 1);
  const small = 1e-6 * (last - from);
  for (let i = 0; i <= STEPS; i++) {
    const phi = from + ((last - from) * i) / STEPS;
    const at = pinFaceAt(pair, phi);
    const [a, b] = [pinFaceAt(pair, phi - small), pinFaceAt(pair, phi + small)];
    radii[i] = at.radius;
    angles[i] = at.angle;
    slopes[i] = (b.angle - a.angle) / (b.radius - a.radius);
  }
  return (radius) => {
    let [low, high] = [0, STEPS];
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      // Indices stay within 0 … STEPS, here and below.
      if ((radii[middle] as number) <= radius) low = middle;
      else high = middle;
    }
    const width = (radii[high] as number) - (radii[low] as number);
    const t = Math.max(0, Math.min(1, (radius - (radii[low] as number)) / width));
    const rise = t * t * (3 - 2 * t);
    const bend = width * t * (1 - t) * ((1 - t) * (slopes[low] as number) - t * (slopes[high] as number));
    return wanted - ((angles[low] as number) + rise * ((angles[high] as number) - (angles[low] as number)) + bend);
  };
}
