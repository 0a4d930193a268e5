/** How holes are carried from one plate to the other, a sentence for each thing to do. */
import type { SharedHole, TransferPlan, TransferStep } from '../../marking/index.ts';
import { asSentence, listed } from '../lists.ts';
import { type Sentences, sentenceOf } from '../saying.ts';
import type { Speaker } from '../speaker.ts';

const holeName = ({ labels: [a, b] }: SharedHole): string => (a === b ? a : `${a} / ${b}`);

const STEPS: Sentences<TransferStep> = {
  mark: ({ plates }, { name }) => `Mark ${listed(plates.map(name))}: outside, top and front, before they come apart.`,
  clamp: ({ registers, mirrored }) => {
    const together =
      registers.length === 0
        ? 'The plates have no register or notch in common. Clamp them with their edges flush'
        : `Clamp them with ${listed(registers)} together`;
    const faces = mirrored
      ? ', marked faces outwards: on one face the points stand mirrored'
      : ', both marked faces up';
    return `${together}${faces}.`;
  },
  tooFew: () => 'The plates share too few holes for dowels: add two marks with holes outside the train.',
  pin: ({ hole, isFirst }, { length }) =>
    `${isFirst ? 'Drill' : 'Then drill'} ${holeName(hole)} through both at Ø ${length(Math.min(...hole.diameters))} and pin it before the next hole.`,
  pinsFit: ({ oneWay }) =>
    oneWay
      ? 'With these pins the plates go together one way only.'
      : 'These pins also fit another way: use two different diameters, or a third pin off their line.',
  drill: ({ hole, openedIn }, { length, name }) => {
    const [least, most] = [Math.min(...hole.diameters), Math.max(...hole.diameters)];
    const opened = openedIn === undefined ? '' : `, opened to Ø ${length(most)} in ${name(openedIn)}`;
    return `Drill ${hole.isReamed ? 'and ream ' : ''}${holeName(hole)} through both: Ø ${length(least)}${opened}.`;
  },
};

/** The plan, in working order. */
export function transferSays({ steps }: TransferPlan, speaker: Speaker): readonly string[] {
  return steps.map((step) => asSentence(sentenceOf(STEPS, step, speaker)));
}
