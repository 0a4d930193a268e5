/** `depthwright check`: everything that fouls, is too close or does not fit, worst first. */
import {
  buildable,
  checkMovement,
  type Finding,
  isBuildable,
  stackOf,
  wallContacts,
  withRemedies,
} from '../../solver/clearance/index.ts';
import { safeAlongWall } from '../../solver/clearance/safe/index.ts';
import type { Movement } from '../../solver/movement/schema.ts';
import type { PlacedMovement } from '../../solver/planting/placed.ts';
import {
  adviceSays,
  buildableSays,
  contactSays,
  cureSays,
  findingSays,
  MID_SHAKE,
} from '../../solver/words/clearance/index.ts';
import { counted, type Speaker } from '../../solver/words/index.ts';
import { plantingSays } from '../../solver/words/planting/index.ts';
import type { Answer } from './answer.ts';
import { inBlocks, inColumns, wrapped } from './columns.ts';
import { plainSpeaker } from './plainSpeaker.ts';
import { isSettled, titleLine } from './plantAnswer.ts';

const SEVERITIES: Readonly<Record<Finding['severity'], string>> = { stops: 'stops', warns: 'warns', notes: 'note' };

const KINDS: Readonly<Record<Finding['kind'], string>> = {
  fouls: 'fouls',
  tooClose: 'too close',
  depth: 'depth',
  size: 'size',
  turning: 'turning',
  ring: 'ring',
  bearing: 'bearing',
  body: 'body',
  post: 'post',
  stack: 'stack',
  planting: 'planting',
  assembly: 'assembly',
  case: 'case',
};

function summary(findings: readonly Finding[]): string {
  if (findings.length === 0) return 'Nothing fouls, nothing is too close.';
  const count = (severity: Finding['severity']): number => findings.filter((each) => each.severity === severity).length;
  const parts = [
    [count('stops'), 'stopping the movement'],
    [count('warns'), 'to look at'],
    [count('notes'), 'to know'],
  ] as const;
  const told = parts.filter(([number]) => number > 0).map(([number, what]) => `${number} ${what}`);
  return `${counted(findings.length, 'finding')}: ${told.join(', ')}.`;
}

function table(findings: readonly Finding[], { name, figure }: Speaker): string[] {
  const length = (mm: number | undefined): string => (mm === undefined ? '' : figure(mm));
  const rows = findings.map(({ severity, kind, parts, gap, wanted }) => [
    SEVERITIES[severity],
    KINDS[kind],
    parts.map(name).join(', '),
    length(gap),
    length(wanted),
  ]);
  if (rows.length === 0) return [];
  const heads = [{ head: '' }, { head: 'kind' }, { head: 'parts' }] as const;
  return inColumns([...heads, { head: 'gap', align: 'right' }, { head: 'wanted', align: 'right' }], rows);
}

/** Each finding in words, with what would cure it. */
function sentences(findings: readonly Finding[], speaker: Speaker): string[] {
  return findings.flatMap((finding) => [
    ...wrapped(findingSays(finding, speaker), '  - '),
    ...(finding.remedies ?? []).flatMap((remedy) => wrapped(cureSays(remedy, speaker), '      cure: ')),
    ...(finding.advice === undefined ? [] : wrapped(adviceSays(finding.advice, speaker), '      ')),
  ]);
}

/** A finding as data and in words: of each remedy what it says and gives, without the whole changed movement. */
function findingJson(finding: Finding, speaker: Speaker) {
  const { cause: _cause, remedies, advice, ...fields } = finding;
  return {
    ...fields,
    says: findingSays(finding, speaker),
    ...(advice && { advice: adviceSays(advice, speaker) }),
    ...(remedies && {
      remedies: remedies.map((remedy) => ({
        says: cureSays(remedy, speaker),
        edit: remedy.edit,
        ...(remedy.gapAfter !== undefined && { gapAfter: remedy.gapAfter }),
      })),
    }),
  };
}

/** The end shake that each arbor and pipe is left, with both sums of its errors. */
function stacksOf(movement: Movement) {
  return movement.arbors.flatMap(({ id }) => {
    const stack = stackOf(movement, id);
    if (stack.kind === 'none') return [];
    const left = stack.kind === 'stack' ? stack.left : stack.room;
    if (left === undefined || !stack.worst || !stack.statistical) return [];
    const { room, endShake, worst, statistical, pieces } = stack;
    return [{ arbor: id, lengths: pieces.length, room, stated: endShake, left, worst, statistical }];
  });
}

function stackTable(movement: Movement, { name, figure }: Speaker): string[] {
  const range = ([least, most]: readonly [number, number]): string => `${figure(least)} to ${figure(most)}`;
  const rows = stacksOf(movement).map(({ arbor, lengths, left, worst, statistical }) => [
    name(arbor),
    `${lengths}`,
    figure(left),
    range(statistical),
    range(worst),
  ]);
  if (rows.length === 0) return [];
  const columns = [
    { head: 'end shake' },
    { head: 'lengths', align: 'right' },
    { head: 'left', align: 'right' },
    { head: 'likely', align: 'right' },
    { head: 'at worst', align: 'right' },
  ] as const;
  return [...inColumns(columns, rows), ...wrapped(MID_SHAKE)];
}

/** Supports that are fixed to walls: how they stand, their feet, and where they may slide. */
function contactLines(placed: PlacedMovement, speaker: Speaker): string[] {
  return wallContacts(placed).flatMap((contact) =>
    wrapped(contactSays(contact, safeAlongWall(placed, contact.post)?.stretches, speaker)),
  );
}

/** The findings as text and as data, all that the window tells when it is idle; for the first ten, remedies are tried out. */
export function checkAnswer(placed: PlacedMovement): Answer {
  const findings = withRemedies(placed, checkMovement(placed, { depths: true }));
  const list = buildable(placed, findings);
  const missing = withRemedies(placed, list.missing);
  const settled = isSettled(placed);
  const speaker = plainSpeaker(placed.movement);
  const text = inBlocks([
    [titleLine(placed.movement)],
    table(findings, speaker),
    sentences(findings, speaker),
    // What disagrees is among the findings already; what is loose is not.
    [summary(findings), ...(placed.freeMotions > 0 ? wrapped(plantingSays(placed, speaker)) : [])],
    stackTable(placed.movement, speaker),
    contactLines(placed, speaker),
    [buildableSays(list), ...sentences(missing, speaker)],
  ]);
  const json = {
    title: placed.movement.title,
    settled,
    findings: findings.map((finding) => findingJson(finding, speaker)),
    stacks: stacksOf(placed.movement),
    contacts: wallContacts(placed).map((contact) => ({
      ...contact,
      safe: safeAlongWall(placed, contact.post)?.stretches,
    })),
    buildable: {
      says: buildableSays(list),
      stops: list.stops.map(({ key }) => key),
      missing: missing.map((finding) => findingJson(finding, speaker)),
      unsettled: list.unsettled,
    },
  };
  return { text, json, code: findings.length === 0 && settled && isBuildable(list) ? 0 : 1 };
}
