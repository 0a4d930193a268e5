/** Why a change of the movement does not apply, in words. */
import type { EditRefusal, Problem, Refused } from '../../movement/index.ts';
import type { Movement } from '../../movement/schema.ts';
import { asSentence, counted } from '../lists.ts';
import { type Sentences, sentenceOf } from '../saying.ts';
import type { Speaker } from '../speaker.ts';

/** The refusal as one whole sentence or more, by the names of the movement as it was before the change. */
export function refusalSays({ why }: Refused, speaker: Speaker): string {
  return sentenceOf(REFUSALS, why, speaker);
}

/** Ids that were asked for stand as they were typed: nothing in the movement could name them. */
const REFUSALS: Sentences<EditRefusal> = {
  unsound: ({ problems }, speaker) => unsoundSays(problems, speaker),
  unknownPart: ({ id, near }, speaker) =>
    `Nothing in this movement is called “${id}”${near === undefined ? '' : `; near in spelling: “${nameOf(near, speaker)}”`}.`,
  tooManyArbors: ({ most }) => `A movement holds at most ${most} arbors.`,
  noSuchTurn: ({ place, length }) => `There is no place ${place} in a list of ${length}.`,
  idByRenaming: ({ part }, speaker) =>
    `${asSentence(nameOf(part, speaker))} is given another short name by renaming, so that what refers to it follows.`,
  sameName: ({ part }, speaker) => `${asSentence(nameOf(part, speaker))} is called so already.`,
  nameTaken: ({ wanted }) => `Another part is called “${wanted}” already; every short name stands for one part.`,
  noPlaceOfItsOwn: ({ part }, speaker) =>
    `${asSentence(nameOf(part, speaker))} has no place of its own; move the arbor that it stands on.`,
  notAPoint: ({ part }, speaker) =>
    `${asSentence(nameOf(part, speaker))} is no point: only arbors, posts and marks are placed.`,
  noValue: ({ rule }, speaker) => `${asSentence(speaker.rule(rule))} has no value of its own.`,
  notADepth: ({ rule }, speaker) => `${asSentence(speaker.rule(rule))} is no depth; only a depth is measured.`,
  noSuchBearing: ({ arbor, bearings }, speaker) =>
    `${asSentence(speaker.name(arbor))} has ${counted(bearings, 'bearing')}: nothing to remove.`,
  nothingToPaste: () => 'There is nothing to paste.',
  notDescribed: ({ field }) =>
    `${asSentence(fieldWords(field))} of the movement cannot be changed together with its description.`,
  notDrilled: ({ point }, speaker) => `${asSentence(speaker.name(point))} is not noted as drilled.`,
  notMade: ({ point }, speaker) => `Nothing is noted as made of ${speaker.name(point)}.`,
  notAccepted: () => 'No such finding was accepted.',
};

/** The first problem, by the name of its part or else by its field; how many more there are. */
function unsoundSays(problems: readonly Problem[], speaker: Speaker): string {
  const [first] = problems;
  if (!first) return 'The movement would not be sound.';
  const { id, found, expected, remedy, path } = first;
  const whose = id === undefined ? fieldWords(lastField(path)) : nameOf(id, speaker);
  const more = problems.length > 1 ? ` And ${problems.length - 1} more.` : '';
  const told = named(`found ${found}; expected ${expected}; ${remedy}.`, speaker);
  return `${asSentence(whose)}: ${told}${more}`;
}

/** What a part, a rule or an indication is called; what the movement does not have yet is the new part. */
function nameOf(id: string, speaker: Speaker): string {
  if (!isKnown(id, speaker.movement)) return 'the new part';
  const { rules, indications } = speaker.movement;
  if (rules.some((rule) => rule.id === id)) return speaker.rule(id);
  return indications.some((each) => each.id === id) ? speaker.indication(id) : speaker.name(id);
}

/** Checks tell parts by ids and settings by fields, in quotes as a file has them; a maker has names and words for them. */
function named(text: string, speaker: Speaker): string {
  return text.replace(/“([^”]+)”/gu, (quoted, inside: string) => {
    if (isKnown(inside, speaker.movement)) return nameOf(inside, speaker);
    return /^[a-z]+(?:[A-Z][a-z]+)+$/.test(inside) ? `“${fieldWords(inside)}”` : quoted;
  });
}

function isKnown(id: string, movement: Movement): boolean {
  const lists = [movement.arbors, movement.wheels, movement.posts, movement.marks, movement.plates, movement.walls];
  const others = [movement.openings, movement.rules, movement.couplings, movement.indications, movement.readings];
  return [...lists, ...others].some((list: readonly { readonly id: string }[]) => list.some((each) => each.id === id));
}

function lastField(path: string): string {
  return [...path.matchAll(/[A-Za-z]+/g)].at(-1)?.[0] ?? 'movement';
}

/** Fields whose name in the file is not what the trade says. */
const FIELD_NAMES: Readonly<Record<string, string>> = {
  at: 'the place',
  movement: 'the movement',
  plusMinus: '±',
  radialGap: 'the gap side by side',
  heightGap: 'the gap one above the other',
  wallGap: 'the gap to walls and plates',
  of: 'what was measured',
};

/** A field of the file as a maker would say it: `safeHeight` as "safe height". */
function fieldWords(field: string): string {
  const named = Object.hasOwn(FIELD_NAMES, field) ? FIELD_NAMES[field] : undefined;
  return named ?? field.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
}
