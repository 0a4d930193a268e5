/** `depthwright counts`: tooth numbers for a wanted ratio. */
import { type CountsRequest, countsReport } from '../../solver/train/counts/index.ts';
import { type Answer, Refusal } from './answer.ts';

/** Tooth numbers for a wanted ratio. */
export function countsAnswer(request: CountsRequest): Answer {
  const { kind, text, data } = countsReport(request);
  if (kind === 'refused') throw new Refusal(data.says);
  return { text, json: { kind, ...data }, code: kind === 'found' ? 0 : 1 };
}
