/** What is seen of a train that runs: what comes round, what dials read, how loose a hand is, the marks to set up by. */
import type { DialReading, LostMotion, Recurrence } from '../../train/drive/index.ts';
import type { ToothMark } from '../../train/index.ts';
import { multiply, rational } from '../../train/turning/rational.ts';
import { asSentence, counted, listed } from '../lists.ts';
import type { Speaker } from '../speaker.ts';
import { periodSays } from './periodWords.ts';

const COMES_ROUND = {
  turn: 'turns once in',
  tooth: 'pass a tooth every',
  meet: 'bring the same two teeth together every',
} as const satisfies Record<Recurrence['kind'], string>;

/** "Third and Escape pass a tooth every 2.5 s." */
export function recurrenceSays({ kind, parts, seconds }: Recurrence, { name }: Speaker): string {
  return asSentence(`${listed(parts.map(name))} ${COMES_ROUND[kind]} ${periodSays(seconds, 8)}.`);
}

/** "Minute hand: 3 turns and 90° clockwise." */
export function dialSays({ id, wholeTurns, rest, sense }: DialReading, { indication, exact }: Speaker): string {
  const whole = wholeTurns < 0n ? -wholeTurns : wholeTurns;
  const turns = counted(Number(whole), 'turn');
  return asSentence(`${indication(id)}: ${turns} and ${exact(multiply(rest, rational(360)), 7)}° ${sense}.`);
}

/** "Minute hand: 0.512° of lost motion, which is 0.085 min of what it shows." */
export function lostMotionSays({ id, angleDeg, seconds }: LostMotion, { indication, number }: Speaker): string {
  return asSentence(
    `${indication(id)}: ${number(angleDeg, 3)}° of lost motion, which is ${number(seconds / 60, 3)} min of what it shows.`,
  );
}

/** "Tooth 1 of Great between teeth 3 and 4 of Centre pinion." */
export function toothMarkSays({ wheels, tooth, between, missTeeth, meshes }: ToothMark, speaker: Speaker): string {
  const [a, b] = wheels;
  const wrong = meshes ? '' : ` (misses by ${speaker.number(Math.abs(missTeeth), 3)} of a tooth)`;
  return `Tooth ${tooth} of ${speaker.name(a)} between teeth ${between[0]} and ${between[1]} of ${speaker.name(b)}${wrong}.`;
}
