/** A step's words without its warning, which is shown beside them in its own colour. */
import type { MarkingStep } from '../../../solver/workshop/index.ts';

/** `says` ends with `warns`: told once here, once there. */
export function stepSaysOnce({ says, warns }: MarkingStep): string {
  return warns !== undefined && says.endsWith(warns) ? says.slice(0, says.length - warns.length).trim() : says;
}
