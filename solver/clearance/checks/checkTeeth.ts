/** Teeth that cannot be made, or not as they are stated. */
import type { Movement } from '../../movement/schema.ts';
import { type ToothTrouble, troublesOfTeeth } from '../../teeth/index.ts';
import type { Finding } from '../findings/finding.ts';

/** Troubles of teeth that can be made all the same, and how grave they are; all others leave no teeth, and stop. */
const GRAVITY: Partial<Record<ToothTrouble['kind'], Finding['severity']>> = {
  unknownTable: 'warns',
  blankTooLarge: 'warns',
  pointed: 'warns',
  pointedTriangles: 'warns',
  ringTipsInBase: 'warns',
  ringThin: 'warns',
  rootsMeet: 'notes',
  // Undercut leaves can be cut and run: the contact of the pair, undercut and all, says how.
  undercut: 'notes',
};

function severityOf(told: ToothTrouble): Finding['severity'] {
  // Leaves without an addendum are made on purpose; tips inside the pitch circle are not.
  if (told.kind === 'tipsBelowPitch' && told.below === 0) return 'warns';
  return GRAVITY[told.kind] ?? 'stops';
}

/** A finding for everything that is wrong or doubtful in the teeth of a wheel. */
export const checkTeeth = (movement: Movement): readonly Finding[] =>
  movement.wheels.flatMap((wheel) =>
    troublesOfTeeth(wheel, movement).map((told) => ({
      key: `teeth ${told.kind} ${wheel.id}`,
      kind: 'size' as const,
      severity: severityOf(told),
      parts: [wheel.id],
      cause: { kind: 'teeth' as const, told },
    })),
  );
