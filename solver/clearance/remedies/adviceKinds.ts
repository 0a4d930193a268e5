/** Why nothing simple cures a finding, and what to try: kinds with what their sentences name. */
import type { ArborId, WheelId } from '../../movement/ids.ts';
import type { FindingCause } from '../findings/cause.ts';

/** Causes whose advice needs no look at the movement: each has its own. */
export type PlainAdvice = Exclude<FindingCause['kind'], 'ringMisses' | 'ringSet' | 'heldDown'>;

/** What to try for one finding. */
export type Advice =
  /** Nothing can be said before rules that disagree are settled. */
  | { readonly kind: 'contested' }
  | { readonly kind: PlainAdvice }
  /** The count of one wheel that comes nearest to closing the ring, and by how much of a tooth it then misses. */
  | {
      readonly kind: 'ring';
      readonly nearest?: { readonly wheel: WheelId; readonly teeth: number; readonly miss: number };
    }
  /** What has to be out before the arbor that is held down. */
  | { readonly kind: 'assembly'; readonly before: readonly ArborId[] };
