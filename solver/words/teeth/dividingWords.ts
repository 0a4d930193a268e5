/** Ways to divide a circle, as a maker works the crank: exact ones, near ones, and what a setting gives. */
import type { CrankMove, DividingWay, NearWay, NoSetting, SettingResult } from '../../teeth/cutting/index.ts';
import { counted, listed } from '../lists.ts';
import { type Sentences, sentenceOf } from '../saying.ts';
import type { Speaker } from '../speaker.ts';

const ORDINALS = ['', 'single', 'second', 'third'];

const ordinal = (n: number): string => ORDINALS[n] ?? `${n}th`;

/** "1 turn and 6 holes on 17" */
export function moveSays({ turns, holes, circle }: CrankMove): string {
  const whole = counted(turns, 'turn');
  if (holes === 0) return whole;
  const part = `${counted(Math.abs(holes), 'hole')} on ${circle}`;
  return turns === 0 ? part : `${whole} and ${part}`;
}

/** The move of crank and plate together: "back 3 holes on 19" where the plate goes against the crank. */
const togetherSays = (move: CrankMove): string => `${move.holes < 0 ? 'back ' : ''}${moveSays(move)}`;

const EXACT: Sentences<DividingWay> = {
  direct: ({ holes, circle }) => `Direct: every ${ordinal(holes)} hole of the ${circle} circle.`,
  simple: ({ head, moves }) => `${head}, simple: ${moves.map(moveSays).join(', or ')} for each tooth.`,
  compound: ({ head, first, second }) =>
    `${head}, compound: crank ${moveSays(first)}, then crank and plate together ${togetherSays(second)}.`,
  differential: ({ head, as, move, driving, driven, sense }) =>
    `${head}, differential: set for ${as} (${moveSays(move)}); wheels ${listed(driving.map(String))} on the spindle side drive ${listed(driven.map(String))} towards the plate, which must turn ${sense} the crank (${sense === 'with' ? 'fit or leave out an idler so that it does' : 'an idler more or less reverses it'}).`,
};

const NEAR: Sentences<NearWay> = {
  nearestHole: ({ head, circle, placeError, spacingError }, { angle }) =>
    `${head}, nearest holes of the ${circle} circle counted from the start: places within ${angle(placeError, 4)}, spaces within ${angle(spacingError, 4)}; errors do not add up.`,
  nearCompound: ({ head, first, second, skip, step, placeError }, { angle }) => {
    const teeth = skip === 1 ? 'each tooth' : `every ${skip} teeth, ${skip} times round`;
    return `${head}, near compound: crank ${moveSays(first)}, then together ${togetherSays(second)} for ${teeth}; wrong by ${angle(step, 4)} a move, at most ${angle(placeError, 4)} where the rounds meet.`;
  },
  angle: () =>
    'By angle on a rotary table, from the check-off list: rounded to a second of arc, so as near as the table itself can be read.',
};

const SETTINGS: Sentences<SettingResult | NoSetting> = {
  closes: ({ teeth }) => `This setting gives ${counted(teeth, 'tooth', 'teeth')}.`,
  goesRound: ({ teeth, rounds, nearest }) =>
    `This setting does not close in one turn: it gives ${counted(teeth, 'mark')} in ${counted(rounds, 'turn')} of the work. In one turn it comes nearest to ${counted(nearest, 'tooth', 'teeth')}.`,
  none: ({ ratio, turns, holes, circle }, { plain }) => {
    const isStated = [ratio, turns, holes, circle].every(Number.isFinite);
    const setting = isStated
      ? `A setting of ${plain(turns)} turns and ${plain(holes)} holes on ${plain(circle)} at ${plain(ratio)}:1`
      : 'This setting';
    return `${setting} moves nothing that can be counted: turns and holes must be whole and come to more than nothing.`;
  },
};

/** An exact way to divide. */
export function dividingWaySays(way: DividingWay, speaker: Speaker): string {
  return sentenceOf(EXACT, way, speaker);
}

/** A way that only comes near, with its errors. */
export function nearWaySays(way: NearWay, speaker: Speaker): string {
  return sentenceOf(NEAR, way, speaker);
}

/** What a crank setting really divides. */
export function settingSays(setting: SettingResult | NoSetting, speaker: Speaker): string {
  return sentenceOf(SETTINGS, setting, speaker);
}
