/** What is said of findings, cures and advice in a movement, with plain signs. */
import type { Advice, Finding, Remedy } from '../../solver/clearance/index.ts';
import type { Movement } from '../../solver/movement/schema.ts';
import { adviceSays, cureSays, findingSays } from '../../solver/words/clearance/index.ts';
import { speakerOf } from '../../solver/words/index.ts';

/** Sentences of one movement. */
export function wordsOf(movement: Movement): {
  readonly finding: (finding: Finding) => string;
  readonly cure: (remedy: Remedy) => string;
  readonly advice: (advice: Advice) => string;
} {
  const speaker = speakerOf(movement, { minus: '-' });
  return {
    finding: (finding) => findingSays(finding, speaker),
    cure: (remedy) => cureSays(remedy, speaker),
    advice: (advice) => adviceSays(advice, speaker),
  };
}
