/** A change that might cure a finding, before it has been tried. */
import type { Edit } from '../../movement/index.ts';

/** A change with what it does in words. */
export interface Candidate {
  /** "Turn post P2 by +4.6° about the centre" */
  readonly does: string;
  readonly edit: Edit;
}
