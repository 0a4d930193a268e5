/** Flanks of involute wheels: rack-generated root, undercut where the rack bites, and rings with rounded corners. */
import type { Movement, Wheel } from '../../movement/schema.ts';
import { involute } from '../sizes/involuteFunction.ts';
import { rackOf } from '../sizes/involuteSize.ts';
import type { WheelSize } from '../sizes/wheelSize.ts';
import type { ToothDoubt } from '../toothFaults.ts';
import { rootBetween } from './bracketed.ts';
import { cornerFillet } from './cornerFillet.ts';
import { involuteAt, involutePiece, ringInvolutePiece } from './flankCurves.ts';
import type { FlankPiece, Flanks, NoTeeth } from './toothForm.ts';
import { type Trochoid, trochoidOf } from './trochoid.ts';

/** Waist of an undercut tooth, × module, below which it is called cut off: our own limit (a hair of metal). */
const LEAST_WAIST = 0.05;

/** Pieces of an involute wheel's or ring's flank, or why there can be none. */
export function involutePieces(wheel: Wheel, size: WheelSize, movement: Movement): Flanks {
  return wheel.internal ? ringPieces(wheel, size, movement) : externalPieces(wheel, size, movement);
}

function externalPieces(wheel: Wheel, size: WheelSize, movement: Movement): Flanks {
  const rack = rackOf(wheel, movement);
  const base = size.pitchRadius * Math.cos(rack.alpha);
  const atBase = size.thickness / (2 * size.pitchRadius) + involute(rack.alpha);
  const { teeth } = wheel;
  const trochoid = trochoidOf({
    pitchRadius: size.pitchRadius,
    teeth,
    alpha: rack.alpha,
    thickness: size.thickness,
    depth: size.dedendum,
    corner: rack.fillet * size.module,
  });
  if (trochoid.root < 0.05 * size.pitchRadius) {
    return { kind: 'none', why: { kind: 'spacesToCentre', wheel: wheel.id, depth: size.dedendum } };
  }
  const join = joinOf(trochoid, base, atBase);
  const cutOff = waistFault(wheel, size, trochoid, Math.min(join, size.tipRadius));
  if (cutOff) return cutOff;
  if (join >= size.tipRadius) {
    const [rootCurveDiameter, tipDiameter] = [2 * join, 2 * size.tipRadius];
    return { kind: 'none', why: { kind: 'flankCutAway', wheel: wheel.id, teeth, rootCurveDiameter, tipDiameter } };
  }
  const fillet: FlankPiece = { kind: 'fillet', from: trochoid.root, to: join, half: trochoid.half };
  const flank = involutePiece(base, atBase, join, size.tipRadius);
  const doubts = undercutDoubts(wheel, size, rack.alpha, trochoid);
  return { kind: 'flanks', pieces: join > trochoid.root ? [fillet, flank] : [flank], doubts };
}

/** Shift short of the limit that is let pass, × module: 17 teeth at 20° (0.006) are cut without a word by habit of the trade. */
const HARMLESS_UNDERCUT = 0.01;

function undercutDoubts(wheel: Wheel, { module }: WheelSize, alpha: number, { undercutBy }: Trochoid): ToothDoubt[] {
  const missing = undercutBy / module;
  if (missing <= HARMLESS_UNDERCUT) return [];
  const shift = wheel.profileShift + missing;
  return [{ kind: 'undercut', wheel: wheel.id, teeth: wheel.teeth, pressureAngle: alpha, shift }];
}

/** Radius where the generated root curve gives way to the involute. */
function joinOf(trochoid: Trochoid, base: number, atBase: number): number {
  if (!(trochoid.undercutBy > 0)) return Math.max(trochoid.end, base, trochoid.root);
  const over = (radius: number) => atBase - involuteAt(radius, base) - trochoid.half(radius);
  const low = Math.max(base, trochoid.root);
  return over(low) > 0 && over(trochoid.end) < 0 ? rootBetween(over, low, trochoid.end) : Math.max(low, trochoid.end);
}

function waistFault(wheel: Wheel, size: WheelSize, trochoid: Trochoid, to: number): NoTeeth | undefined {
  const steps = 48;
  for (let i = 0; i <= steps; i++) {
    const radius = trochoid.root + ((to - trochoid.root) * i) / steps;
    if (2 * radius * trochoid.half(radius) >= LEAST_WAIST * size.module) continue;
    const { id, teeth } = wheel;
    return { kind: 'none', why: { kind: 'undercutThrough', wheel: id, teeth, diameter: 2 * radius } };
  }
  return undefined;
}

/** A ring's teeth; its root corner is an arc, since no rack can generate a ring (the corner radius is the rack's). */
function ringPieces(wheel: Wheel, size: WheelSize, movement: Movement): Flanks {
  const rack = rackOf(wheel, movement);
  const base = size.pitchRadius * Math.cos(rack.alpha);
  const atBase = size.thickness / (2 * size.pitchRadius) - involute(rack.alpha);
  const doubts: ToothDoubt[] = [];
  let tip = size.tipRadius;
  if (tip < base) {
    doubts.push({ kind: 'ringTipsInBase', wheel: wheel.id, baseDiameter: 2 * base });
    tip = base;
  }
  const step = Math.PI / wheel.teeth;
  const half = (radius: number) => atBase + involuteAt(radius, base);
  const root =
    half(size.rootRadius) < step ? size.rootRadius : rootBetween((r) => half(r) - step, tip, size.rootRadius);
  if (!(root > tip)) return { kind: 'none', why: { kind: 'ringFilled', wheel: wheel.id } };
  const corner = cornerFillet(half, root, rack.fillet * size.module, Math.max(tip, (tip + root) / 2), step, true);
  const flank = ringInvolutePiece(base, atBase, tip, corner?.touches ?? root);
  return { kind: 'flanks', pieces: corner ? [flank, corner.piece] : [flank], doubts };
}
