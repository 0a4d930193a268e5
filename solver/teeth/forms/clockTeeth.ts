/** Flanks of cycloidal wheels and leaves: radial below the pitch circle, arc, epicycloid or ogive above it. */
import type { Movement, Wheel } from '../../movement/schema.ts';
import { cycloidalRow } from '../sizes/cycloidalRow.ts';
import type { ToothRow } from '../sizes/toothRow.ts';
import type { WheelSize } from '../sizes/wheelSize.ts';
import type { ToothDoubt } from '../toothFaults.ts';
import { cornerFillet } from './cornerFillet.ts';
import { circlePiece, epicycloidPiece, radialPiece } from './flankCurves.ts';
import { pinFacePieces } from './pinFace.ts';
import type { FlankPiece, Flanks } from './toothForm.ts';

/** Root corner of clock teeth × module; `round`: a full round where the cutter has one. Tables are silent: our own choice. */
const CORNER = 0.25;
const FULL_ROUND = 10;

/** Pieces of a cycloidal wheel's or leaf's flank from the root corner to the tip. */
export function clockPieces(wheel: Wheel, size: WheelSize, movement: Movement): Flanks {
  const row = cycloidalRow(wheel, movement);
  const half = size.thickness / (2 * size.pitchRadius);
  const faced = facesOf(row, wheel, size, half);
  const upper = faced.pieces;
  const below = upper.find((piece) => piece.straight)?.half(0) ?? half;
  const faces = upper.filter((piece) => !piece.straight);
  const first = faces[wheel.internal ? faces.length - 1 : 0];
  const edge = wheel.internal ? (first?.to ?? size.pitchRadius) : (first?.from ?? size.pitchRadius);
  const round = wheel.table === 'BS 978 round bottom' && row.role === 'wheel';
  const wished = (round ? FULL_ROUND : CORNER) * size.module;
  const step = Math.PI / wheel.teeth;
  const corner = cornerFillet(() => below, size.rootRadius, wished, edge, step, wheel.internal);
  const reach = corner?.touches ?? size.rootRadius;
  const [from, to] = wheel.internal ? [edge, reach] : [reach, edge];
  const radial = to > from ? [radialPiece(below, from, to)] : [];
  const lower = corner ? [corner.piece, ...radial] : radial;
  const pieces = wheel.internal ? [...faces, ...radial, ...(corner ? [corner.piece] : [])] : [...lower, ...faces];
  return { kind: 'flanks', pieces, doubts: faced.doubts };
}

/** The pieces from the pitch circle to the tip; for pins also the radial flank that they ask for. */
function facesOf(
  row: ToothRow,
  wheel: Wheel,
  size: WheelSize,
  half: number,
): { pieces: readonly FlankPiece[]; doubts: readonly ToothDoubt[] } {
  const { face } = row;
  const R = size.pitchRadius;
  const { module, tipRadius: tip } = size;
  const side = wheel.internal ? -1 : 1;
  if (side * (tip - R) <= 0) return { pieces: [], doubts: [] };
  const pieces = (() => {
    switch (face.kind) {
      case 'epicycloid':
        return [limited(epicycloidPiece(R, rollingRadius(face.leaves * module, R, wheel.internal), half, tip), R, tip)];
      case 'pinEnvelope':
        return pinFacePieces({ wheel: R, pinion: (face.pins * module) / 2, pin: face.pinRadius * module }, half, tip);
      case 'ogive':
        return [ogive(R, half, face.radius * module, tip, wheel.internal)];
      case 'arc':
        return [arcThrough(R, half, face.radius * module, R + side * face.apex * module, tip)];
    }
  })();
  return { pieces, doubts: [] };
}

/**
 * Radius of the generating circle, negative where it rolls inside a ring's pitch circle. There a circle of half the
 * ring's radius already traces a straight line, so it is kept a little below that.
 */
const rollingRadius = (mateDiameter: number, R: number, internal: boolean): number =>
  internal ? -Math.min(mateDiameter / 4, 0.45 * R) : mateDiameter / 4;

const limited = (piece: FlankPiece, a: number, b: number): FlankPiece => ({
  ...piece,
  from: Math.min(a, b),
  to: Math.max(a, b),
});

/** Arc that leaves the radial flank without a corner; the tip stands no higher than the arc's own top. */
function ogive(R: number, half: number, radius: number, tip: number, internal: boolean): FlankPiece {
  const centre: readonly [number, number] = [
    R * Math.cos(half) + radius * Math.sin(half),
    R * Math.sin(half) - radius * Math.cos(half),
  ];
  const at = Math.hypot(...centre);
  const top = internal ? Math.max(tip, at - radius) : Math.min(tip, at + radius);
  return circlePiece('face', centre, radius, true, Math.min(R, top), Math.max(R, top));
}

/** Arc of a radius through the flank's point on the pitch circle and a point of the centre line, bulging outwards. */
function arcThrough(R: number, half: number, wished: number, apex: number, tip: number): FlankPiece {
  const start: readonly [number, number] = [R * Math.cos(half), R * Math.sin(half)];
  const [dx, dy] = [apex - start[0], -start[1]];
  const chord = Math.hypot(dx, dy);
  // An arc smaller than half the chord cannot span it; the half circle is the nearest that does.
  const radius = Math.max(wished, (chord / 2) * (1 + 1e-12));
  const away = Math.sqrt(Math.max(0, radius * radius - (chord * chord) / 4));
  // The centre lies on the tooth's own side of the chord: below the flank, towards the pitch point of the centre line.
  const turn = apex > R ? 1 : -1;
  const centre: readonly [number, number] = [
    (start[0] + apex) / 2 + (turn * dy * away) / chord,
    start[1] / 2 - (turn * dx * away) / chord,
  ];
  return limited(circlePiece('face', centre, radius, true, 0, 1), R, tip);
}
