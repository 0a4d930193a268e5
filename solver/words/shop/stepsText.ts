/** The marking-out steps as plain text, a sentence a line: what the command line prints and the maker pins up. */
import { type MarkingOptions, markingPlan } from '../../marking/index.ts';
import type { PlacedMovement } from '../../planting/placed.ts';
import { unitOf } from '../figures.ts';
import { type Speaker, speakerOf } from '../speaker.ts';
import { datumSays, stepLines } from './stepWords.ts';

/** The text of one plate and face; deterministic, ends with a line break. */
export function stepsText(
  placed: PlacedMovement,
  options: MarkingOptions = {},
  speaker: Speaker = speakerOf(placed.movement),
): string {
  const { steps, faceLabel, datum } = markingPlan(placed, options);
  const { movement } = placed;
  const lines = [
    `${movement.title}, revision ${movement.revision}${movement.date === undefined ? '' : `, ${movement.date}`}`,
    `Marking out: ${faceLabel}`,
    `Lengths in ${unitOf(speaker.display)}. ${datumSays(datum, speaker)}`,
  ];
  if (steps.length === 0) lines.push('', 'Nothing is to be marked on this plate.');
  const width = String(steps.length).length;
  for (const step of steps) {
    const [first, ...rest] = stepLines(step, datum, speaker);
    lines.push('', `${String(step.number).padStart(width)}. ${first}`);
    for (const line of rest) lines.push(`${' '.repeat(width + 2)}${line}`);
  }
  return `${lines.join('\n')}\n`;
}
