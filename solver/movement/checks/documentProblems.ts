/** What the schema cannot see: ids and references, and things that contradict themselves. */
import type { Problem } from '../read/problem.ts';
import type { Movement } from '../schema.ts';
import { referenceProblems } from './references.ts';

/** All problems of a movement that its schema accepts; empty where it is sound. */
export function documentProblems(movement: Movement): Problem[] {
  return [...referenceProblems(movement)];
}
