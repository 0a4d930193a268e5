/** All tooth forms, by name: a form that is added here does not compile until every room's table has it. */
import type { z } from 'zod';
import { cycloidalFacts } from './cycloidal.ts';
import { involuteFacts } from './involute.ts';
import { lanternFacts } from './lantern.ts';
import { triangularFacts } from './triangular.ts';

/** What the document knows of one form. */
interface FormFacts<Name extends string> {
  readonly name: Name;
  /** Round pins between discs instead of teeth out of the solid: always a pinion, and its tips are set, not turned. */
  readonly hasPins: boolean;
  /** Fields of a wheel that this form alone has. */
  readonly fields: z.ZodRawShape;
}

/** Every form, in the order in which they are offered. */
export const FORMS = {
  involute: involuteFacts,
  cycloidal: cycloidalFacts,
  triangular: triangularFacts,
  lantern: lanternFacts,
};

/** Name of a tooth form, as it stands in the file. */
export type Form = keyof typeof FORMS;

FORMS satisfies { readonly [Name in Form]: FormFacts<Name> };

/** The names, in the same order. */
export const FORM_NAMES = Object.keys(FORMS) as [Form, ...Form[]]; // a table's own keys, of which there are some

/** Is it a pinion of round pins? */
export const isOfPins = ({ form }: { readonly form: Form }): boolean => FORMS[form].hasPins;
