/** What changed between two revisions, in sentences with the maker's names, units and words for fields. */
import { type Change, type ChangeOf, changesBetween } from '../../files/index.ts';
import { COLLECTIONS } from '../../movement/index.ts';
import type { Made, Movement, Reading } from '../../movement/schema.ts';
import { asSentence, listed } from '../lists.ts';
import { type Speaker, speakerOf } from '../speaker.ts';
import { readingName } from './readingWords.ts';

/** Fields of the file whose words are no splitting of their names. */
const FIELDS: Readonly<Record<string, string>> = {
  plusMinus: '±',
  limits: 'least gaps',
  cures: 'limits of cures',
  stackTolerance: '± of stacks',
  toothTables: 'own tooth tables',
  constants: 'own periods',
  accepted: 'accepted findings',
  ridesOn: 'rides on',
  zeroAt: 'zero at',
  bearing: 'direction',
};

/** Words of the file for states, and rules of a kind that the file calls otherwise. */
const VALUES: Readonly<Record<string, string>> = {
  toMark: 'to be marked',
  true: 'yes',
  false: 'no',
};

/** Numbers of the file that are lengths; others (counts, degrees, ratios) are told as they are. */
const LENGTHS: ReadonlySet<string> = new Set([
  ...[
    'at',
    'x',
    'y',
    'centre',
    'radius',
    'length',
    'diameter',
    'thickness',
    'level',
    'held',
    'farthest',
    'circularPitch',
  ],
  ...[
    'bore',
    'pivot',
    'outer',
    'pipeBore',
    'endShake',
    'hole',
    'runOut',
    'tipDiameter',
    'toothThickness',
    'outerDiameter',
  ],
  ...['trundleDiameter', 'width', 'widthAtRim', 'rim', 'widestHole', 'leastWall', 'leaveWithin', 'reamerCutsOver'],
]);
/** Records of the file that hold nothing but lengths. */
const ALL_LENGTHS: ReadonlySet<string> = new Set(['limits', 'levels', 'stackTolerance']);

/** Splits a field's name into words: "markedFace" as "marked face". */
function fieldWords(field: string): string {
  if (/^\d+$/.test(field)) return String(Number(field) + 1);
  return FIELDS[field] ?? field.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
}

/** A value of the file as a maker reads it: ids by name, lengths in the document's unit. */
function valueWords(value: unknown, path: readonly string[], speaker: Speaker): string {
  if (value === undefined) return 'none';
  if (typeof value === 'number') return isLength(path) ? speaker.length(value) : String(value);
  if (typeof value === 'string' || typeof value === 'boolean') {
    return VALUES[String(value)] ?? named(String(value), path, speaker);
  }
  if (Array.isArray(value)) {
    return value.length === 0 ? 'none' : value.map((each: unknown) => valueWords(each, path, speaker)).join('; ');
  }
  if (typeof value !== 'object' || value === null) return 'none';
  return Object.entries(value)
    .map(([field, each]: [string, unknown]) => `${fieldWords(field)} ${valueWords(each, [...path, field], speaker)}`)
    .join(', ');
}

/** The field that a number belongs to decides, not its place in a list. */
function isLength(path: readonly string[]): boolean {
  const field = path.findLast((each) => !/^\d+$/.test(each)) ?? '';
  if (path.some((each) => ALL_LENGTHS.has(each))) return true;
  return LENGTHS.has(field) || (field === 'value' && path.includes('measured'));
}

/** Free text stays as it is; elsewhere a word that is an id is the part's or the rule's name. */
const TEXTS: ReadonlySet<string> = new Set(['name', 'title', 'note', 'gauge', 'by', 'reason', 'date', 'revision']);

function named(value: string, path: readonly string[], speaker: Speaker): string {
  const { movement, name, rule } = speaker;
  if (TEXTS.has(path.at(-1) ?? '')) return value;
  if (movement.rules.some(({ id }) => id === value)) return rule(value);
  if (movement.readings.some(({ id }) => id === value)) return readingName(value, speaker);
  const words = name(value);
  return words === value ? (unnamed(value, movement) ?? fieldWords(value)) : words;
}

/** Couplings and indications have no name: they are told by their number in the list. */
function unnamed(value: string, movement: Movement): string | undefined {
  for (const list of ['couplings', 'indications'] as const) {
    const index = movement[list].findIndex(({ id }) => id === value);
    if (index >= 0) return `${COLLECTIONS[list].replace(/^an? /, '')} ${index + 1}`;
  }
  return undefined;
}

const STATES: Readonly<Record<Made['state'], string>> = {
  toMark: 'to be marked',
  marked: 'marked',
  drilled: 'drilled',
};

function madeWords({ state, at, plusMinus, date, note }: Made, { length, about }: Speaker): string {
  const more = plusMinus === undefined ? '' : ` ±${about(plusMinus)}`;
  const place = at ? ` at ${length(at[0])}, ${length(at[1])}${more}` : '';
  return `${STATES[state]}${place}${date === undefined ? '' : ` on ${date}`}${note === undefined ? '' : ` (${note})`}`;
}

/** What a change is of, in a speaker's document. */
function ofWords(of: ChangeOf, speaker: Speaker): string {
  const { movement, name, rule, length } = speaker;
  switch (of.kind) {
    case 'document':
      return fieldWords(of.field);
    case 'made':
      return `${name(of.point)}${of.plate === undefined ? '' : ` in ${name(of.plate)}`}`;
    case 'item': {
      if (of.list === 'rules') return rule(of.id);
      const kind = COLLECTIONS[of.list].replace(/^an? /, '');
      if (of.list === 'readings') {
        return readingWords(
          movement.readings.find(({ id }) => id === of.id),
          name,
          length,
        );
      }
      const words = name(of.id);
      return words === of.id ? (unnamed(of.id, movement) ?? kind) : words;
    }
  }
}

/** A reading is known by its figure: "reading of 34.640 mm, Centre and Third, 2026-02-14". */
function readingWords(reading: Reading | undefined, name: Speaker['name'], length: Speaker['length']): string {
  if (!reading) return 'a reading';
  const { value, of, date } = reading;
  const figure = value === undefined ? '' : ` of ${length(value)}`;
  return `reading${figure}, ${listed(of.map(name))}${date === undefined ? '' : `, ${date}`}`;
}

function changeSays(change: Change, earlier: Speaker, now: Speaker): string {
  const { of } = change;
  if (of.kind === 'made') return madeSays(change, earlier, now);
  switch (change.kind) {
    case 'added':
      return `Added: ${ofWords(of, now)}.`;
    case 'removed':
      return `Removed: ${ofWords(of, earlier)}.`;
    case 'changed': {
      const path = of.kind === 'document' ? [of.field, ...change.path] : change.path;
      const what = [ofWords(of, now), ...change.path.map(fieldWords)].join(', ');
      const [was, is] = [valueWords(change.before, path, earlier), valueWords(change.after, path, now)];
      return `${asSentence(what)}: ${was} → ${is}.`;
    }
  }
}

/** The values of what was made are made states: the comparison pairs them. */
function madeSays(change: Change, earlier: Speaker, now: Speaker): string {
  const what = asSentence(ofWords(change.of, change.kind === 'removed' ? earlier : now));
  if (change.kind === 'removed') return `${what}: no longer ${madeWords(change.before as Made, earlier)}.`;
  const is = madeWords(change.after as Made, now);
  return change.kind === 'added' ? `${what}: ${is}.` : `${what}: ${madeWords(change.before as Made, earlier)} → ${is}.`;
}

/** All that changed since an earlier revision, a sentence each. */
export function revisionSays(earlier: Movement, now: Speaker): readonly string[] {
  const before = speakerOf(earlier);
  return changesBetween(earlier, now.movement).map((change) => changeSays(change, before, now));
}
