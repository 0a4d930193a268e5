/** What a rehearsal found, and what it leaves out. */
import type { LeftOut, NoRehearsal, RehearsalReport } from '../../clearance/rehearsal/index.ts';
import { counted } from '../lists.ts';
import { type Sentences, sentenceOf } from '../saying.ts';
import type { Speaker } from '../speaker.ts';
import { teethSay } from '../teeth/toothWords.ts';
import { namesOfParts } from './pieces.ts';

/** A lean below this is told as none, degrees: half of the last figure. */
const LEAST_LEAN = 0.005;
/** Binding that chords of the teeth may hide, mm. */
const HIDDEN_BINDING = 0.03;

const radians = (degrees: number): number => (degrees * Math.PI) / 180;

/** Whether the train runs, how far it came, and what stops it. */
export function rehearsalSays(report: RehearsalReport, speaker: Speaker): string {
  const turns = `${speaker.number(report.turns, 2)} turns of ${speaker.name(report.input)}`;
  return report.runs ? runsSays(report, turns, speaker) : stopsSays(report, turns, speaker);
}

function runsSays({ aside, leans, driven }: RehearsalReport, turns: string, { name, length, angle }: Speaker): string {
  const most = Math.max(...aside.map((each) => each.most));
  const lean = leans.reduce((a, b) => (b.tiltDeg > a.tiltDeg ? b : a));
  const leaning =
    lean.tiltDeg < LEAST_LEAN ? '' : ` ${name(lean.arbor)} leans the most, by ${angle(radians(lean.tiltDeg), 2)}.`;
  const all = driven === 1 ? 'the driven arbor' : `all ${driven} driven arbors`;
  return `It runs: ${turns}, ${all} by a tooth or more, arbors pushed aside by up to ${length(most)}.${leaning}`;
}

function stopsSays(report: RehearsalReport, turns: string, speaker: Speaker): string {
  const { stoppedBy = 'stall', stoppedWheels, stoppedAt = [], inputDeg, overlap, moved, driven } = report;
  const where = namesOfParts(stoppedWheels ?? stoppedAt, speaker);
  const when = `after ${turns}, with it at ${speaker.angle(radians(inputDeg))}`;
  const share = `${moved} of ${counted(driven, 'driven arbor')} had moved by a tooth`;
  if (stoppedBy === 'unmoved') {
    return `Whether it runs cannot be told: ${share} after ${turns}. More turns are wanted for ${where}.`;
  }
  const how: Readonly<Record<typeof stoppedBy, string>> = {
    forced: `the teeth of ${where} are forced into each other by ${speaker.length(overlap)}`,
    stall: `it stalls at ${where}`,
    slip: `teeth slip past each other at ${where}`,
  };
  return `It does not run: ${how[stoppedBy]}, ${when}; ${share}.`;
}

const NONE: Sentences<NoRehearsal> = {
  noDepth: () => 'There is no depth to rehearse.',
  leadsNowhere: () => 'No depth leads on from the arbor that drives: nothing to rehearse.',
  noTeeth: ({ form }, speaker) => teethSay(form.why, speaker),
};

/** Why there is nothing to rehearse. */
export function noRehearsalSays(why: NoRehearsal, speaker: Speaker): string {
  return sentenceOf(NONE, why, speaker);
}

const LEFT_OUT: Sentences<LeftOut> = {
  weight: () => 'weight, and the true force of the drive: the torque is just enough to turn the train',
  leanOnDepths: () =>
    'what a lean does to the depths: the teeth meet as if all arbors stood upright, with the play of their bearings at that height',
  friction: () => 'oil, dirt, and the friction of pivots: only teeth rub',
  flanks: (_, { about }) =>
    `flanks between points: chords stay within 0.003 module of the true form, root corners included, and a pair that binds by no more than about ${about(HIDDEN_BINDING)} may run here; the window of the depth tells of that`,
  couplings: () => 'worms, contrate wheels, carriers and fingers',
  depths: ({ count, most }) => `${counted(count, 'depth')} that the drive does not reach, or beyond the first ${most}`,
};

/** What a rehearsal leaves out, as an item of a list. */
export function leftOutSays(left: LeftOut, speaker: Speaker): string {
  return sentenceOf(LEFT_OUT, left, speaker);
}
