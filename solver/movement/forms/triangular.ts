/** Straight-sided teeth, as the file states them. */
import { z } from 'zod';

/** The form and the fields of a wheel that are its own. */
export const triangularFacts = {
  name: 'triangular',
  hasPins: false,
  fields: {
    /** Included angle of straight-sided teeth, degrees. */
    toothAngle: z.number().min(20).max(120).exactOptional(),
  },
} as const;
