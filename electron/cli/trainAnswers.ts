/** `depthwright turns` and `counts`: what the room of the train reports, as answers of the command line. */

import type { Movement } from '../../solver/movement/schema.ts';
import type { PlacedMovement } from '../../solver/planting/placed.ts';
import { type CountsRequest, countsReport } from '../../solver/train/counts/index.ts';
import { turnsReport } from '../../solver/train/index.ts';
import { type Answer, Refusal } from './answer.ts';
import { inBlocks } from './columns.ts';
import { titleLine } from './plantAnswer.ts';

/** A report's text under the movement's title. */
function under(movement: Movement, text: string): string {
  return inBlocks([[titleLine(movement)], [text.trimEnd()]]);
}

/** Turns, senses and periods of every arbor, and what the hands show. */
export function turnsAnswer({ movement }: PlacedMovement): Answer {
  const { kind, text, data } = turnsReport(movement);
  return { text: under(movement, text), json: { title: movement.title, ...data }, code: kind === 'fine' ? 0 : 1 };
}

/** Tooth numbers for a wanted ratio. */
export function countsAnswer(request: CountsRequest): Answer {
  const { kind, text, data } = countsReport(request);
  if (kind === 'refused') throw new Refusal(data.says);
  return { text, json: { kind, ...data }, code: kind === 'found' ? 0 : 1 };
}
