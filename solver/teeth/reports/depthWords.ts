/** What a maker would say of a depth, each with its number and the usual remedy. */
import type { PairContact } from '../contact/contact.ts';
import type { DepthWindow } from '../contact/windowOfDepth.ts';
import { degreesText, fixed, mm } from './figures.ts';

export type DepthVerdict = 'runs' | 'tight' | 'free' | 'binds' | 'bottoms' | 'shallow' | 'lost';

/** One thing to say of a depth, and how much it matters. */
export interface DepthWord {
  readonly kind:
    | 'binding'
    | 'bottoming'
    | 'tight'
    | 'free'
    | 'right'
    | 'deep'
    | 'shallow'
    | 'engaging'
    | 'corner'
    | 'uneven'
    | 'drop'
    | 'butting'
    | 'turn'
    | 'lost';
  readonly says: string;
  readonly remedy?: string;
}

/** What the words need to know of the pair. */
export interface PairNames {
  readonly driver: string;
  readonly driven: string;
  readonly module: number;
  readonly involute: boolean;
  /** Straight-sided teeth always bear on their tips: no word is made of it. */
  readonly straight: boolean;
  /** The driver has the fewer teeth, as in motion work. */
  readonly stepsDown: boolean;
  /** Leaves of the driven wheel when it is a pinion. */
  readonly leaves: number | undefined;
}

/**
 * Bounds of the words, × module: our own, from the trade's habit (an involute pair is set almost without play, clock
 * teeth have half a module by design).
 */
const TIGHT = { involute: 0.02, clock: 0.1 } as const;
const FREE = { involute: 0.2, clock: 0.75 } as const;
/** Shares of the pitch above which engaging friction and bearing corners are worth a word. */
const ENGAGING_FROM = 0.15;
const CORNERS_FROM = 0.02;
/** Unevenness worth a word, × module. */
const UNEVEN_FROM = 0.05;

const percent = (share: number): string => `${Math.round(100 * share)} %`;

/** Words of a running or binding contact, the gravest first. */
export function depthWords(contact: PairContact, window: DepthWindow, names: PairNames): readonly DepthWord[] {
  return [
    ...hindrances(contact, window, names),
    ...placeWords(contact, window, names),
    // Of an overlap there is no action to speak of.
    ...(contact.binds ? [] : actionWords(contact, names)),
    ...turnWords(window, names),
  ];
}

/** "set it at 31.24, 0.12 mm farther apart" from here to a distance. */
function moveTo(from: number, to: number): string {
  const by = to - from;
  return `set it at ${mm(to)}, ${mm(Math.abs(by))} mm ${by > 0 ? 'farther apart' : 'closer'}`;
}

function hindrances(contact: PairContact, window: DepthWindow, names: PairNames): DepthWord[] {
  const words: DepthWord[] = [];
  if (contact.bottoms) {
    const { driver, driven } = contact.tipClearance;
    const [tips, roots] = driver < driven ? [names.driver, names.driven] : [names.driven, names.driver];
    words.push({
      kind: 'bottoming',
      says: `The tips of ${tips} bottom in the roots of ${roots} by ${mm(-Math.min(driver, driven))} mm.`,
      remedy: `${capital(moveTo(contact.distance, window.deepest))}, or turn the tips down by as much.`,
    });
  }
  if (contact.binds) {
    words.push({
      kind: 'binding',
      says: `It binds: the teeth overlap by ${mm(-contact.backlash.least)} mm along the pitch line at the tightest place.`,
      remedy: `${capital(moveTo(contact.distance, window.deepest))} at least: the first distance that is free.`,
    });
  }
  if (contact.drop > 0) {
    words.push({
      kind: 'drop',
      says: `${names.driven} drops by ${degreesText(contact.drop)} when a tooth lets go before the next takes up.`,
      remedy: `Too shallow: ${moveTo(contact.distance, window.shallowest)} or deeper.`,
    });
  }
  if (contact.butting > 0) {
    words.push({
      kind: 'butting',
      says: `Tips strike tips: the entering tooth throws ${names.driven} ahead by ${degreesText(contact.butting)}.`,
      remedy: `Too shallow, or the pitches differ: ${moveTo(contact.distance, window.shallowest)} or deeper, and compare the sizes.`,
    });
  }
  return words;
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

function placeWords(contact: PairContact, window: DepthWindow, names: PairNames): DepthWord[] {
  const { module } = names;
  const mean = contact.backlash.mean;
  const figure = `${mm(mean)} mm along the pitch line (${fixed(mean / module, 2)} module)`;
  const system = names.involute ? 'involute' : 'clock';
  const words: DepthWord[] = [];
  if (!contact.binds && mean < TIGHT[system] * module) {
    const wanted = TIGHT[system] * module;
    const add = window.perHundredth === 0 ? 0 : ((wanted - mean) / window.perHundredth) * 0.01;
    words.push({
      kind: 'tight',
      says: `Tight: shake of ${figure}.`,
      remedy: `For ${mm(wanted)} mm ${moveTo(contact.distance, contact.distance + add)}.`,
    });
  } else if (mean > FREE[system] * module) {
    words.push({
      kind: 'free',
      says: `Free: shake of ${figure}.`,
      remedy: 'Deepen it if the hand must not wander; a train that only drives one way may stay so.',
    });
  } else if (!contact.binds) {
    words.push({ kind: 'right', says: `Shake of ${figure}.` });
  }
  const off = (contact.internal ? -1 : 1) * (contact.distance - window.calculated);
  if (Math.abs(off) >= 0.005) {
    const way = off > 0 ? 'shallower' : 'deeper';
    words.push({
      kind: off > 0 ? 'shallow' : 'deep',
      says: `${mm(Math.abs(off))} mm ${way} than calculated (${mm(window.calculated)}); each hundredth changes the shake by ${mm(Math.abs(window.perHundredth))} mm.`,
    });
  }
  return words;
}

function engagingRemedy(names: PairNames): string {
  if (names.stepsDown) return 'So it is where the smaller wheel drives; it does no harm where only hands are carried.';
  const more = names.leaves !== undefined && names.leaves < 10 ? ' or a pinion of 10 leaves or more' : '';
  return `A little deeper setting, a fuller wheel tooth${more} moves the action past the line.`;
}

function actionWords(contact: PairContact, names: PairNames): DepthWord[] {
  const words: DepthWord[] = [];
  if (contact.engaging >= ENGAGING_FROM && !names.involute && !names.straight) {
    words.push({
      kind: 'engaging',
      says: `Engaging friction: for ${percent(contact.engaging)} of the pitch the leading tooth rubs before the line of centres.`,
      remedy: engagingRemedy(names),
    });
  }
  if (contact.onCorners >= CORNERS_FROM && !names.straight) {
    words.push({
      kind: 'corner',
      says: `For ${percent(contact.onCorners)} of the pitch a tip's corner bears instead of a flank.`,
      remedy: 'Round the corner and polish it, or bring the depth nearer to where the flanks share the work.',
    });
  }
  if (contact.error.along >= UNEVEN_FROM * names.module) {
    words.push({
      kind: 'uneven',
      says: `${names.driven} runs ahead and back by ${mm(contact.error.along)} mm along its pitch line at each tooth (${degreesText(contact.error.angle, 3)}).`,
    });
  }
  return words;
}

function turnWords(window: DepthWindow, names: PairNames): DepthWord[] {
  const { turn } = window;
  if (turn.spread < 1e-6) return [];
  const range = `from ${mm(turn.nearest)} to ${mm(turn.farthest)} over a whole turn (run-out and side shake)`;
  const shakes = `shake ${mm(turn.leastBacklash)} to ${mm(turn.greatestBacklash)} mm`;
  if (turn.staysInside)
    return [{ kind: 'turn', says: `The depth goes ${range}: ${shakes}; it stays free and in touch.` }];
  const wide = window.internal ? window.deepest - turn.spread : window.deepest + turn.spread;
  const deep = window.internal ? turn.farthest > window.deepest : turn.nearest < window.deepest;
  return [
    {
      kind: 'turn',
      says: `The depth goes ${range}: ${shakes}; ${deep ? 'it tightens and binds at the nearest' : 'it loses even contact at the farthest'}.`,
      remedy: deep
        ? `Set ${names.driver} and ${names.driven} at ${mm(wide)}, or true the wheels.`
        : 'True the wheels and bush the pivots closer, or set the depth deeper.',
    },
  ];
}

/** One word for the whole. */
export function verdictOf(contact: PairContact, window: DepthWindow, names: PairNames): DepthVerdict {
  if (contact.bottoms) return 'bottoms';
  if (contact.binds) return 'binds';
  if (contact.drop > 0 || contact.butting > 0) return 'shallow';
  const past = (contact.internal ? -1 : 1) * (contact.distance - window.shallowest);
  if (past > 1e-6) return 'shallow';
  const system = names.involute ? 'involute' : 'clock';
  if (contact.backlash.mean < TIGHT[system] * names.module) return 'tight';
  return contact.backlash.mean > FREE[system] * names.module ? 'free' : 'runs';
}
