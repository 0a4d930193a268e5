/** What a search for counts finds, why it finds none, what was wrong with the question, and a train that is checked. */
import type {
  CountsFault,
  CountsProblem,
  CountsProgress,
  CountsResult,
  CountsRow,
  NoCounts,
  PeriodRatio,
  Verified,
} from '../../train/counts/index.ts';
import { periodErrorOf } from '../../train/index.ts';
import { fractionText } from '../../train/turning/rational.ts';
import { counted } from '../lists.ts';
import { type Sentences, sentenceOf } from '../saying.ts';
import type { Speaker } from '../speaker.ts';
import { periodErrorSays, roundSays } from './periodWords.ts';

/** The error of one ratio: "+9.32 ppm: loses 0.806 s a day, one day in 294 years". */
export function rowErrorSays({ error }: Pick<CountsRow, 'error'>, speaker: Speaker): string {
  return periodErrorSays(periodErrorOf(error), speaker);
}

const rowSays = (row: Pick<CountsRow, 'ratio' | 'digits' | 'error'>, speaker: Speaker): string =>
  `${fractionText(row.ratio)} = ${row.digits}, ${rowErrorSays(row, speaker)}.`;

/** What was found for a ratio, or why nothing was. */
export function countsSay(
  result: Extract<CountsResult, { readonly kind: 'found' | 'none' }>,
  speaker: Speaker,
): string {
  const wanted = speaker.exact(result.target);
  if (result.kind === 'found') {
    const [first] = result.rows;
    const best = first ? `; the best is ${rowSays(first, speaker)}` : '.';
    return `${counted(result.rows.length, 'ratio')} for ${wanted}${best}`;
  }
  const NONE: Sentences<NoCounts> = {
    outOfReach: ({ stages, low, high }) =>
      `None: ${counted(stages, 'stage')} within these limits reach ratios from ${roundSays(low, speaker, 6)} to ${roundSays(high, speaker, 6)}, and ${wanted} is outside. Use more stages or wider limits.`,
    allTried: ({ withinPpm }) => {
      const best = result.nearest ? ` The nearest is ${rowSays(result.nearest, speaker)}` : '';
      return `None: every train within these limits was tried, and none gives ${wanted} within ${roundSays(withinPpm, speaker, 6)} ppm.${best}`;
    },
  };
  return sentenceOf(NONE, result.why, speaker);
}

/** Why no shared stages serve all hands. */
export function noJointCountsSay({ withinPpm }: { readonly withinPpm: number }, speaker: Speaker): string {
  return `None: every ratio of the shared stages within these limits was tried, and none leaves branches within ${roundSays(withinPpm, speaker, 6)} ppm of all wanted ratios. Use more stages, wider limits or a larger error.`;
}

const DOING: Sentences<CountsProgress['doing']> = {
  stages: ({ stages }) => counted(stages, 'stage'),
  ratios: ({ stages }) => `ratios of ${counted(stages, 'stage')}`,
  shared: () => 'shared stages',
};

/** What a search does now. */
export function searchingCountsSay({ doing }: CountsProgress, speaker: Speaker): string {
  return sentenceOf(DOING, doing, speaker);
}

/** Options as a maker calls them; of what stands in them, the end of a range. */
const FIELDS: readonly (readonly [pattern: RegExp, label: string])[] = [
  [/^drivers/, 'Teeth of the driving wheels'],
  [/^driven/, 'Teeth of the driven wheels'],
  [/^stages/, 'Stages'],
  [/^worm\.starts/, 'Starts of the worm'],
  [/^worm\.wheel/, 'Teeth of the worm wheel'],
  [/^centreDistance/, 'Distance of the axes'],
  [/^largestPrime/, 'Largest prime factor'],
  [/^tolerancePpm/, 'Largest error'],
  [/^best/, 'Ratios to show'],
  [/^equalSums/, 'Equal sums'],
  [/^sharedStages/, 'Shared stages'],
  [/^indications\[\d+\]\.stages/, 'Stages of a hand'],
  [/^indications\[\d+\]\.ratio/, 'Ratio of a hand'],
  [/^indications/, 'Hands'],
  [/^ratio/, 'Ratio'],
];

const told = (found: number | undefined, { plain }: Speaker): string =>
  found === undefined ? 'nothing' : Number.isFinite(found) ? plain(found, 12) : 'no number';

const FAULTS: Sentences<CountsFault> = {
  notWhole: ({ found, from, to }, speaker) =>
    `found ${told(found, speaker)}, expected a whole number from ${from} to ${to}.`,
  notInOrder: ({ from, to }, speaker) =>
    `found ${told(from, speaker)} to ${told(to, speaker)}, expected the smaller number first.`,
  notPositive: ({ found }, speaker) => `found ${told(found, speaker)}, expected a number greater than 0.`,
  noRatio: ({ found }, speaker) =>
    `found ${typeof found === 'number' ? told(found, speaker) : `"${found}"`}, expected a number or fraction greater than 0, such as 29.530588853 or 365/12.`,
  beyondExact: ({ stages, teeth }) =>
    `${counted(stages, 'stage')} of up to ${counted(teeth, 'tooth', 'teeth')} go beyond what is reckoned exactly; lower one of the two.`,
  noneLeft: () => 'no count within these limits passes the other limits.',
  notWithWorm: () => 'cannot be asked together with a worm.',
  groupsOfRange: () => 'groups of stages need one number of stages, not a range.',
  inTwoGroups: () => 'a stage stands in two groups.',
  noStage: ({ found, last }, speaker) => `found stage ${told(found, speaker)}, expected 0 to ${last}.`,
  branchTooLong: () => 'two shared stages leave one for each branch; found 2.',
  tooManyRatios: ({ stages }) =>
    `${counted(stages, 'stage')} within these limits have too many ratios; narrow the limits.`,
};

/** What is wrong with an option: its name, what was found and expected. */
export function countsProblemSays({ field, why }: CountsProblem, speaker: Speaker): string {
  const label = FIELDS.find(([pattern]) => pattern.test(field))?.[1] ?? 'An option';
  return `${label}: ${sentenceOf(FAULTS, why, speaker)}`;
}

const PERIODS = { from: 'Period of the first arbor', to: 'Period of the last arbor' } as const;

/** Why a typed period is none. */
export function noPeriodSays({ field, found }: Extract<PeriodRatio, { readonly kind: 'refused' }>): string {
  return `${PERIODS[field]}: found "${found}", expected a period greater than 0 with s, min, h or d, such as 12h or 29.530588853d, or the name of a constant, such as synodic month.`;
}

/** A typed train against its target, or which of the two cannot be read. */
export function verifiedSays(verified: Verified, speaker: Speaker): string {
  if (verified.kind === 'refused') {
    return verified.field === 'train'
      ? `Train: found "${verified.found}", expected counts such as 46/9 x 104/9 or 43x49/(16x19).`
      : `Against: found "${verified.found}", expected a number or fraction greater than 0, such as 29.530588853.`;
  }
  const { ratio, achieved, wanted, error, digitsThatAgree } = verified;
  if (error.n === 0n) return `${fractionText(ratio)} is exactly ${wanted}.`;
  return `${fractionText(ratio)} = ${achieved} against ${wanted}: ${counted(digitsThatAgree, 'digit')} ${digitsThatAgree === 1 ? 'agrees' : 'agree'}; ${rowErrorSays({ error }, speaker)}.`;
}
