/** Involute teeth, as the file states them. */
import { z } from 'zod';
import { factor } from '../quantities.ts';

/** The form and the fields of a wheel that are its own. */
export const involuteFacts = {
  name: 'involute',
  hasPins: false,
  fields: {
    pressureAngle: z.number().min(5).max(45).exactOptional(),
    profileShift: factor.default(0),
  },
} as const;
