/** What the schema cannot see: ids and references, and things that contradict themselves. */
import type { Movement } from '../schema.ts';
import { checkBodies } from './bodyProblems.ts';
import type { Fault } from './fault.ts';
import { checkMaking } from './makingProblems.ts';
import { checkOutlines } from './outlineProblems.ts';
import { checkReferences } from './references.ts';
import { checkRules } from './ruleProblems.ts';
import { checkTurning } from './turningProblems.ts';

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
  return faults;
}
