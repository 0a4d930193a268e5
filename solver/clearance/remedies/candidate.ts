/** A change that might cure a finding, before it has been tried. */
import type { Edit } from '../../movement/index.ts';
import type { CureDeed } from './deed.ts';

/** A change with what it does in words. */
export interface Candidate {
  readonly deed: CureDeed;
  readonly edit: Edit;
}
