/** What drives a movement and what it beats: weight, spring, torques, pendulum, pallets; with the cautions. */
import type {
  Expected,
  InputProblem,
  PalletPlace,
  Pendulum,
  SpringDrive,
  TorqueReport,
  WeightDrive,
} from '../../train/drive/index.ts';
import { counted } from '../lists.ts';
import { type Sentences, sentenceOf } from '../saying.ts';
import type { Speaker } from '../speaker.ts';
import { percentSays } from '../teeth/sizeWords.ts';

/** Cautions that go with every output about weights. Common practice of the trade. */
export const WEIGHT_CAUTIONS: readonly string[] = [
  'A falling weight can hurt and break: check cord, hooks and knots, give the cord a stated safe load of several times the weight, and keep feet and children away from the path of the fall.',
  'Hold the train (click, fly or a wedge) before taking the weight off or on: a train let go runs down at speed.',
  'These numbers are aids to design. Local rules, and the advice of a qualified person where people could be hurt, come first.',
];

/** Cautions that go with every output about springs. Common practice of the trade. */
export const SPRING_CAUTIONS: readonly string[] = [
  'A wound mainspring holds enough energy to injure hands and eyes: let it down fully through the click with a let-down key before any work, and wear eye protection and gloves.',
  'Use a mainspring winder with a barrel sleeve; never take a spring out by hand. Check hooks, barrel cap and click for cracks before winding.',
  'These numbers are aids to design. Local rules, and the advice of a qualified person where people could be hurt, come first.',
];

/** One ounce of force at an inch, N·mm: a sixteenth of the pound-force (4.4482216152605 N by definition) times 25.4 mm. */
const OUNCE_INCH = (4.4482216152605 / 16) * 25.4;

/** What torques are told in: "N·mm", or ounces of force at an inch. */
export function torqueUnit({ display }: Speaker): string {
  return display.unit === 'inch' ? 'ozf·in' : 'N·mm';
}

/** A torque, N·mm, in the unit that goes with the document's lengths, without its name. */
export function torqueIn(torque: number, { display }: Speaker): number {
  return display.unit === 'inch' ? torque / OUNCE_INCH : torque;
}

/** "81.3 N·mm", or "11.51 ozf·in". */
export function torqueSays(torque: number, speaker: Speaker): string {
  const decimals = speaker.display.unit === 'inch' ? 2 : 1;
  return `${speaker.number(torqueIn(torque, speaker), decimals)} ${torqueUnit(speaker)}`;
}

const hours = (seconds: number, { number }: Speaker): string => `${number(seconds / 3600, 2)} h`;

/** What a weight gives over its fall. */
export function weightSays(drive: WeightDrive, speaker: Speaker): string {
  const { number, length } = speaker;
  const { layers } = drive;
  const [first, last] = [layers[0]?.torque ?? 0, layers.at(-1)?.torque ?? 0];
  const falling = layers.length > 1 ? ` falling to ${torqueSays(last, speaker)} as the layers run off` : '';
  return `${number(drive.turns, 2)} turns of the drum from ${length(drive.cordLength)} of cord: runs ${hours(drive.runSeconds, speaker)} at ${number(drive.power, 3)} milliwatts, torque at the drum ${torqueSays(first, speaker)}${falling}.`;
}

/** What a spring gives from wound to run down. */
export function springSays(drive: SpringDrive, speaker: Speaker): string {
  return `${speaker.number(drive.turns, 2)} turns, runs ${hours(drive.runSeconds, speaker)}; each turn wound adds ${torqueSays(drive.torquePerTurn, speaker)}; the spring fills ${percentSays(drive.fill, speaker)} of the room (50 %, a length of ${speaker.length(drive.bestLength)}, gives the most turns).`;
}

/** What the torques along a train leave out. */
export function torquesSay(
  { lossPerDepth, lossPerPivot }: Extract<TorqueReport, { readonly kind: 'torques' }>,
  { number }: Speaker,
): string {
  return `Losses of ${number(100 * lossPerDepth, 1)} % a depth and ${number(100 * lossPerPivot, 1)} % an arbor are settings; the torques are for the whole pull going one way.`;
}

/** The pendulum for a beat. */
export function pendulumSays(pendulum: Pendulum, { plain, length }: Speaker): string {
  const { beatsPerHour, amplitudeDeg } = pendulum;
  return `${plain(beatsPerHour, 10)} beats an hour: ${length(pendulum.length)} to the centre of oscillation at ${plain(amplitudeDeg)}° either side; ${length(pendulum.millimetresPerSecondADay)} of length is a second a day.`;
}

/** Where the pallets stand. */
export function palletsSay({ teeth, span, distance }: PalletPlace, { plain, length }: Speaker): string {
  return `${counted(teeth, 'tooth', 'teeth')} over ${plain(span)}: axes ${length(distance)} apart. Make the pallets' place adjustable, so that lock can be set.`;
}

/** How a typed number is told in its own unit: a length in the document's, a share as per cent, others as they are. */
export type FoundWords = (value: number) => string;

function rangeSays({ above, from, upTo, whole }: Extract<Expected, { kind: 'range' }>, figure: FoundWords): string {
  const words = [
    whole ? 'a whole number' : 'a number',
    above === undefined ? '' : `greater than ${figure(above)}`,
    from === undefined ? '' : `from ${figure(from)}`,
    upTo === undefined ? '' : `up to ${figure(upTo)}`,
  ];
  return words.filter((word) => word !== '').join(' ');
}

/**
 * "found −4 mm, expected a number greater than 0 mm": what was wrong with a number, after the label of its field.
 *
 * @param figure how a number of that field is told
 */
export function inputProblemSays({ found, expected }: InputProblem, figure: FoundWords, speaker: Speaker): string {
  const EXPECTED: Sentences<Expected> = {
    range: (range) => rangeSays(range, figure),
    insideBarrel: ({ below }) => `less than the barrel's ${figure(below)}`,
    fillsBarrel: ({ below }) => `less than ${figure(below)}, which fills the barrel`,
    underHalfTheTeeth: ({ teeth }) => `less than half the ${teeth} teeth`,
    arborThatTurns: () => 'an arbor that turns with the drive',
  };
  const wanted = sentenceOf(EXPECTED, expected, speaker);
  if (found === undefined) return `expected ${wanted}.`;
  return `found ${Number.isFinite(found) ? figure(found) : 'no number'}, expected ${wanted}.`;
}
