/** The verdict of a depth as one text for every place that tells it. */
import type { JudgedDepth } from '../../clearance/index.ts';
import type { Speaker } from '../speaker.ts';
import { mismatchSays } from '../teeth/pairWords.ts';
import { depthFaultSays } from './depthFaultWords.ts';

/**
 * "0.100 to 0.180 mm": the shake of a pair over a whole turn; empty where its teeth do not mesh. Less than nothing is none:
 * there the bearings give way.
 */
export function shakeSays({ shake }: JudgedDepth, { figure, length }: Speaker): string {
  return shake ? `${figure(Math.max(0, shake[0]))} to ${length(shake[2])}` : '';
}

/** "runs", "stops: bind: …", without a full stop where it runs. */
export function verdictSays({ fault, severity }: JudgedDepth, speaker: Speaker): string {
  if (!fault) return 'runs';
  const why = fault.kind === 'sizes' ? mismatchSays(fault.calculated.why, speaker) : depthFaultSays(fault, speaker);
  return `${severity === 'stops' ? 'stops' : 'runs, but'}: ${why}`;
}

/** "hold it at 31.250 mm": what cures it; empty where it runs, or no distance would do. */
export function verdictCureSays({ goodDistance }: JudgedDepth, { length }: Speaker): string {
  return goodDistance === undefined ? '' : `hold it at ${length(goodDistance)}`;
}
