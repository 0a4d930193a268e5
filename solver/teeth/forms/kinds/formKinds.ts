/** The tooth forms, as the room of teeth knows them. */
import type { Form, Wheel } from '../../../movement/schema.ts';
import { cycloidalKind } from './cycloidal.ts';
import type { FormKind } from './formKind.ts';
import { involuteKind } from './involute.ts';
import { lanternKind } from './lantern.ts';
import { triangularKind } from './triangular.ts';

/** Every form; one without its entry here does not compile. */
const KINDS = {
  involute: involuteKind,
  cycloidal: cycloidalKind,
  triangular: triangularKind,
  lantern: lanternKind,
} satisfies Record<Form, FormKind>;

/** What is known of a wheel's form. */
export const kindOf = ({ form }: Pick<Wheel, 'form'>): FormKind => KINDS[form];

/** Can it be cut as a wheel or as a pinion, with other proportions? */
export const hasTwoCuts = (wheel: Pick<Wheel, 'form' | 'internal'>): boolean =>
  !wheel.internal && kindOf(wheel).role !== undefined;
