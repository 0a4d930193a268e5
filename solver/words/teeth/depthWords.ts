/** What a maker would say of a depth: its verdict in a word, remarks with their remedies, and the whole in lines of text. */
import type {
  DepthEntry,
  DepthMove,
  DepthRemark,
  DepthVerdict,
  DepthWindow,
  FullForms,
  ShakeFigure,
} from '../../teeth/index.ts';
import { asSentence, listed } from '../lists.ts';
import type { Speaker } from '../speaker.ts';
import { pairDoubtSays, pairFaultSays } from './pairWords.ts';
import { percentSays, sizeSays } from './sizeWords.ts';

/** A remark and, where there is one, its usual remedy: whole sentences both. */
export interface RemarkWords {
  readonly says: string;
  readonly remedy?: string;
}

type RemarkTable = {
  readonly [K in DepthRemark['kind']]: (
    told: Extract<DepthRemark, { readonly kind: K }>,
    speaker: Speaker,
  ) => RemarkWords;
};

/** "set it at 31.240 mm, 0.120 mm farther apart" */
function moveSays({ from, to }: DepthMove, { length }: Speaker): string {
  return `set it at ${length(to)}, ${length(Math.abs(to - from))} ${to > from ? 'farther apart' : 'closer'}`;
}

function shakeSays({ shake, inModules }: ShakeFigure, { length, number }: Speaker): string {
  return `${length(shake)} along the pitch line (${number(inModules, 2)} module)`;
}

/** The smallest change of a distance that a maker thinks in, mm, and what he calls it. */
function smallStep({ display }: Speaker): { readonly name: string; readonly mm: number } {
  return display.unit === 'inch' ? { name: 'thousandth', mm: 0.0254 } : { name: 'hundredth', mm: 0.01 };
}

/** What the smallest change of the distance does to the shake, from its change for 0.01 mm. */
export function smallChange(perHundredth: number, speaker: Speaker): { readonly step: string; readonly shake: string } {
  const { name, mm } = smallStep(speaker);
  return { step: name, shake: speaker.length(Math.abs(perHundredth) * (mm / 0.01)) };
}

function offSays({ kind, by, calculated, perHundredth }: Of<'shallow' | 'deep'>, speaker: Speaker): RemarkWords {
  const { step, shake } = smallChange(perHundredth, speaker);
  const way = kind === 'shallow' ? 'shallower' : 'deeper';
  return {
    says: `${speaker.length(by)} ${way} than calculated (${speaker.length(calculated)}); each ${step} changes the shake by ${shake}.`,
  };
}

type Of<K extends DepthRemark['kind']> = Extract<DepthRemark, { readonly kind: K }>;

function turnSays(told: Of<'turn'>, { name, length }: Speaker): RemarkWords {
  const [driver, driven] = told.wheels;
  const [least, greatest] = told.shake.map(length);
  const range = `from ${length(told.nearest)} to ${length(told.farthest)} over a whole turn (run-out and side shake): shake ${least} to ${greatest}`;
  const ENDS = {
    inside: { says: 'it stays free and in touch' },
    deep: {
      says: 'it tightens and binds at the nearest',
      remedy: `Set ${name(driver)} and ${name(driven)} at ${length(told.wide)}, or true the wheels.`,
    },
    shallow: {
      says: 'it loses even contact at the farthest',
      remedy: 'True the wheels and bush the pivots closer, or set the depth deeper.',
    },
  };
  const end = ENDS[told.ends];
  return { ...end, says: `The depth goes ${range}; ${end.says}.` };
}

function fullFormsRemedy({ pinion, addendum, free }: FullForms, speaker: Speaker): string {
  const ways = [
    ...(pinion === undefined ? [] : [`cut ${speaker.name(pinion)} as a pinion`]),
    ...(addendum === undefined ? [] : [`give both an addendum of ${speaker.number(addendum, 2)} module`]),
    ...(free === undefined ? [] : [`set them at ${speaker.length(free)}`]),
  ];
  return ways.length > 0 ? asSentence(`${listed(ways, 'or')}.`) : 'Cut them in a form that runs with its like.';
}

const REMARKS: RemarkTable = {
  bottoming: ({ tips, roots, by, move }, speaker) => ({
    says: `The tips of ${speaker.name(tips)} bottom in the roots of ${speaker.name(roots)} by ${speaker.length(by)}.`,
    remedy: `${asSentence(moveSays(move, speaker))}, or turn the tips down by as much.`,
  }),
  binding: ({ overlap, move }, speaker) => ({
    says: `It binds: the teeth overlap by ${speaker.length(overlap)} along the pitch line at the tightest place.`,
    remedy: `${asSentence(moveSays(move, speaker))} at least: the first distance that is free.`,
  }),
  drop: ({ driven, angle, move }, speaker) => ({
    says: `${asSentence(speaker.name(driven))} drops by ${speaker.angle(angle, 2)} when a tooth lets go before the next takes up.`,
    remedy: `Too shallow: ${moveSays(move, speaker)} or deeper.`,
  }),
  butting: ({ driven, angle, move }, speaker) => ({
    says: `Tips strike tips: the entering tooth throws ${speaker.name(driven)} ahead by ${speaker.angle(angle, 2)}.`,
    remedy: `Too shallow, or the pitches differ: ${moveSays(move, speaker)} or deeper, and compare the sizes.`,
  }),
  tight: ({ shake, wanted, move }, speaker) => ({
    says: `Tight: shake of ${shakeSays(shake, speaker)}.`,
    remedy: `For ${speaker.length(wanted)} ${moveSays(move, speaker)}.`,
  }),
  free: ({ shake }, speaker) => ({
    says: `Free: shake of ${shakeSays(shake, speaker)}.`,
    remedy: 'Deepen it if the hand must not wander; a train that only drives one way may stay so.',
  }),
  right: ({ shake }, speaker) => ({ says: `Shake of ${shakeSays(shake, speaker)}.` }),
  shallow: offSays,
  deep: offSays,
  engaging: ({ share, stepsDown, fewLeaves }, speaker) => ({
    says: `Engaging friction: for ${percentSays(share, speaker)} of the pitch the leading tooth rubs before the line of centres.`,
    remedy: stepsDown
      ? 'So it is where the smaller wheel drives; it does no harm where only hands are carried.'
      : `A little deeper setting, a fuller wheel tooth${fewLeaves ? ' or a pinion of 10 leaves or more' : ''} moves the action past the line.`,
  }),
  corner: ({ share }, speaker) => ({
    says: `For ${percentSays(share, speaker)} of the pitch a tip's corner bears instead of a flank.`,
    remedy: 'Round the corner and polish it, or bring the depth nearer to where the flanks share the work.',
  }),
  uneven: ({ driven, along, angle }, speaker) => ({
    says: `${asSentence(speaker.name(driven))} runs ahead and back by ${speaker.length(along)} along its pitch line at each tooth (${speaker.angle(angle, 3)}).`,
  }),
  turn: turnSays,
  fullForms: ({ full }, speaker) => ({
    says: `${asSentence(listed(full.wheels.map(speaker.name)))} are both cut as wheels: with full teeth they bind where their pitch circles touch, at ${speaker.length(full.calculated)}.`,
    remedy: fullFormsRemedy(full, speaker),
  }),
  otherSize: ({ distance, calculated, size }, speaker) => ({
    says: `${speaker.length(distance)} is far from the ${speaker.length(calculated)} of this size: teeth of ${sizeSays(size, speaker)} stand so far apart.`,
    remedy: 'Look whether the size or the reading is right.',
  }),
  lost: ({ why, runs }, speaker) => ({
    says: pairFaultSays(why, speaker),
    ...(runs ? { remedy: `The pair runs between ${speaker.length(runs[0])} and ${speaker.length(runs[1])}.` } : {}),
  }),
};

/** A remark on a depth with its usual remedy. */
export function remarkWords(remark: DepthRemark, speaker: Speaker): RemarkWords {
  // The table pairs every kind with its own fields, which the compiler cannot follow through an index.
  const words = REMARKS[remark.kind] as (told: DepthRemark, speaker: Speaker) => RemarkWords;
  return words(remark, speaker);
}

/** One word for the whole of a depth, as a heading. */
export const VERDICTS = {
  unfit: 'Does not fit',
  runs: 'Runs',
  tight: 'Tight',
  free: 'Free',
  binds: 'Binds',
  bottoms: 'Bottoms',
  shallow: 'Shallow',
  lost: 'Not in touch',
} as const satisfies Record<DepthVerdict, string>;

const DEEPEST_BY = { binding: 'binding', bottoming: 'bottoming' } as const satisfies Record<
  DepthWindow['deepestBy'],
  string
>;
const SHALLOWEST_BY = { evenContact: 'even contact ends', lost: 'contact lost' } as const satisfies Record<
  DepthWindow['shallowestBy'],
  string
>;

function contactLines({ contact, driver, driven }: DepthEntry, speaker: Speaker): string[] {
  if (contact.kind === 'none') return [];
  const { name, length, angle, number } = speaker;
  const { backlash, play, pressureAngle, tipClearance } = contact;
  return [
    `  shake ${length(backlash.least)} to ${length(backlash.greatest)}, ${angle(play.least, 2)} to ${angle(play.greatest, 2)} of ${name(driven)}`,
    `  pairs in contact ${number(contact.pairsInContact, 2)}; from ${number(contact.approach, 2)} pitch before the line of centres to ${number(contact.recess, 2)} after it; pressure angle ${angle(pressureAngle.least, 2)} to ${angle(pressureAngle.greatest, 2)}`,
    `  tip clearance ${length(tipClearance.driver)} (${name(driver)}), ${length(tipClearance.driven)} (${name(driven)}); unevenness ${length(contact.error.along)}`,
  ];
}

function windowLines({ window }: DepthEntry, speaker: Speaker): string[] {
  if (window.kind === 'none') return [];
  const { length } = speaker;
  const { step, shake } = smallChange(window.perHundredth, speaker);
  return [
    `  window ${length(window.deepest)} (${DEEPEST_BY[window.deepestBy]}) to ${length(window.shallowest)} (${SHALLOWEST_BY[window.shallowestBy]}); ${shake} of shake for each ${step}`,
    ...window.shakes.map(
      (wanted) =>
        `  shake ${length(wanted.shake)} falls at ${wanted.distance === undefined ? 'no distance of the window' : length(wanted.distance)}`,
    ),
  ];
}

/** One depth in lines of text, under "X drives Y: runs at 31.120 mm". */
export function depthLines(entry: DepthEntry, speaker: Speaker): readonly string[] {
  const { name, length } = speaker;
  const values = [
    // The pitch circles of teeth that do not fit touch somewhere too: that is no depth.
    ...(entry.verdict === 'unfit' ? [] : [`calculated ${length(entry.calculated)}`]),
    ...(entry.measured === undefined ? [] : [`measured ${length(entry.measured)}`]),
    ...(entry.held === undefined ? [] : [`held ${length(entry.held)}`]),
  ];
  const remarks = entry.remarks.map((remark) => {
    const { says, remedy } = remarkWords(remark, speaker);
    return `  - ${says}${remedy === undefined ? '' : ` ${remedy}`}`;
  });
  return [
    `${asSentence(name(entry.driver))} drives ${name(entry.driven)}: ${VERDICTS[entry.verdict].toLowerCase()} at ${length(entry.distance)}, ${[entry.distanceFrom, values.join(', ')].filter((part) => part !== '').join('; ')}`,
    ...contactLines(entry, speaker),
    ...windowLines(entry, speaker),
    ...remarks,
    ...entry.doubts.map((doubt) => `  ! ${pairDoubtSays(doubt, speaker)}`),
  ];
}
