/** The true form of any wheel's teeth: sizes turned into flanks, root corners and tips. */
import { isOfPins, type Movement, type Wheel } from '../../movement/schema.ts';
import { sizeOfWheel } from '../sizes/sizeOfWheel.ts';
import type { WheelSize } from '../sizes/wheelSize.ts';
import type { ToothDoubt } from '../toothFaults.ts';
import { rootBetween } from './bracketed.ts';
import { kindOf } from './kinds/formKinds.ts';
import { halfAngleAt, type NoTeeth, type ToothForm } from './toothForm.ts';

/**
 * Teeth of a wheel, or why there can be none. The tip is cut back to where the flanks meet when the blank would reach
 * beyond (and says so in `doubts`).
 */
export function formOfWheel(wheel: Wheel, movement: Movement): ToothForm | NoTeeth {
  const size = sizeOfWheel(wheel, movement);
  const none = impossible(wheel, size);
  if (none) return none;
  const flanks = kindOf(wheel).flanks(wheel, size, movement);
  if (flanks.kind === 'none') return flanks;
  const first = flanks.pieces[0];
  const last = flanks.pieces.at(-1);
  if (!first || !last) return { kind: 'none', why: { kind: 'noFlanks', wheel: wheel.id } };
  const [tip, root] = wheel.internal ? [first.from, last.to] : [last.to, first.from];
  const form: ToothForm = {
    kind: 'teeth',
    teeth: wheel.teeth,
    internal: wheel.internal,
    module: size.module,
    pitchRadius: size.pitchRadius,
    tip,
    root,
    open: isOfPins(wheel),
    pieces: flanks.pieces,
    doubts: [...(size.doubts ?? []), ...flanks.doubts, ...bodyDoubts(wheel, size)],
  };
  const formed = form.open ? form : cutToPoint(form, wheel);
  return formed.kind === 'teeth' && !isSound(formed) ? unformable(wheel) : formed;
}

/** Sizes from which no tooth can be made. */
function impossible(wheel: Wheel, size: WheelSize): NoTeeth | undefined {
  const pitch = (2 * Math.PI * size.pitchRadius) / wheel.teeth;
  // Pins touch before their arcs fill the pitch, and are told as pins.
  if (size.thickness >= pitch && !isOfPins(wheel)) {
    return { kind: 'none', why: { kind: 'noSpace', wheel: wheel.id, thickness: size.thickness, pitch } };
  }
  const side = wheel.internal ? -1 : 1;
  if (side * (size.tipRadius - size.rootRadius) > 1e-6 * size.module && size.tipRadius > 0) return undefined;
  const [tipDiameter, rootDiameter] = [2 * size.tipRadius, 2 * size.rootRadius];
  return { kind: 'none', why: { kind: 'noHeight', wheel: wheel.id, tipDiameter, rootDiameter } };
}

/** Addenda that are gone, and rings too thin for their teeth. */
function bodyDoubts(wheel: Wheel, size: WheelSize): ToothDoubt[] {
  const doubts: ToothDoubt[] = [];
  // The addendum of a shifted involute tooth is reckoned from where its rack rolls.
  const shift = size.baseRadius === undefined ? 0 : wheel.profileShift * size.module;
  const below = shift - size.addendum;
  if (below >= -1e-9 * size.module) doubts.push({ kind: 'tipsBelowPitch', wheel: wheel.id, below: Math.max(0, below) });
  if (wheel.internal && wheel.outerDiameter !== undefined) {
    const rim = wheel.outerDiameter / 2 - size.rootRadius;
    const least = Math.abs(size.tipRadius - size.rootRadius);
    const outerDiameter = 2 * (size.rootRadius + least);
    if (rim < least) doubts.push({ kind: 'ringThin', wheel: wheel.id, rim, least, outerDiameter });
  }
  return doubts;
}

/** A tooth whose flanks meet below its tip ends there. */
function cutToPoint(form: ToothForm, wheel: Wheel): ToothForm | NoTeeth {
  // Points meant by the table meet here to rounding.
  if (halfAngleAt(form, form.tip) >= -1e-9) return form;
  if (halfAngleAt(form, form.pitchRadius) <= 0) {
    return { kind: 'none', why: { kind: 'nothingLeft', wheel: wheel.id } };
  }
  const point = rootBetween((radius) => halfAngleAt(form, radius), form.pitchRadius, form.tip);
  const pieces = form.pieces
    .filter((piece) => (form.internal ? piece.to > point : piece.from < point))
    .map((piece) =>
      form.internal ? { ...piece, from: Math.max(piece.from, point) } : { ...piece, to: Math.min(piece.to, point) },
    );
  const pointed: ToothDoubt = { kind: 'pointed', wheel: wheel.id, pointDiameter: 2 * point, tipDiameter: 2 * form.tip };
  const isKnown = form.doubts.some(({ kind }) => POINTED.has(kind));
  return { ...form, tip: point, pieces, doubts: isKnown ? form.doubts : [...form.doubts, pointed] };
}

/** Doubts that say already that the teeth come to a point. */
const POINTED: ReadonlySet<ToothDoubt['kind']> = new Set(['pointed', 'blankTooLarge', 'pointedTriangles']);

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
  const { id, teeth, internal } = wheel;
  return { kind: 'none', why: { kind: 'unsound', wheel: id, teeth, internal } };
}
