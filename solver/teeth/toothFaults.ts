/** What is wrong or doubtful in the teeth of one wheel: kinds, ids and numbers (mm, radians); words make the sentences. */

import type { WheelId } from '../movement/ids.ts';
import type { Form } from '../movement/schema.ts';

/** The wheel that a fault is about. */
interface OfWheel {
  readonly wheel: WheelId;
}

/** Why no teeth can be made. */
export type ToothFault = OfWheel &
  (
    | { readonly kind: 'noSpace'; readonly thickness: number; readonly pitch: number }
    | { readonly kind: 'noHeight'; readonly tipDiameter: number; readonly rootDiameter: number }
    | { readonly kind: 'noFlanks' }
    /** Flanks that meet at or below the pitch circle. */
    | { readonly kind: 'nothingLeft' }
    /** Proportions from which no outline without gaps can be made. */
    | { readonly kind: 'unsound'; readonly teeth: number; readonly internal: boolean }
    | { readonly kind: 'spacesToCentre'; readonly depth: number }
    | {
        readonly kind: 'flankCutAway';
        readonly teeth: number;
        readonly rootCurveDiameter: number;
        readonly tipDiameter: number;
      }
    | { readonly kind: 'undercutThrough'; readonly teeth: number; readonly diameter: number }
    | { readonly kind: 'ringFilled' }
    | { readonly kind: 'flatTriangles' }
    /** Pins as thick as their centres stand apart, or thicker. */
    | { readonly kind: 'trundlesTouch'; readonly trundleDiameter: number; readonly apart: number }
  );

/** What a maker should know of teeth that can be made all the same. */
export type ToothDoubt = OfWheel &
  /** `wheel.table` names no table: `used` stands in, `known` are the names that would be understood. */
  (
    | {
        readonly kind: 'unknownTable';
        readonly form: Form;
        readonly table: string;
        readonly used: string;
        readonly known: readonly string[];
      }
    /** The flanks meet inside the tips that are asked for: the blank should be no larger. */
    | { readonly kind: 'blankTooLarge'; readonly pointDiameter: number; readonly tipDiameter: number }
    /** The same, where the tips have been cut back to the point. */
    | { readonly kind: 'pointed'; readonly pointDiameter: number; readonly tipDiameter: number }
    | { readonly kind: 'pointedTriangles'; readonly pointDiameter: number; readonly tipDiameter: number }
    /** `shift`: the profile shift (× module) that avoids it. */
    | { readonly kind: 'undercut'; readonly teeth: number; readonly pressureAngle: number; readonly shift: number }
    /** Both × module. */
    | { readonly kind: 'cutToCentre'; readonly dedendum: number; readonly pitchRadius: number }
    /** Nothing stands above the pitch circle; `below`: how far inside it the tips stand, 0 where they reach it. */
    | { readonly kind: 'tipsBelowPitch'; readonly below: number }
    /** A ring's body outside its roots, thinner than its teeth are deep. */
    | { readonly kind: 'ringThin'; readonly rim: number; readonly least: number; readonly outerDiameter: number }
    | { readonly kind: 'ringTipsInBase'; readonly baseDiameter: number }
    | { readonly kind: 'rootsMeet'; readonly meetDiameter: number; readonly rootDiameter: number }
  );
