/** What `sizeOfWheel` gives: the circles of a wheel and its teeth, before any contact is asked. */

import type { Mismatch } from '../pairFaults.ts';
import type { ToothDoubt } from '../toothFaults.ts';

/** The circles and the tooth thickness of one wheel, radii and lengths in mm. */
export interface WheelSize {
  /** Module, mm, whatever the file states. */
  readonly module: number;
  /** Radii, mm. For internal wheels the tips stand inside the pitch circle. */
  readonly pitchRadius: number;
  readonly tipRadius: number;
  readonly rootRadius: number;
  /** Involute wheels only. */
  readonly baseRadius?: number;
  readonly addendum: number;
  readonly dedendum: number;
  /** Arc thickness on the pitch circle, mm. */
  readonly thickness: number;
  /** Pressure angle of the rack, radians (involute). */
  readonly pressureAngle?: number;
  /** Where the numbers come from: the name of the table or the word "as cut", for the sheet. */
  readonly source: string;
  /** What the maker should know of these teeth: unknown table, pointed tips, undercut. */
  readonly doubts?: readonly ToothDoubt[];
}

/** The calculated centre distance of a pair. */
export type CalculatedDepth =
  | { readonly kind: 'depth'; readonly distance: number; readonly pressureAngle?: number; readonly internal: boolean }
  | { readonly kind: 'mismatch'; readonly why: Mismatch; readonly distance: number };
