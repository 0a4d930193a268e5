/** What the power view asks for: every number with its label, what it measures and what stands there at first. */
import type { LengthUnit } from '../../solver/movement/measures.ts';

/**
 * Every number of the form: its label, its unit (`length`: the document's), and what stands there at first (our own
 * example; lengths in mm).
 */
export const NUMBERS = {
  mass: { label: 'Weight with its pulley', unit: 'kg', first: 3 },
  drum: { label: 'Drum Ø', unit: 'length', first: 40 },
  cord: { label: 'Cord Ø', unit: 'length', first: 1.5 },
  fall: { label: 'Fall', unit: 'length', first: 1000 },
  parts: { label: 'Parts of cord that carry it', unit: '', first: 2 },
  turnsPerLayer: { label: 'Turns of cord in a layer', unit: '', first: undefined },
  pulleyLoss: { label: 'Lost in the pulley', unit: '%', first: 5 },
  barrelRadius: { label: 'Barrel, inside Ø', unit: 'length', first: 40 },
  arborRadius: { label: 'Barrel arbor Ø', unit: 'length', first: 12 },
  thickness: { label: 'Spring, thickness', unit: 'length', first: 0.4 },
  height: { label: 'Spring, height', unit: 'length', first: 20 },
  length: { label: 'Spring, length', unit: 'length', first: 1400 },
  turnsWound: { label: 'Turns wound, for the torque', unit: '', first: 4 },
  lossPerDepth: { label: 'Lost in each depth', unit: '%', first: 8 },
  lossPerPivot: { label: 'Lost in each arbor’s pivots', unit: '%', first: 2 },
  beats: { label: 'Beats an hour', unit: '', first: 3600 },
  amplitude: { label: 'Swing to either side', unit: '°', first: 2 },
  gravity: { label: 'Gravity', unit: 'm/s²', first: 9.80665 },
  expansion: { label: 'Rod grows by, a degree', unit: '× 10⁻⁶', first: 11.5 },
  span: { label: 'Pallets span', unit: 'teeth', first: 7.5 },
} as const;
export type NumberName = keyof typeof NUMBERS;

/** The unit that stands behind a field. */
export function unitText(name: NumberName, unit: LengthUnit): string {
  const own = NUMBERS[name].unit;
  return own === 'length' ? (unit === 'inch' ? 'in' : 'mm') : own;
}

/** The form as it is typed. */
export interface PowerForm {
  kind: 'weight' | 'spring';
  /** Id of the arbor with the drum or barrel; empty for the movement's drive. */
  power: string;
  /** Id of the escape wheel; empty until one is chosen. */
  escape: string;
  /** What was typed, lengths in mm; what is absent stands as at first. */
  numbers: Partial<Record<NumberName, number>>;
}
