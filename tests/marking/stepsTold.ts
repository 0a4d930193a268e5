/** Steps in words, for the movement's display or another one. */
import { type MarkingOptions, markingPlan } from '../../solver/marking/index.ts';
import type { LengthDisplay } from '../../solver/movement/decimal.ts';
import type { PlacedMovement } from '../../solver/planting/placed.ts';
import { speakerOf } from '../../solver/words/index.ts';
import * as shop from '../../solver/words/shop/index.ts';

type Told = MarkingOptions & { readonly display?: LengthDisplay };

/** The text of a plate and face, with as many decimals as a test wants. */
export function stepsText(placed: PlacedMovement, { display, ...options }: Told = {}): string {
  const { movement } = placed;
  // Sentences for programs to read: a plain minus, should a figure have one.
  const speaker = speakerOf(display ? { ...movement, display } : movement, { minus: '-' });
  return shop.stepsText(placed, options, speaker);
}

/** What each step of a plate and face says, in one line. */
export function stepsSay(placed: PlacedMovement, options: MarkingOptions = {}): readonly string[] {
  const { steps, datum } = markingPlan(placed, options);
  const speaker = speakerOf(placed.movement);
  return steps.map((step) => shop.stepLines(step, datum, speaker).join(' '));
}
