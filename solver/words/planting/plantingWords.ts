/** The state of a planting: how many points stand, what would settle the rest, what disagrees. */

import { toSettle } from '../../planting/index.ts';
import type { Place, PlacedMovement } from '../../planting/placed.ts';
import { asSentence, counted, listed } from '../lists.ts';
import { ruleAsked, ruleQuoted } from '../rules.ts';
import type { Speaker } from '../speaker.ts';
import { disagreementSays } from './disagreementWords.ts';

/** Kinds named in the sentence; the bench lists them all. */
const NAMED_KINDS = 3;

/** "5 planted, 1 loose": a heading, without a full stop. */
export function plantingHeadline({ places }: Pick<PlacedMovement, 'places'>): string {
  const counts: Record<Place['state'], number> = { planted: 0, loose: 0, contested: 0 };
  for (const { state } of places.values()) counts[state]++;
  const { planted, loose, contested } = counts;
  if (planted + loose + contested === 0) return 'Nothing to plant yet';
  return [
    `${planted} planted`,
    ...(loose > 0 ? [`${loose} loose`] : []),
    ...(contested > 0 ? [`${contested} contested`] : []),
  ].join(', ');
}

/** What stands below the heading: "1 free motion: a depth, a distance or a direction would settle C.", then what disagrees first. */
export function plantingDetail(placed: PlacedMovement, speaker: Speaker): string {
  const [first, ...others] = placed.places.size > 0 ? placed.disagreements : [];
  return [
    ...(placed.freeMotions > 0 ? [motionsSay(placed, speaker)] : []),
    ...DOUBTS.flatMap((doubt) => doubtSays(placed, doubt, speaker)),
    ...(first ? [disagreementSays(first, speaker)] : []),
    ...(others.length > 0 ? [`${others.length} more ${others.length === 1 ? 'disagreement' : 'disagreements'}.`] : []),
  ].join(' ');
}

/** Heading and detail as whole sentences. */
export function plantingSays(placed: PlacedMovement, speaker: Speaker): string {
  return `${plantingHeadline(placed)}. ${plantingDetail(placed, speaker)}`.trimEnd();
}

type Doubt = NonNullable<Place['doubt']>;

/** What a point whose place is doubtful does, for one and for several. */
const DOUBTED: Readonly<Record<Doubt, readonly [one: string, many: string]>> = {
  touching: ['stands where arcs only touch', 'stand where arcs only touch'],
  barely: ['is only barely settled', 'are only barely settled'],
};
const DOUBTS: readonly Doubt[] = ['touching', 'barely'];

function doubtSays({ places }: PlacedMovement, doubt: Doubt, speaker: Speaker): readonly string[] {
  const points = [...places.values()].filter((place) => place.doubt === doubt).map(({ id }) => speaker.name(id));
  if (points.length === 0) return [];
  const [one, many] = DOUBTED[doubt];
  return [asSentence(`${listed(points)} ${points.length > 1 ? many : one}: a small error there goes far.`)];
}

function motionsSay(placed: PlacedMovement, speaker: Speaker): string {
  const motions = counted(placed.freeMotions, 'free motion');
  const settling = toSettle(placed);
  if (settling && settling.told.length > 0) {
    const rules = listed(
      settling.told.slice(0, NAMED_KINDS).map((id) => ruleQuoted(id, speaker)),
      'or',
    );
    const isOne = settling.told.length === 1;
    return `${motions}: ${rules} would take one, but ${isOne ? 'it is' : 'each is'} told to check.`;
  }
  if (!settling || settling.kinds.length === 0) return `${motions}.`;
  // A held place takes both motions of a point, any other rule one.
  const settles = settling.freedoms === 1 || settling.kinds.every((kind) => kind === 'held');
  const asked = listed(settling.kinds.slice(0, NAMED_KINDS).map(ruleAsked), 'or');
  return `${motions}: ${asked} ${settles ? 'would settle' : 'would take one from'} ${speaker.name(settling.point)}.`;
}
