/** The numbers of a wheel that only its tooth form has. */
import type { Form, Wheel } from '../../solver/movement/schema.ts';
import { type PartField, plainField } from './plainField.ts';

const OPEN = { isOptional: true } as const;

/** Fields by form; none where the form has no number of its own that a slip shows. */
const FIELDS: Readonly<Record<Form, (wheel: Wheel) => readonly PartField[]>> = {
  involute: ({ id, pressureAngle, profileShift }) => [
    plainField(id, 'pressureAngle', 'Pressure angle', pressureAngle, { ...OPEN, kind: 'angle' }),
    plainField(id, 'profileShift', 'Profile shift', profileShift, { kind: 'number' }),
  ],
  cycloidal: () => [],
  triangular: ({ id, toothAngle }) => [
    plainField(id, 'toothAngle', 'Angle of the teeth', toothAngle, { ...OPEN, kind: 'angle' }),
  ],
  lantern: ({ id, trundleDiameter }) => [
    plainField(id, 'trundleDiameter', 'Diameter of the pins', trundleDiameter, { ...OPEN, above: 0 }),
  ],
};

/** The fields of a wheel's form. */
export const fieldsOfForm = (wheel: Wheel): readonly PartField[] => FIELDS[wheel.form](wheel);
