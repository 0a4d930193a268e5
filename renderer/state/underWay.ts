/** What the hand can do: the views that open over the bench, and the gestures. Plain data, two closed unions. */

import type { Point } from '../../solver/geometry/index.ts';
import type { RuleId, WheelId } from '../../solver/movement/ids.ts';
import type { Preview } from './preview.ts';

/** The view that is open over the bench, with what it looks at. */
export type OpenView =
  | { readonly kind: 'depth'; readonly rule: RuleId }
  | { readonly kind: 'cutting'; readonly wheel: WheelId }
  | { readonly kind: 'counts' | 'planting' | 'trial' | 'gaps' | 'power' | 'rehearsal' }
  | { readonly kind: 'readings' | 'changes' | 'errors' | 'fits' };
export type ViewKind = OpenView['kind'];

export type DownKind = 'wheel' | 'arbor' | 'pipe' | 'post' | 'mark' | 'plate' | 'wall' | 'opening';

/** Numbers and words of a part that is not yet made, by the names of their fields. */
export type SetDownDraft = Readonly<Record<string, number | string>>;

/** What follows pointers and numbers until a part is set down; made by the gesture. */
export interface SettingDown {
  readonly kind: DownKind;
  /** Follows the pointer, CSS pixels. */
  aim(pixel: Point, free: boolean): void;
  /** Takes typed numbers: the draft's, or the place in mm. */
  type(draft: SetDownDraft, at?: Point): void;
  /** Adds it to the movement and chooses it; false where it was refused. */
  keep(): boolean;
  putAway(): void;
}

/** The gesture that is under way. */
export type UnderWay =
  | { readonly kind: 'drag'; readonly preview: Preview }
  /** A frame drawn round several places, CSS pixels. */
  | { readonly kind: 'frame'; readonly from: Point; readonly to: Point }
  | {
      readonly kind: 'settingDown';
      readonly down: SettingDown;
      readonly draft: SetDownDraft;
      /** Where it would stand, mm. */
      readonly at: Point;
      readonly preview: Preview | undefined;
    };
