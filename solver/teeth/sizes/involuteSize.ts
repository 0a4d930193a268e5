/** Sizes of involute wheels by ISO 21771 (shift positive where it thickens the tooth, on rings too) and ISO 53. */
import type { Movement, Wheel } from '../../movement/schema.ts';
import type { ToothDoubt } from '../toothFaults.ts';
import { involute, involuteAngle } from './involuteFunction.ts';
import { moduleOf } from './moduleOf.ts';
import { type OwnRow, ownRowOf, sourceOfRow } from './ownTable.ts';
import { BASIC_RACKS, type BasicRack, DIAMETRAL_RACK, RACKS, rackNamed } from './racks.ts';
import type { WheelSize } from './wheelSize.ts';

export const DEGREE = Math.PI / 180;

/** Rack, pressure angle (radians) and factors of an involute wheel, with the wheel's own overrides. */
export interface InvoluteRack {
  readonly alpha: number;
  /** × module, of the rack tooth that makes the wheel's spaces: addendum of the wheel, dedendum, rack tip radius. */
  readonly addendum: number;
  readonly dedendum: number;
  readonly fillet: number;
  /** Tooth thickness on the pitch circle of a wheel without shift, where an own table states one. */
  readonly thickness?: number;
  readonly source: string;
  readonly doubts: readonly ToothDoubt[];
}

const RACK_NAMES = RACKS.map(({ name }) => name);

/** The rack of a wheel that names none: teeth by diametral pitch at 14½° have their own. */
const usualRack = ({ size, pressureAngle }: Wheel): BasicRack | undefined =>
  'diametralPitch' in size && pressureAngle === DIAMETRAL_RACK.pressureAngle ? DIAMETRAL_RACK : BASIC_RACKS[0];

/** The rack that a wheel is cut with. */
export function rackOf(wheel: Wheel, movement: Movement): InvoluteRack {
  const ownRow = ownRowOf(wheel, movement);
  if (ownRow) return ownRack(wheel, ownRow);
  const named = wheel.table === undefined ? usualRack(wheel) : rackNamed(wheel.table);
  const rack: BasicRack | undefined = named ?? usualRack(wheel);
  if (!rack) throw new Error('the table of racks is empty');
  const doubts: ToothDoubt[] = named
    ? []
    : [
        {
          kind: 'unknownTable',
          wheel: wheel.id,
          form: wheel.form,
          table: wheel.table ?? '',
          used: rack.name,
          known: RACK_NAMES,
        },
      ];
  const angle = wheel.pressureAngle ?? rack.pressureAngle;
  const own = wheel.addendum !== undefined || wheel.dedendum !== undefined || angle !== rack.pressureAngle;
  const alpha = angle * DEGREE;
  const dedendum = wheel.dedendum ?? rack.dedendum;
  return {
    alpha,
    addendum: wheel.addendum ?? rack.addendum,
    dedendum,
    fillet: Math.max(0, Math.min(rack.fillet, widestFillet(alpha, dedendum))),
    source: own ? `${rack.source}, own factors` : rack.source,
    doubts,
  };
}

function ownRack(wheel: Wheel, row: OwnRow): InvoluteRack {
  const alpha = (wheel.pressureAngle ?? row.pressureAngle ?? 20) * DEGREE;
  const dedendum = wheel.dedendum ?? row.dedendum;
  return {
    alpha,
    addendum: wheel.addendum ?? row.addendum,
    dedendum,
    fillet: Math.max(0, Math.min(row.fillet ?? 0, widestFillet(alpha, dedendum))),
    ...(row.thickness === undefined ? {} : { thickness: row.thickness }),
    source: sourceOfRow(row),
    doubts: [],
  };
}

/** The round of the rack's tip must fit in half its tooth: largest where both flanks' rounds meet on the centre line. */
const widestFillet = (alpha: number, dedendum: number): number =>
  (Math.PI / 4 - dedendum * Math.tan(alpha)) / Math.tan((Math.PI / 2 - alpha) / 2);

/** Radius at which the two flanks of a tooth meet; for a ring, where they meet inside its tips. `undefined`: nowhere. */
export function pointedRadius(
  baseRadius: number,
  alpha: number,
  halfAngle: number,
  internal: boolean,
): number | undefined {
  const inv = internal ? involute(alpha) - halfAngle : involute(alpha) + halfAngle;
  const at = involuteAngle(inv);
  return at === undefined ? undefined : baseRadius / Math.cos(at);
}

function involuteDoubts(wheel: Wheel, size: WheelSize, rack: InvoluteRack): ToothDoubt[] {
  const doubts = [...rack.doubts];
  const { alpha } = rack;
  const base = size.baseRadius ?? 0;
  const pointed = pointedRadius(base, alpha, size.thickness / (2 * size.pitchRadius), wheel.internal);
  if (!wheel.internal && pointed !== undefined && size.tipRadius > pointed) {
    const [pointDiameter, tipDiameter] = [2 * pointed, 2 * size.tipRadius];
    doubts.push({ kind: 'blankTooLarge', wheel: wheel.id, pointDiameter, tipDiameter });
  }
  return doubts;
}

/** Circles and teeth of an involute wheel. */
export function involuteSize(wheel: Wheel, movement: Movement): WheelSize {
  const module = moduleOf(wheel.size);
  const rack = rackOf(wheel, movement);
  const side = wheel.internal ? -1 : 1;
  const pitchRadius = (module * wheel.teeth) / 2;
  const addendum = module * (rack.addendum + wheel.profileShift);
  const dedendum = module * (rack.dedendum - wheel.profileShift);
  const factor =
    wheel.thicknessFactor ?? (rack.thickness ?? Math.PI / 2) + 2 * wheel.profileShift * Math.tan(rack.alpha);
  const asCut = wheel.tipDiameter !== undefined || wheel.toothThickness !== undefined;
  const tipRadius = wheel.tipDiameter === undefined ? pitchRadius + side * addendum : wheel.tipDiameter / 2;
  const size: WheelSize = {
    module,
    pitchRadius,
    tipRadius,
    rootRadius: Math.max(0, pitchRadius - side * dedendum),
    baseRadius: pitchRadius * Math.cos(rack.alpha),
    addendum: side * (tipRadius - pitchRadius),
    dedendum,
    thickness: wheel.toothThickness ?? factor * module,
    pressureAngle: rack.alpha,
    source: asCut ? `as cut; else ${rack.source}` : rack.source,
  };
  const doubts = involuteDoubts(wheel, size, rack);
  return doubts.length > 0 ? { ...size, doubts } : size;
}
