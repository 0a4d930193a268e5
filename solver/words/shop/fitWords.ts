/** Fits in words: standard fits, what a reamer leaves, bushes to press in. Small play in micrometres, or thousandths of an inch. */
import type { Fit, FitFeel, FitUse, OutsideTable, PressedBore, Reamed, Warming } from '../../made/fits/index.ts';
import { fixed, MM_PER_INCH } from '../../movement/measures.ts';
import { type Sentences, sentenceOf } from '../saying.ts';
import type { Speaker } from '../speaker.ts';

/** How a hole and a shaft go together. */
export const FEELS = {
  press: 'press fit',
  push: 'push fit',
  snug: 'snug',
  sliding: 'sliding',
  running: 'running',
  loose: 'loose',
} as const satisfies Readonly<Record<FitFeel, string>>;

/** What a standard fit is for. */
const USES: Readonly<Record<FitUse, string>> = {
  register: 'a register that finds its place again',
  pressed: 'a bush to press in',
  seat: 'a wheel on its seat, pushed on',
  collar: 'a collar that slides and is fixed',
  running: 'an arbor or stud that runs in oil',
};

/** What a standard fit is for, as it goes on after "For". */
export const useSays = (use: FitUse): string => USES[use];

/** Play or interference as a gauge reads it, mm; the unit stands behind the last of several. */
function fine({ display }: Speaker, ...mm: readonly number[]): string {
  const inch = display.unit === 'inch';
  const figures = mm.map((each) => (inch ? fixed((1000 * each) / MM_PER_INCH, 2) : fixed(1000 * each, 0)));
  return `${figures.join(' to ')} ${inch ? 'thou' : 'µm'}`;
}

const outside = ({ size, upTo }: OutsideTable, { length }: Speaker): string =>
  `${length(size)}: the table holds sizes above zero up to ${length(upTo)}.`;

const FITS: Sentences<Fit> = {
  fit: ({ hole, shaft, limits }, speaker) => `${hole}/${shaft}: ${spanSays(limits.clearance, speaker)}.`,
  outsideTable: outside,
};

function spanSays([least, most]: readonly [number, number], speaker: Speaker): string {
  if (least >= 0) return `always free, ${fine(speaker, least, most)}`;
  if (most <= 0) return `always tight, ${fine(speaker, -most, -least)}`;
  return `from ${fine(speaker, -least)} tight to ${fine(speaker, most)} free`;
}

/** A standard fit: how free or tight it is, or that the table does not hold the size. */
export function fitSays(fit: Fit, speaker: Speaker): string {
  return sentenceOf(FITS, fit, speaker);
}

const STATES: Readonly<Record<Extract<Reamed, { kind: 'hole' }>['state'], ReamedState>> = {
  within: ({ hole, wearLeft }, speaker) => `within ${hole}; it may still wear by ${fine(speaker, wearLeft)}`,
  wide: ({ hole, over }, speaker) =>
    `${fine(speaker, over)} wider than ${hole} allows: stone it down, or keep it for running holes`,
  worn: ({ hole, wearLeft }, speaker) =>
    `${fine(speaker, -wearLeft)} smaller than ${hole} asks: worn or sharpened down; broach the hole after it`,
};
type ReamedState = (reamed: Extract<Reamed, { kind: 'hole' }>, speaker: Speaker) => string;

const REAMED: Sentences<Reamed> = {
  hole: (reamed, speaker) => `It leaves ${speaker.length(reamed.cuts)}: ${STATES[reamed.state](reamed, speaker)}.`,
  outsideTable: outside,
};

/** What a reamer leaves. */
export function reamedSays(reamed: Reamed, speaker: Speaker): string {
  return sentenceOf(REAMED, reamed, speaker);
}

/** Gaps that soft solder and retaining compounds want, mm: common practice. */
const SOLDER = [0.05, 0.1] as const;
const COMPOUND = [0.02, 0.05] as const;

const PRESSED: Sentences<PressedBore> = {
  bore: ({ before, interference, closes }, speaker) =>
    `Bore ${speaker.length(before)} before pressing: ${fine(speaker, interference)} of interference close it by about ${fine(speaker, closes)}. Press with a guided arbor, eyes covered and hands clear.`,
  loose: ({ gap }, speaker) =>
    `The bush is ${fine(speaker, gap)} smaller than its seat: it will not hold by pressing. Soft solder wants a gap of ${fine(speaker, ...SOLDER)} all told, a retaining compound ${fine(speaker, ...COMPOUND)} (common practice; follow its maker's sheet).`,
};

/** What to bore before a bush is pressed in. */
export function pressedSays(pressed: PressedBore, speaker: Speaker): string {
  return sentenceOf(PRESSED, pressed, speaker);
}

/** How much to warm a brass seat for a bush to slip in. */
export function warmingSays({ degrees, isTooWarm }: Warming): string {
  const warm = `A brass plate warmed by about ${Math.ceil(degrees / 5) * 5} °C lets it slip in`;
  return isTooWarm
    ? `${warm}: too warm for hardened brass, lacquer and soft solder; press it cold instead.`
    : `${warm}. Hot metal: tongs, a tray that cannot burn, and what your local rules ask of hot work.`;
}

/** A hole and a shaft as made: "24 µm free". */
export function playBetween(hole: number, shaft: number, speaker: Speaker): string {
  return `${fine(speaker, Math.abs(hole - shaft))} ${hole < shaft ? 'tight' : 'free'}`;
}
