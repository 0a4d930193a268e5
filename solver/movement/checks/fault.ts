/** What a check reports: a problem whose place is still a list of keys, so that it can be told for any copy of the list. */
import type { PathKey } from '../read/problem.ts';

/** A problem as a check finds it, before it is told for a file. */
export interface Fault {
  readonly path: readonly PathKey[];
  readonly id?: string | undefined;
  readonly found: string;
  readonly expected: string;
  readonly remedy: string;
}

export type Report = (fault: Fault) => void;
