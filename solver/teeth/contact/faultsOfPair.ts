/** What is wrong with two wheels whatever their distance: what a verdict of their depth begins with. */
import type { Movement, Wheel } from '../../movement/schema.ts';
import { formOfWheel } from '../forms/formOfWheel.ts';
import type { FullForms, Mismatch } from '../pairFaults.ts';
import { calculatedDepth } from '../sizes/calculatedDepth.ts';
import type { ToothFault } from '../toothFaults.ts';
import { fullFormsOf } from './fullForms.ts';

/** Faults of a pair, in the order in which they are to be mended. */
export interface FaultsOfPair {
  /** What keeps the pair from meshing at any distance: pitches and forms first, then teeth that cannot be. */
  readonly never: readonly (Mismatch | ToothFault)[];
  /** Teeth that bind at the calculated depth itself; they may run farther apart. */
  readonly fullForms?: FullForms;
}

const known = new WeakMap<Movement, Map<string, FaultsOfPair>>();

/**
 * The faults of a pair, the first wheel driving. Where `never` holds anything no distance is a cure. Kept for as long as
 * the movement is the same object.
 */
export function faultsOfPair(driver: Wheel, driven: Wheel, movement: Movement): FaultsOfPair {
  const ofMovement = known.get(movement) ?? new Map<string, FaultsOfPair>();
  known.set(movement, ofMovement);
  const key = `${driver.id} ${driven.id}`;
  const faults = ofMovement.get(key) ?? lookAt(driver, driven, movement);
  ofMovement.set(key, faults);
  return faults;
}

function lookAt(driver: Wheel, driven: Wheel, movement: Movement): FaultsOfPair {
  const depth = calculatedDepth(driver, driven, movement);
  const forms = [driver, driven].map((wheel) => formOfWheel(wheel, movement));
  const none = forms.flatMap((form) => (form.kind === 'none' ? [form.why] : []));
  const never = [...(depth.kind === 'mismatch' ? [depth.why] : []), ...none];
  const fullForms = never.length > 0 ? undefined : fullFormsOf(driver, driven, movement);
  return { never, ...(fullForms ? { fullForms } : {}) };
}
