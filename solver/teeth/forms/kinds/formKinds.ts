/** The tooth forms, as the room of teeth knows them. */
import type { Form } from '../../../movement/index.ts';
import type { Wheel } from '../../../movement/schema.ts';
import { cycloidal } from './cycloidal.ts';
import type { FormKind } from './formKind.ts';
import { involute } from './involute.ts';
import { lantern } from './lantern.ts';
import { triangular } from './triangular.ts';

/** Every form; one without its entry here does not compile. */
const KINDS = { involute, cycloidal, triangular, lantern } satisfies Record<Form, FormKind>;

/** What is known of a wheel's form. */
export const kindOf = ({ form }: Pick<Wheel, 'form'>): FormKind => KINDS[form];
