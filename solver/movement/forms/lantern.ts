/** Pinions of round pins, as the file states them. */
import { length } from '../quantities.ts';

/** The form and the fields of a wheel that are its own. */
export const lanternFacts = {
  name: 'lantern',
  hasPins: true,
  fields: {
    /** Diameter of the round pins of a lantern pinion, mm. */
    trundleDiameter: length.exactOptional(),
  },
} as const;
