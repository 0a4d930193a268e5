/** The true form of any wheel's teeth: sizes turned into flanks, root corners and tips. */
import type { Movement, Wheel } from '../../movement/schema.ts';
import { calledOf } from '../sizes/called.ts';
import { sizeOfWheel } from '../sizes/sizeOfWheel.ts';
import type { WheelSize } from '../sizes/wheelSize.ts';
import { rootBetween } from './bracketed.ts';
import { clockPieces } from './clockTeeth.ts';
import { pinPiece } from './flankCurves.ts';
import { involutePieces } from './involuteTeeth.ts';
import { type Flanks, halfAngleAt, type NoTeeth, type ToothForm } from './toothForm.ts';
import { trianglePieces } from './triangularTeeth.ts';

/**
 * Teeth of a wheel, or why there can be none. The tip is cut back to where the flanks meet when the blank would reach
 * beyond (and says so in `warns`).
 */
export function formOfWheel(wheel: Wheel, movement: Movement): ToothForm | NoTeeth {
  const size = sizeOfWheel(wheel, movement);
  const none = impossible(wheel, size);
  if (none) return none;
  const flanks = flanksOf(wheel, size, movement);
  if (flanks.kind === 'none') return flanks;
  const first = flanks.pieces[0];
  const last = flanks.pieces.at(-1);
  if (!first || !last)
    return { kind: 'none', says: `${calledOf(wheel)} has no flanks at all: its tips stand at its roots.` };
  const [tip, root] = wheel.internal ? [first.from, last.to] : [last.to, first.from];
  const form: ToothForm = {
    kind: 'teeth',
    teeth: wheel.teeth,
    internal: wheel.internal,
    module: size.module,
    pitchRadius: size.pitchRadius,
    tip,
    root,
    open: wheel.form === 'lantern',
    pieces: flanks.pieces,
    warns: [...(size.warns ?? []), ...flanks.warns],
  };
  const formed = form.open ? form : cutToPoint(form, wheel);
  return formed.kind === 'teeth' && !isSound(formed) ? unformable(wheel) : formed;
}

function flanksOf(wheel: Wheel, size: WheelSize, movement: Movement): Flanks {
  switch (wheel.form) {
    case 'involute':
      return involutePieces(wheel, size, movement);
    case 'cycloidal':
      return clockPieces(wheel, size, movement);
    case 'triangular':
      return trianglePieces(wheel, size);
    case 'lantern':
      return { kind: 'flanks', pieces: [pinPiece(size.pitchRadius, size.addendum)], warns: [] };
  }
}

/** Sizes from which no tooth can be made. */
function impossible(wheel: Wheel, size: WheelSize): NoTeeth | undefined {
  const pitch = (2 * Math.PI * size.pitchRadius) / wheel.teeth;
  const name = calledOf(wheel);
  if (size.thickness >= pitch) {
    const says = `${name}: teeth ${size.thickness.toFixed(3)} mm thick leave no space in a pitch of ${pitch.toFixed(3)} mm; a usual thickness is ${(pitch / 2).toFixed(3)} mm.`;
    return { kind: 'none', says };
  }
  const side = wheel.internal ? -1 : 1;
  if (side * (size.tipRadius - size.rootRadius) > 1e-6 * size.module && size.tipRadius > 0) return undefined;
  const says = `${name}: a tip diameter of ${(2 * size.tipRadius).toFixed(3)} mm does not reach past the roots at ${(2 * size.rootRadius).toFixed(3)} mm: there is no tooth. Check the tip diameter as cut, the addendum and the dedendum.`;
  return { kind: 'none', says };
}

/** A tooth whose flanks meet below its tip ends there. */
function cutToPoint(form: ToothForm, wheel: Wheel): ToothForm | NoTeeth {
  // Points meant by the table meet here to rounding.
  if (halfAngleAt(form, form.tip) >= -1e-9) return form;
  if (halfAngleAt(form, form.pitchRadius) <= 0) {
    const says = `${calledOf(wheel)}: nothing is left of the teeth on the pitch circle; make them thicker or with a positive profile shift.`;
    return { kind: 'none', says };
  }
  const point = rootBetween((radius) => halfAngleAt(form, radius), form.pitchRadius, form.tip);
  const pieces = form.pieces
    .filter((piece) => (form.internal ? piece.to > point : piece.from < point))
    .map((piece) =>
      form.internal ? { ...piece, from: Math.max(piece.from, point) } : { ...piece, to: Math.min(piece.to, point) },
    );
  const says = `The teeth of ${calledOf(wheel)} come to a point at diameter ${(2 * point).toFixed(2)}, before the tip diameter ${(2 * form.tip).toFixed(2)}.`;
  const known = form.warns.some((text) => text.includes('come to a point'));
  return { ...form, tip: point, pieces, warns: known ? form.warns : [...form.warns, says] };
}

/** Are the pieces without gaps, finite, and within the pitch everywhere? Proportions beyond any table can break this. */
function isSound(form: ToothForm): boolean {
  const step = Math.PI / form.teeth + SLACK;
  return form.pieces.every((piece, i) => {
    const before = form.pieces[i - 1];
    if (!(piece.to > piece.from) || !(piece.from >= 0)) return false;
    if (before && Math.abs(before.to - piece.from) > SLACK * piece.from) return false;
    return [0, 0.25, 0.5, 0.75, 1].every((t) => {
      const half = piece.half(piece.from + t * (piece.to - piece.from));
      return half >= -SLACK && half <= step;
    });
  });
}

/** Rounding of angles and relative radii that still counts as sound. */
const SLACK = 1e-7;

function unformable(wheel: Wheel): NoTeeth {
  const says = `${calledOf(wheel)}: no sound tooth can be formed from ${wheel.teeth} ${wheel.internal ? 'inside ' : ''}teeth with these factors; go back to the usual addendum, dedendum, thickness and angle, or take more teeth.`;
  return { kind: 'none', says };
}
