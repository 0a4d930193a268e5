/** The state of the planting in one sentence or two, for the strip below the bench. */
import type { PointId } from '../../movement/ids.ts';
import type { Disagreement, Place } from '../placed.ts';
import type { DraftRule } from './ruleValue.ts';
import { joined } from './words.ts';

/** What a rule of each kind is called when it is asked for. */
export const ASKED_AS: Record<DraftRule['kind'], string> = {
  held: 'a held place',
  depth: 'a depth',
  distance: 'a distance',
  radius: 'a radius',
  bearing: 'a bearing',
  opposite: 'an opposite point',
  samePlace: 'the same place as another',
  inLine: 'a line through two others',
  sameRadius: 'the same radius as another',
  evenSpacing: 'an even spacing',
  clearBy: 'a stated gap',
};

/** Kinds named in the sentence; the bench lists them all. */
const NAMED_KINDS = 3;

/**
 * "5 planted, 1 loose. 1 free motion: a depth, a distance or a bearing would settle C."
 *
 * @param settling kinds of rules that take a motion from the named point, the likeliest first, and how many it has
 */
export function saysOfPlanting(
  places: Iterable<Place>,
  freeMotions: number,
  disagreements: readonly Disagreement[],
  settling:
    | { readonly point: string; readonly kinds: readonly DraftRule['kind'][]; readonly freedoms: number }
    | undefined,
  pointName: (id: PointId) => string,
): string {
  const counts = { planted: 0, loose: 0, contested: 0 };
  const doubted: Record<'touching' | 'barely', string[]> = { touching: [], barely: [] };
  for (const { id, state, doubt } of places) {
    counts[state]++;
    if (doubt) doubted[doubt].push(pointName(id));
  }
  const { planted, loose, contested } = counts;
  if (planted + loose + contested === 0) return 'Nothing to plant yet.';
  const states = [`${planted} planted`];
  if (loose > 0) states.push(`${loose} loose`);
  if (contested > 0) states.push(`${contested} contested`);
  const sentences = [`${states.join(', ')}.`];
  if (freeMotions > 0) {
    const motions = `${freeMotions} free ${freeMotions === 1 ? 'motion' : 'motions'}`;
    const kinds = (settling?.kinds ?? []).slice(0, NAMED_KINDS).map((kind) => ASKED_AS[kind]);
    if (!settling || kinds.length === 0) sentences.push(`${motions}.`);
    else {
      // A held place takes both motions of a point, any other rule one.
      const settles = settling.freedoms === 1 || settling.kinds.every((kind) => kind === 'held');
      const does = settles ? 'would settle' : 'would take one from';
      sentences.push(`${motions}: ${joined(kinds, 'or')} ${does} ${settling.point}.`);
    }
  }
  const { touching, barely } = doubted;
  if (touching.length > 0)
    sentences.push(
      `${joined(touching)} ${touching.length > 1 ? 'stand' : 'stands'} where arcs only touch: a small error there goes far.`,
    );
  if (barely.length > 0)
    sentences.push(
      `${joined(barely)} ${barely.length > 1 ? 'are' : 'is'} only barely settled: a small error there goes far.`,
    );
  const [first, ...others] = disagreements;
  if (first) sentences.push(first.says);
  if (others.length > 0)
    sentences.push(`${others.length} more ${others.length === 1 ? 'disagreement' : 'disagreements'}.`);
  return sentences.join(' ');
}

/** The loose point that the sentence names: the one with the fewest freedoms of its own, the first in the movement. */
export function pointToSettle(places: Iterable<Place>): PointId | undefined {
  let best: Place | undefined;
  let fewest = Number.POSITIVE_INFINITY;
  for (const place of places) {
    if (place.state !== 'loose') continue;
    const freedoms = place.free.length;
    if (freedoms > 0 && freedoms < fewest) {
      best = place;
      fewest = freedoms;
    }
  }
  return best?.id;
}
