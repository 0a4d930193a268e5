/** The maker's own tooth proportions, × module: rows that a wheel's `table` names, before the shipped ones. */
import { z } from 'zod';
import { FORMS } from './forms/forms.ts';
import { MAX_TEETH, MIN_TEETH, name, note } from './quantities.ts';

const proportion = z.number().min(0).max(10);

export const toothTable = z.looseObject({
  name: name.min(1),
  note: note.exactOptional(),
  /** Where the figures come from, for the sheets. */
  source: z.string().max(500).exactOptional(),
  form: z.enum([FORMS.involute.name, FORMS.cycloidal.name]),
  /** Counts that the row is for; several rows may share a name. All counts when absent. */
  from: z.int().min(MIN_TEETH).max(MAX_TEETH).exactOptional(),
  to: z.int().min(MIN_TEETH).max(MAX_TEETH).exactOptional(),
  addendum: proportion,
  dedendum: proportion,
  /** Thickness on the pitch circle; half the circular pitch when absent. */
  thickness: z.number().min(0.05).max(3).exactOptional(),
  /** Involute: pressure angle of the rack, degrees, and the round of its tips. */
  pressureAngle: z.number().min(5).max(45).exactOptional(),
  fillet: z.number().min(0).max(2).exactOptional(),
  /** Cycloidal: radius of the arcs above the pitch circle; the exact epicycloid when absent. */
  faceRadius: z.number().min(0.1).max(100).exactOptional(),
});
