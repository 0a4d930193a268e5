/** What is wrong or doubtful in the teeth of one wheel: the one answer that check, depth, cutting and window give. */
import type { Movement, Wheel } from '../../movement/schema.ts';
import { moduleOf } from '../sizes/moduleOf.ts';
import { isPinion, type Partner, partnersOf } from '../sizes/partners.ts';
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

/** Kept while wheel, mates and tables are the same, so that an edit pays for the wheels that it touches. */
const known = new WeakMap<Wheel, Known>();

/** The troubles of a wheel; a fault alone where there can be no teeth. */
export function troublesOfTeeth(wheel: Wheel, movement: Movement): readonly ToothTrouble[] {
  const partners = partnersOf(wheel, movement);
  const tables = movement.toothTables;
  const old = known.get(wheel);
  if (old && old.tables === tables && areSame(old.partners, partners)) return old.troubles;
  const troubles = isPlain(wheel) ? ofPlain(wheel, movement) : look(wheel, movement);
  known.set(wheel, { partners, tables, troubles });
  return troubles;
}

const areSame = (a: readonly Partner[], b: readonly Partner[]): boolean =>
  a.length === b.length && a.every(({ wheel, driven }, i) => wheel === b[i]?.wheel && driven === b[i]?.driven);

function look(wheel: Wheel, movement: Movement): readonly ToothTrouble[] {
  const form = formOfWheel(wheel, movement);
  return form.kind === 'none' ? [form.why] : form.doubts;
}

/** Figures of its own that a wheel may state; with none of them count and size decide its usual teeth. */
const OWN = [
  'table',
  'cutAs',
  'pressureAngle',
  'addendum',
  'dedendum',
  'thicknessFactor',
  'mateTeeth',
  'toothAngle',
  'trundleDiameter',
  'tipDiameter',
  'toothThickness',
  'outerDiameter',
] as const satisfies readonly (keyof Wheel)[];

const isPlain = (wheel: Wheel): boolean =>
  wheel.profileShift === 0 && !wheel.internal && OWN.every((field) => wheel[field] === undefined);

/** Troubles of usual teeth by form, role, count and module: most wheels of any train share theirs with others. */
const shapes = new Map<string, readonly ToothTrouble[]>();
/** Shapes that are kept; a size that is dragged through more of them starts anew. */
const MOST = 5000;

/** A wheel that mates with pins has teeth drawn for those; all other usual teeth hang on no mate but by their role. */
function ofPlain(wheel: Wheel, movement: Movement): readonly ToothTrouble[] {
  const mate = partnersOf(wheel, movement)[0]?.wheel;
  const drawnFor = mate && mate.form !== wheel.form ? `${mate.form} ${mate.teeth} ${mate.trundleDiameter}` : '';
  const role = isPinion(wheel, movement);
  const shape = `${wheel.form} ${wheel.teeth} ${moduleOf(wheel.size)} ${role} ${drawnFor}`;
  let troubles = shapes.get(shape);
  if (!troubles) {
    troubles = look(wheel, movement);
    if (shapes.size >= MOST) shapes.clear();
    shapes.set(shape, troubles);
  }
  return troubles.map((trouble) => ({ ...trouble, wheel: wheel.id }));
}
