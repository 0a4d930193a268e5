/** What the schema cannot see: ids and references, and things that contradict themselves. */
import type { Movement } from '../schema.ts';
import { checkBodies } from './checkBodies.ts';
import { checkDrilling } from './checkDrilling.ts';
import { checkMaking } from './checkMaking.ts';
import { checkOutlines } from './checkOutlines.ts';
import { checkReferences } from './checkReferences.ts';
import { checkRules } from './checkRules.ts';
import { checkTurning } from './checkTurning.ts';
import type { Fault } from './fault.ts';

/**
 * All faults of a movement that its schema accepts; empty where it is sound.
 *
 * `elsewhere` tells ids of things that could not be read: naming one of them is no fault of its own.
 */
export function documentFaults(movement: Movement, elsewhere: (id: string) => boolean = () => false): Fault[] {
  const faults: Fault[] = [];
  const report = (fault: Fault): void => {
    faults.push(fault);
  };
  checkReferences(movement, elsewhere, report);
  checkBodies(movement, report);
  checkRules(movement, report);
  checkTurning(movement, report);
  checkOutlines(movement, report);
  checkMaking(movement, report);
  checkDrilling(movement, report);
  return faults;
}
