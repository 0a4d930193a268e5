/** What a gesture shows before it is kept. */

import type { Locus, Point } from '../../solver/geometry/index.ts';
import type { Outline } from '../../solver/movement/schema.ts';
import type { PlacedMovement } from '../../solver/planting/placed.ts';

/** A hint that is drawn over the bench while a gesture is under way. */
export type Guide =
  /** A place has settled on a rule: where the rule keeps it, and what it says, told at the place. */
  | {
      readonly kind: 'rule';
      readonly key: string;
      readonly locus: Locus;
      readonly at: Point;
      readonly says: string;
    }
  /** An outline that cannot be kept. */
  | { readonly kind: 'wrongOutline'; readonly key: string; readonly outline: Outline };

/** Places as they would be, and hints drawn over them; nothing of it is in the movement. */
export interface Preview {
  readonly placed: PlacedMovement;
  readonly guides: readonly Guide[];
  /** For the strip and for a screen reader. */
  readonly says: string;
}
