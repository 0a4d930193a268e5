/** The marking-out steps as plain text, a sentence a line: what the command line prints and the maker pins up. */

import { unitName } from '../../movement/decimal.ts';
import type { PlacedMovement } from '../../planting/placed.ts';
import { type MarkingOptions, markingPlan } from './markingSteps.ts';
import { stepLines } from './stepWords.ts';

/** The text of one plate and face; deterministic, ends with a line break. */
export function stepsText(placed: PlacedMovement, options: MarkingOptions = {}): string {
  const { steps, faceLabel, datumSays, voice } = markingPlan(placed, options);
  const { movement } = placed;
  const lines = [
    `${movement.title}, revision ${movement.revision}${movement.date === undefined ? '' : `, ${movement.date}`}`,
    `Marking out: ${faceLabel}`,
    `Lengths in ${unitName(voice.display)}. ${datumSays}`,
  ];
  if (steps.length === 0) lines.push('', 'Nothing is to be marked on this plate.');
  const width = String(steps.length).length;
  for (const step of steps) {
    const [first, ...rest] = stepLines(step, voice);
    lines.push('', `${String(step.number).padStart(width)}. ${first}`);
    for (const line of rest) lines.push(`${' '.repeat(width + 2)}${line}`);
  }
  return `${lines.join('\n')}\n`;
}
