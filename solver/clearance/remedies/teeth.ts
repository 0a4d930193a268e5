/** Cures of teeth that cannot be made as stated: figures left to form and table, or one that fits. */
import type { WheelId } from '../../movement/ids.ts';
import type { Wheel } from '../../movement/schema.ts';
import type { PlacedMovement } from '../../planting/placed.ts';
import type { ToothTrouble } from '../../teeth/index.ts';
import type { Finding } from '../findings/finding.ts';
import type { Candidate } from './candidate.ts';
import type { ToothField } from './deed.ts';

/** Figures to which a diameter and a shift are given: hundredths of a millimetre, thousandths of a module. */
const HUNDREDTH = 0.01;
const THOUSANDTH = 0.001;

const down = (value: number, to: number): number => Number((Math.floor(value / to + 1e-9) * to).toFixed(6));
const up = (value: number, to: number): number => Number((Math.ceil(value / to - 1e-9) * to).toFixed(6));

/** The wheel without figures of its own in these fields; nothing where it states none of them. */
function leave(wheel: Wheel, fields: readonly ToothField[]): Candidate[] {
  const stated = fields.filter((field) => wheel[field] !== undefined);
  if (stated.length === 0) return [];
  return [
    {
      deed: { kind: 'leaveToForm', wheel: wheel.id, fields: stated },
      edit: { kind: 'change', id: wheel.id, unset: stated },
    },
  ];
}

const give = (wheel: WheelId, field: ToothField, value: number): Candidate => ({
  deed: { kind: 'giveTeethFigure', wheel, field, value },
  edit: { kind: 'change', id: wheel, set: { [field]: value } },
});

const HEIGHTS: readonly ToothField[] = ['tipDiameter', 'addendum', 'dedendum'];
const THICKNESS: readonly ToothField[] = ['toothThickness', 'thicknessFactor'];
const ALL: readonly ToothField[] = [...HEIGHTS, ...THICKNESS, 'pressureAngle', 'toothAngle'];

function curesOf(told: ToothTrouble, wheel: Wheel): Candidate[] {
  switch (told.kind) {
    case 'noHeight':
    case 'tipsBelowPitch':
      return leave(wheel, HEIGHTS);
    case 'noSpace':
    case 'nothingLeft':
    case 'ringFilled':
      return leave(wheel, THICKNESS);
    case 'noFlanks':
    case 'flankCutAway':
    case 'undercutThrough':
    case 'unsound':
    case 'spacesToCentre':
    case 'flatTriangles':
    case 'cutToCentre':
      return leave(wheel, ALL);
    case 'undercut':
      return [give(wheel.id, 'profileShift', up(told.shift, THOUSANDTH))];
    case 'blankTooLarge':
    case 'pointed':
    case 'pointedTriangles': {
      const point = wheel.internal ? up(told.pointDiameter, HUNDREDTH) : down(told.pointDiameter, HUNDREDTH);
      return [give(wheel.id, 'tipDiameter', point), ...leave(wheel, [...THICKNESS, 'toothAngle'])];
    }
    case 'trundlesTouch':
      return leave(wheel, ['trundleDiameter']);
    case 'ringThin':
      return [give(wheel.id, 'outerDiameter', up(told.outerDiameter, HUNDREDTH))];
    case 'ringTipsInBase':
      return [give(wheel.id, 'tipDiameter', up(told.baseDiameter, HUNDREDTH))];
    case 'rootsMeet':
      return leave(wheel, ['dedendum']);
    case 'unknownTable':
      return leave(wheel, ['table']);
  }
}

/** Candidates for what is wrong with the teeth of one wheel. */
export function toothCandidates({ movement }: PlacedMovement, { cause }: Finding): Candidate[] {
  if (cause.kind !== 'teeth') return [];
  const wheel = movement.wheels.find(({ id }) => id === cause.told.wheel);
  return wheel ? curesOf(cause.told, wheel) : [];
}
