/** The parts of the view of what was made, by name. */
export const MADE_PARTS = {
  readings: 'Readings and as made',
  changes: 'Changes',
  errors: 'Before cutting',
  fits: 'Fits',
} as const;
export type MadePart = keyof typeof MADE_PARTS;
