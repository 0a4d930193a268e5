/** Rules that cannot hold together as sentences, with the number that would cure it. */
import type {
  CheckOver,
  Disagreement,
  LengthCure,
  LociMiss,
  LocusTold,
  NotKeptCause,
  SetFails,
} from '../../planting/index.ts';
import { asSentence, listed } from '../lists.ts';
import { ruleKindInWords } from '../ruleKinds/ruleKinds.ts';
import { ruleQuoted } from '../rules.ts';
import { type Sentences, sentenceOf } from '../saying.ts';
import type { Speaker } from '../speaker.ts';

/** A cause together with the disagreement that it explains. */
type Told = Disagreement['cause'] & { readonly disagreement: Disagreement };

const SAYS: Sentences<Told> = {
  miss: missSays,
  set: setSays,
  degenerate: ({ implied, disagreement }, speaker) => {
    const named = asSentence(listed(namedRules(disagreement, implied, speaker)));
    return `${named} hold only where two points fall together, and there a direction or a line through them has no meaning. Give a length from the point it is named from, or leave one out.`;
  },
  over: overSays,
  notKept: ({ why, disagreement }, speaker) => {
    const rule = disagreement.rules.map((id) => ruleQuoted(id, speaker)).join('');
    return `${asSentence(rule)} is not kept: ${sentenceOf(NOT_KEPT, why, speaker)}.`;
  },
};

/** The disagreement in one or two whole sentences. */
export function disagreementSays(disagreement: Disagreement, speaker: Speaker): string {
  return sentenceOf<Told>(SAYS, { ...disagreement.cause, disagreement }, speaker);
}

/** "The depth of A and B checks, and is over by 0.050 mm (0.020 mm may be left): it measures 31.320 mm. It cannot hold with …" */
function overSays(
  { check, also, allowed, implied, measures, disagreement }: Told & CheckOver,
  speaker: Speaker,
): string {
  const { rules, gap } = disagreement;
  const others = namedRules({ ...disagreement, rules: rules.filter((id) => id !== check) }, implied, speaker);
  const now =
    measures === undefined
      ? ''
      : `; it measures ${measures.kind === 'angle' ? speaker.angle((measures.value * Math.PI) / 180, 4) : speaker.length(measures.value)}`;
  const over = `${asSentence(ruleQuoted(check, speaker))} only checks and misses by ${speaker.length(gap)}, where ${speaker.length(allowed)} may be left${now}.`;
  const against = others.length === 0 ? over : `${over} It cannot hold with ${listed(others)}.`;
  const { cure } = disagreement;
  if (also.length === 0 || !cure) return against;
  const isAngle = speaker.movement.rules.find(({ id }) => id === cure.rule)?.kind === 'bearing';
  const value = isAngle ? speaker.angle((cure.value * Math.PI) / 180, 4) : speaker.length(cure.value);
  const checks = listed(also.map((id) => ruleQuoted(id, speaker)));
  const all = also.length === 1 ? 'both' : 'all of them';
  return `${against} So it is with ${checks}: with ${value} for ${ruleQuoted(cure.rule, speaker)}, ${all} would hold.`;
}

const NOT_KEPT: Sentences<NotKeptCause> = {
  missing: ({ what }) => `it names a ${what} that is not there`,
  twice: ({ point }, { name }) => `it names ${name(point)} twice`,
  noDistance: ({ distance }, { length }) => `its distance comes to ${length(distance)}, which no two arbors can keep`,
  bothFixed: () => 'both of its parts belong to the case, and neither can move',
  fewLengths: () => 'of the lengths it names, fewer than two count and lead to its point',
  noLengthOfPoint: ({ rule }, speaker) => `it names ${ruleQuoted(rule, speaker)}, which is no length of its point`,
  noEdge: () => 'the edge that it names is not there',
  noRoom: ({ most }, { length }) => `there is no room for its gap inside the ring: at most ${length(most)}`,
  tooLarge: ({ by }, { length }) => `the part is ${length(by)} too large in radius to stand inside the ring at all`,
};

const LOCI: Sentences<LocusTold> = {
  arc: ({ from }, { name }) => `the arc from ${name(from)}`,
  ray: ({ from }, { name }) => `the ray from ${name(from)}`,
  line: ({ through }, { name }) => `the line through ${listed(through.map((point) => name(point)))}`,
  gap: ({ rule }, speaker) => ruleQuoted(rule, speaker),
  edge: () => 'the line',
  centreLine: () => 'the centre line',
  lineFrom: ({ from }, { name }) => `the line through ${name(from)}`,
};

/** How two loci miss: "The arc from A and the arc from B to Third miss by 0.430 mm." */
const MISSES: Readonly<Record<LociMiss['how'], (both: string, point: string, by: string, from: string) => string>> = {
  apart: (both, point, by) => `${both} to ${point} miss by ${by}.`,
  inside: (both, point, by) => `${both} to ${point} miss by ${by}: one lies inside the other.`,
  concentric: (_, point, by, from) => `Two rules want ${point} at different lengths${from}, ${by} apart.`,
  lineOutside: (both, point, by) => `${both} for ${point} miss by ${by}.`,
  behind: (both, point, by) => `${both} for ${point} miss by ${by}: they would meet only behind the ray's start.`,
  parallel: (both, point, by) => `${both} for ${point} never meet: they are parallel, ${by} apart.`,
};

function missSays({ how, point, centre, loci, cures, disagreement }: Told & LociMiss, speaker: Speaker): string {
  const both = asSentence(listed(loci.map((locus) => sentenceOf(LOCI, locus, speaker))));
  const named = point === undefined ? 'the point' : speaker.name(point);
  const from = centre === undefined ? '' : ` from ${speaker.name(centre)}`;
  const misses = MISSES[how](both, named, speaker.length(disagreement.gap), from);
  const [best] = cures;
  if (!best) return misses;
  if (best.bound === 'exactly') {
    return `${misses} With ${speaker.length(best.length)}, ${ruleQuoted(best.rule, speaker)} would hold; or leave one out.`;
  }
  const options = cures.map((cure) => lengthOption(cure, cures.length > 1, speaker));
  return `${misses} ${asSentence(listed(options, 'or'))} would reach.`;
}

/** "a depth of at least 31.271 mm from Third" */
function lengthOption({ rule, bound, length, from }: LengthCure, isOneOfMany: boolean, speaker: Speaker): string {
  const kind = speaker.movement.rules.find(({ id }) => id === rule)?.kind;
  const noun = (kind && ruleKindInWords(kind).noun) ?? 'radius';
  const where = from === undefined ? ' there' : ` from ${speaker.name(from)}`;
  const least = bound === 'atMost' ? 'at most' : 'at least';
  return `a ${noun} of ${least} ${speaker.length(length)}${isOneOfMany ? where : ''}`;
}

const IMPLIED: Readonly<Record<SetFails['implied'][number]['kind'], (point: string) => string>> = {
  pipe: (point) => `the pipe ${point} on its arbor`,
  slide: (point) => `the sliding radius of ${point}`,
  drilled: (point) => `the second drilled place of ${point}`,
};

function namedRules({ rules }: Disagreement, implied: SetFails['implied'], speaker: Speaker): readonly string[] {
  return [
    ...rules.map((id) => ruleQuoted(id, speaker)),
    ...implied.map(({ kind, point }) => IMPLIED[kind](speaker.name(point))),
  ];
}

function setSays({ implied, fixed, without, disagreement }: Told & SetFails, speaker: Speaker): string {
  const named = namedRules(disagreement, implied, speaker);
  const still = fixed.map(({ point, by }) => `${speaker.name(point)} ${by}`);
  const all = `${asSentence(listed(named))} cannot ${named.length === 1 ? '' : 'all '}hold${still.length === 0 ? '' : `, with ${listed(still)}`}`;
  const fails = `${all}: ${named.length === 1 ? 'it misses' : 'they miss'} by ${speaker.length(disagreement.gap)}.`;
  if (!without) return fails;
  if (without.kind === 'onePlace') return `${fails} The two stand at one place: no length between them would hold.`;
  const value =
    without.kind === 'angle' ? speaker.angle((without.value * Math.PI) / 180, 4) : speaker.length(without.value);
  return `${fails} With ${value}, ${ruleQuoted(without.rule, speaker)} would hold.`;
}
