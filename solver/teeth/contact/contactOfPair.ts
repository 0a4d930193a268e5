/** Contact of two wheels of a movement at any distance: the door to the engine. */
import type { Movement, Wheel } from '../../movement/schema.ts';
import { formOfWheel } from '../forms/formOfWheel.ts';
import type { ToothForm } from '../forms/toothForm.ts';
import type { Mismatch } from '../pairFaults.ts';
import { calculatedDepth } from '../sizes/calculatedDepth.ts';
import type { ToothDoubt } from '../toothFaults.ts';
import type { ContactOptions, NoContact, PairContact } from './contact.ts';
import { contactOfForms } from './contactOfForms.ts';

/** What is doubtful in a pair that runs all the same: in either wheel, or between them. */
export type PairDoubt = ToothDoubt | Mismatch;

/** Both forms of a pair, or why there is none. */
export type PairForms =
  | {
      readonly kind: 'forms';
      readonly driver: ToothForm;
      readonly driven: ToothForm;
      /** What does not match, and what is doubtful in either wheel. */
      readonly doubts: readonly PairDoubt[];
    }
  | NoContact;

/** The tooth forms of a pair, the first wheel driving. */
export function formsOfPair(driver: Wheel, driven: Wheel, movement: Movement): PairForms {
  if (driver.internal && driven.internal) {
    return { kind: 'none', why: { kind: 'twoRings', wheels: [driver.id, driven.id] } };
  }
  const [a, b] = [formOfWheel(driver, movement), formOfWheel(driven, movement)];
  if (a.kind === 'none') return a;
  if (b.kind === 'none') return b;
  const depth = calculatedDepth(driver, driven, movement);
  const mismatch = depth.kind === 'mismatch' ? [depth.why] : [];
  return { kind: 'forms', driver: a, driven: b, doubts: [...mismatch, ...a.doubts, ...b.doubts] };
}

/** The contact of two wheels with what is doubtful in them, or why there is none. */
export type ContactOfPair = (PairContact & { readonly doubts: readonly PairDoubt[] }) | NoContact;

/**
 * How the pair runs with its axes `distance` apart, the first wheel driving (turn the order round for the other drive).
 *
 * @param distance mm; any value: out of reach, too deep or not a number gives `none` or a contact that says it binds
 */
export function contactOfPair(
  driver: Wheel,
  driven: Wheel,
  movement: Movement,
  distance: number,
  options: ContactOptions = {},
): ContactOfPair {
  const forms = formsOfPair(driver, driven, movement);
  if (forms.kind === 'none') return forms;
  const contact = contactOfForms(forms.driver, forms.driven, distance, options.steps);
  return contact.kind === 'none' ? contact : { ...contact, doubts: forms.doubts };
}
