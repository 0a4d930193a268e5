/** Lantern pinions: round pins between two discs. */
import { FORMS, isOfPins, type Wheel } from '../../../movement/schema.ts';
import type { Mismatch } from '../../pairFaults.ts';
import { lanternSize } from '../../sizes/lanternSize.ts';
import type { WheelSize } from '../../sizes/wheelSize.ts';
import { pinPiece } from '../flankCurves.ts';
import type { Flanks } from '../toothForm.ts';
import { CLOCK_SHAKE, type FormKind } from './formKind.ts';

/** Pins run with anything that has flanks of its own but those that a rack made. */
function mismatch(own: Wheel, mate: Wheel): Mismatch | undefined {
  const wheels = [own.id, mate.id] as const;
  if (isOfPins(mate)) return { kind: 'twoLanterns', wheels };
  return mate.form === FORMS.involute.name ? { kind: 'involuteOnPins', wheels } : undefined;
}

/** Pins that stand free of each other. */
function pins(wheel: Wheel, { pitchRadius, addendum: radius }: WheelSize): Flanks {
  const apart = 2 * pitchRadius * Math.sin(Math.PI / wheel.teeth);
  if (2 * radius >= apart) {
    return { kind: 'none', why: { kind: 'trundlesTouch', wheel: wheel.id, trundleDiameter: 2 * radius, apart } };
  }
  return { kind: 'flanks', pieces: [pinPiece(pitchRadius, radius)], doubts: [] };
}

/** The trundle circle is the pitch circle; nothing is cut. */
export const lanternKind: FormKind = {
  size: lanternSize,
  flanks: pins,
  cutter: () => ({ kind: 'trundles' }),
  meetsOthers: true,
  mismatch,
  shake: CLOCK_SHAKE,
  remarks: { engaging: true, corners: true },
};
