/** The maker's own periods: what counts may be found for beside the shipped astronomical ones. */
import { z } from 'zod';
import { name, note } from './quantities.ts';

/** A decimal above or at nothing, without a sign: 29.530589, .5, 3e-2. */
const DECIMAL = String.raw`(?:\d{1,60}(?:\.\d{0,60})?|\.\d{1,60})(?:[eE][+-]?\d{1,2})?`;
/** A decimal, or a ratio of two. */
export const PERIOD_TEXT = new RegExp(`^${DECIMAL}(?:/${DECIMAL})?$`);

export const constant = z.looseObject({
  /** Short name to write in a wanted period: letters and figures. */
  id: z.string().regex(/^[A-Za-z]\w{0,63}$/),
  name,
  /** Kept as text, a decimal or a ratio such as 6940/235, so that no digit is lost; above zero. */
  value: z.string().max(130).regex(PERIOD_TEXT),
  unit: z.enum(['s', 'min', 'h', 'd']),
  /** Where the value is from, for the sheets. */
  source: z.string().max(500),
  note: note.exactOptional(),
});
