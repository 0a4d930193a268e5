/** What is wrong with a length or an angle that was typed, in words, with what is accepted. */

import { MAX_LENGTH } from '../../movement/index.ts';
import type { MeasureProblem } from '../../movement/measures.ts';
import { type Sentences, sentenceOf } from '../saying.ts';
import type { Speaker } from '../speaker.ts';

/** What is wrong, and examples of what is accepted. */
export function measureProblemSays(problem: MeasureProblem, speaker: Speaker): string {
  return `${sentenceOf(PROBLEMS, problem, speaker)} ${EXAMPLES[problem.of]}`;
}

const EXAMPLES: Readonly<Record<MeasureProblem['of'], string>> = {
  length: 'Accepted are lengths such as 12.5, 12,5 mm, 1.2 cm, 3 5/8 in, 0.4921", 5 thou, or sums such as 12 + 0.35.',
  angle: `Accepted are angles such as 54.67, 54.67°, 54° 40' 6", 0.954 rad or 0.15 turn.`,
};

const PROBLEMS: Sentences<MeasureProblem> = {
  nothing: () => 'Nothing was entered.',
  someWithoutUnit: () => 'Some of the numbers have a unit and some have none; give each its unit.',
  tooLong: (_, speaker) => `That is beyond ${speaker.length(MAX_LENGTH)}, the largest length known here.`,
  tooManyTurns: () => 'That is more than a hundred turns.',
  notUnderstood: ({ text }) => `“${text}” was not understood after what stands before it.`,
  endsEarly: () => 'A number is missing at the end.',
  noNumber: ({ text }) => `“${text}” does not begin with a number.`,
  notFinite: ({ text }) => `“${text}” is no number.`,
  unknownUnit: ({ text }) => `“${text}” is not a unit known here.`,
};
