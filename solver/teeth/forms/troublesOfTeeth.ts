/** What is wrong or doubtful in the teeth of one wheel: the one answer that check, depth, cutting and window give. */
import type { Movement, Wheel } from '../../movement/schema.ts';
import { type Partner, partnersOf } from '../sizes/partners.ts';
import type { ToothDoubt, ToothFault } from '../toothFaults.ts';
import { formOfWheel } from './formOfWheel.ts';

/** A fault or a doubt of one wheel. */
export type ToothTrouble = ToothFault | ToothDoubt;

/** All that the teeth of a wheel hang on besides the wheel itself, and what was found. */
interface Known {
  readonly partners: readonly Partner[];
  readonly tables: Movement['toothTables'];
  readonly troubles: readonly ToothTrouble[];
}

const known = new WeakMap<Wheel, Known>();

/** The troubles of a wheel, a fault alone where there can be no teeth; kept while wheel, mates and tables are the same. */
export function troublesOfTeeth(wheel: Wheel, movement: Movement): readonly ToothTrouble[] {
  const partners = partnersOf(wheel, movement);
  const tables = movement.toothTables;
  const old = known.get(wheel);
  if (old && old.tables === tables && areSame(old.partners, partners)) return old.troubles;
  const form = formOfWheel(wheel, movement);
  const troubles = form.kind === 'none' ? [form.why] : form.doubts;
  known.set(wheel, { partners, tables, troubles });
  return troubles;
}

const areSame = (a: readonly Partner[], b: readonly Partner[]): boolean =>
  a.length === b.length && a.every(({ wheel, driven }, i) => wheel === b[i]?.wheel && driven === b[i]?.driven);
