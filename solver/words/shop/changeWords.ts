/** What a reading or a drilled hole changed, in sentences: places, depths, play, findings. */
import { type PlayChange, SAME_PLAY } from '../../made/fits/index.ts';
import { type Consequences, type DepthChange, type DepthState, MOVED, type PointMove } from '../../made/index.ts';
import { findingChangesSay } from '../clearance/findingWords.ts';
import { asSentence } from '../lists.ts';
import type { Speaker } from '../speaker.ts';
import { shiftSays } from './shiftWords.ts';

const moveSays = ({ id, shift }: PointMove, speaker: Speaker): string =>
  `${asSentence(speaker.name(id))} moves ${shiftSays(shift, speaker)}.`;

/** How a pair runs, after "It runs" and in tables. */
export const RUNS = {
  free: 'free',
  tight: 'it binds',
  bottoms: 'tips strike the roots',
  apart: 'teeth let go before the next take up',
  unknown: 'contact cannot be told',
} as const satisfies Readonly<Record<DepthState['runs'], string>>;

function depthSays({ rule, before, after }: DepthChange, speaker: Speaker): string {
  const { length } = speaker;
  const change = after.distance - before.distance;
  const moved =
    Math.abs(change) <= MOVED
      ? `as deep as before at ${length(after.distance)}`
      : `${length(Math.abs(change))} ${change > 0 ? 'shallower' : 'deeper'}, now ${length(after.distance)}`;
  const freedom =
    before.shake === undefined || after.shake === undefined
      ? ''
      : `; freedom ${length(before.shake)} before, ${length(after.shake)} after`;
  const runs = after.runs === 'free' ? '' : `: ${RUNS[after.runs]}`;
  return `${asSentence(speaker.rule(rule))}: ${moved}${freedom}${runs}.`;
}

/** "Third: side shake 0.025 mm before, 0.040 mm after; end shake 0.200 mm before, 0.150 mm after." */
function playSays({ arbor, before, after }: PlayChange, speaker: Speaker): string {
  const told = (kind: 'side shake' | 'end shake', was: number, is: number): string[] =>
    Math.abs(was - is) <= SAME_PLAY ? [] : [`${kind} ${speaker.length(was)} before, ${speaker.length(is)} after`];
  const parts = [...told('side shake', before.side, after.side), ...told('end shake', before.end, after.end)];
  return `${asSentence(speaker.name(arbor))}: ${parts.join('; ')}.`;
}

function playsAndFindings(found: Consequences, speaker: Speaker): string[] {
  return [...found.plays.map((play) => playSays(play, speaker)), ...findingChangesSay(found, speaker)];
}

/** All that changed, a sentence each. */
export function changesSay(found: Consequences, speaker: Speaker): readonly string[] {
  const all = [
    ...found.moves.map((move) => moveSays(move, speaker)),
    ...found.depths.map((depth) => depthSays(depth, speaker)),
    ...playsAndFindings(found, speaker),
  ];
  return all.length > 0 ? all : ['Nothing changes.'];
}

/** The same for where the depths stand in a table beside it. */
export function changesBesideDepths(found: Consequences, speaker: Speaker): readonly string[] {
  if (found.depths.length === 0) return changesSay(found, speaker);
  return [...found.moves.map((move) => moveSays(move, speaker)), ...playsAndFindings(found, speaker)];
}
