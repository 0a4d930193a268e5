/** Clock teeth, as the file states them. */
import { z } from 'zod';
import { MAX_TEETH, MIN_TEETH } from '../quantities.ts';

/** The form and the fields of a wheel that are its own. */
export const cycloidalFacts = {
  name: 'cycloidal',
  hasPins: false,
  fields: {
    /** Leaves of the mate that a cycloidal wheel's addendum is drawn for; from its depth when absent. */
    mateTeeth: z.int().min(MIN_TEETH).max(MAX_TEETH).exactOptional(),
  },
} as const;
