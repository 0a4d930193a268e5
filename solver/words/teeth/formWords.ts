/** What the tooth forms are called. */
import { FORM_NAMES, type Form } from '../../movement/schema.ts';

const CALLED = {
  involute: 'involute',
  cycloidal: 'cycloidal',
  triangular: 'triangular',
  lantern: 'lantern',
} as const satisfies Record<Form, string>;

/** A form in a sentence. */
export const formSays = (form: Form): string => CALLED[form];

/** All forms as they are offered, each with its words. */
export const FORM_CHOICES: readonly { readonly value: Form; readonly says: string }[] = FORM_NAMES.map((value) => ({
  value,
  says: formSays(value),
}));
