/** What the room of teeth asks of one tooth form: sizes, flanks, cutter, what it runs with, and how freely. */
import type { Movement, Wheel } from '../../../movement/schema.ts';
import type { CutterChoice } from '../../cutting/cutterChoice.ts';
import type { InvoluteMeasures } from '../../cutting/involuteMeasures.ts';
import type { Mismatch } from '../../pairFaults.ts';
import type { CalculatedDepth, WheelSize } from '../../sizes/wheelSize.ts';
import type { Flanks } from '../toothForm.ts';

/** A pair whose pitches agree, with the distance of its pitch circles, mm. */
export interface PlainPair {
  readonly wheels: readonly [Wheel, Wheel];
  readonly movement: Movement;
  readonly distance: number;
  readonly internal: boolean;
  readonly sizeOf: (wheel: Wheel) => WheelSize;
}

/** One tooth form. */
export interface FormKind {
  readonly size: (wheel: Wheel, movement: Movement) => WheelSize;
  /** Flanks before the tip is checked. */
  readonly flanks: (wheel: Wheel, size: WheelSize, movement: Movement) => Flanks;
  readonly cutter: (wheel: Wheel, movement: Movement) => CutterChoice;
  /** Over several teeth and over pins, where the form is measured so. */
  readonly measures?: (wheel: Wheel, size: WheelSize, movement: Movement) => InvoluteMeasures;
  /** Runs with other forms than its own: then `mismatch` is asked of every mate. */
  readonly meetsOthers?: boolean;
  /** Why a wheel of the form does not run with a mate of equal pitch, if so. */
  readonly mismatch?: (own: Wheel, mate: Wheel, movement: Movement) => Mismatch | undefined;
  /** Whether the proportions are a wheel's or a leaf's, where the form has both. */
  readonly role?: (wheel: Wheel, movement: Movement) => 'wheel' | 'leaf';
  /** The calculated depth, where it is another than that of the pitch circles; asked of the driver's form. */
  readonly depth?: (pair: PlainPair) => CalculatedDepth;
  /** Shakes along the pitch line, × module, below and above which a depth is tight and free. */
  readonly shake: { readonly tight: number; readonly free: number };
  /** Is rubbing before the line of centres, is bearing on a corner worth a remark? */
  readonly remarks: { readonly engaging: boolean; readonly corners: boolean };
}

/**
 * Bounds of shake, × module: our own, from the trade's habit (an involute pair is set almost without play, clock teeth
 * have half a module by design).
 */
export const CLOSE_SHAKE = { tight: 0.02, free: 0.2 } as const;
export const CLOCK_SHAKE = { tight: 0.1, free: 0.75 } as const;
