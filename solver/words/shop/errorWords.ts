/** Trials of errors in words: what may be off, and what each error does. */
import type {
  ErrorEffect,
  ErrorOf,
  ErrorPartOf,
  ErrorsDoing,
  ErrorsFound,
  SourceFound,
} from '../../made/errors/index.ts';
import { listed } from '../lists.ts';
import { ruleQuoted } from '../rules.ts';
import { type Sentences, sentenceOf } from '../saying.ts';
import type { Speaker } from '../speaker.ts';

const OF: Sentences<ErrorOf> = {
  length: ({ of }, speaker) => ruleQuoted(of, speaker),
  slide: ({ of }, { name }) => `the radius that ${name(of)} slides on`,
  place: ({ point }, { name }) => `the held place of ${name(point)}`,
  hole: ({ of }, { name }) => `the hole of ${name(of)}`,
  bore: ({ of, bearing }, { movement, name }) => {
    if (bearing === 'pipe') return `the bore of ${name(of)}`;
    const plate = movement.arbors.find(({ id }) => id === of)?.bearings[bearing]?.plate;
    return `the pivot of ${name(of)}${plate === undefined ? '' : ` in ${name(plate)}`}`;
  },
  tip: ({ of }, { name }) => `the tip diameter of ${name(of)}`,
};

/** What is off: "the depth of Third and Escape", "the hole of Third". */
export function sourceName(source: ErrorOf, speaker: Speaker): string {
  return sentenceOf(OF, source, speaker);
}

/** "0.020 mm on the depth of Third and Escape" */
export function errorSays(source: SourceFound, speaker: Speaker): string {
  return `${speaker.length(source.plusMinus)} on ${sourceName(source, speaker)}`;
}

/** What a spread comes from most, with its part of a hundred: "the hole of Third, 40 %"; undefined where nothing reaches it. */
export function mostlySays(found: ErrorsFound, [first]: readonly ErrorPartOf[], speaker: Speaker): string | undefined {
  const source = first && found.sources[first.source];
  return source && `${sourceName(source, speaker)}, ${Math.round(100 * first.share)} %`;
}

/** The two parts of a gap: "Third and the barrel". */
export function gapName(parts: readonly string[], { name }: Speaker): string {
  return listed(parts.map(name));
}

/** What follows of an error: "moves the depth of Third and Escape by 0.017 mm". */
export function effectSays(found: ErrorsFound, { on, index, by, change }: ErrorEffect, speaker: Speaker): string {
  const amount = `by ${speaker.length(Math.abs(change))}`;
  switch (on) {
    case 'depth': {
      const rule = found.depths[index]?.rule;
      const depth = rule === undefined ? 'a depth' : ruleQuoted(rule, speaker);
      return by === 'room' ? `changes the room of ${depth} ${amount}` : `moves ${depth} ${amount}`;
    }
    case 'gap':
      return `changes the gap of ${gapName(found.gaps[index]?.parts ?? [], speaker)} ${amount}`;
    case 'check': {
      const rule = found.checks[index]?.rule;
      return `brings ${rule === undefined ? 'a rule' : ruleQuoted(rule, speaker)} out ${amount}`;
    }
  }
}

const DOING: Sentences<ErrorsDoing> = {
  depths: ({ at, of }) => `Looking at depth ${at} of ${of}`,
  alone: () => 'Each error alone',
  trials: ({ at, of }) => `Trial ${at} of ${of}`,
};

/** What is under way while errors are tried. */
export function doingSays(doing: ErrorsDoing, speaker: Speaker): string {
  return sentenceOf(DOING, doing, speaker);
}
