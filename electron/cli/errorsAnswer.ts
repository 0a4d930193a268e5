/** `depthwright errors`: before cutting, what the errors of making do to every depth and gap. */

import { type ErrorsFound, findErrors, type StatedErrors, USUAL_ERRORS } from '../../solver/made/errors/index.ts';
import type { PlacedMovement } from '../../solver/planting/placed.ts';
import { type Speaker, speakerOf, unitOf } from '../../solver/words/index.ts';
import { effectSays, errorSays, gapName, mostlySays, pairSays } from '../../solver/words/shop/index.ts';
import { type Answer, CommandRefusal } from './answer.ts';
import { inBlocks, inColumns, type PrintedColumn, wrapped } from './columns.ts';
import { titleLine } from './plantAnswer.ts';

/** Options as they are typed. */
export interface ErrorsChoice {
  readonly trials?: string;
  readonly seed?: string;
  readonly lengths?: string;
  readonly holes?: string;
  readonly bores?: string;
  readonly tips?: string;
}

/** Trials are numbers that a person waits for. */
const MOST_TRIALS = 200_000;
/** An error larger than this is a blunder and no ±, mm. */
const MOST_ERROR = 5;
const KINDS = ['lengths', 'holes', 'bores', 'tips'] as const;
/** Share of the trials that may go wrong before it is a finding: a working assumption. */
const RARE = 0.01;
/** Sources of error that are told one by one, and their effects. */
const TOLD = 8;
const EFFECTS = 3;

function errorsOf(choice: ErrorsChoice): StatedErrors {
  const errors = { ...USUAL_ERRORS };
  for (const kind of KINDS) {
    const typed = choice[kind];
    if (typed === undefined) continue;
    const value = typed.trim() === '' ? Number.NaN : Number(typed);
    if (!(value >= 0 && value <= MOST_ERROR)) {
      throw new CommandRefusal(`--${kind}: found "${typed}", expected a ± from 0 to ${MOST_ERROR} mm, such as 0.04`);
    }
    errors[kind] = value;
  }
  return errors;
}

function wholeNumber(name: string, typed: string | undefined, usual: number, from: number, to: number): number {
  if (typed === undefined) return usual;
  const value = typed.trim() === '' ? Number.NaN : Number(typed);
  if (!Number.isInteger(value) || value < from || value > to) {
    throw new CommandRefusal(`--${name}: found "${typed}", expected a whole number from ${from} to ${to}`);
  }
  return value;
}

const share = (part: number): string => (part === 0 ? '' : `${(100 * part).toFixed(1)} %`);
const right = (head: string): PrintedColumn => ({ head, align: 'right' });

function depthTable(found: ErrorsFound, speaker: Speaker): string[] {
  const { figure } = speaker;
  const heads = [
    { head: `depth, ${unitOf(speaker.display)}` },
    right('planned'),
    right('±'),
    right('too tight'),
    right('binds, but the bearings give'),
    right('too loose'),
  ];
  const rows = found.depths.map((depth) => [
    pairSays(depth.rule, speaker),
    figure(depth.planned),
    figure(depth.plusMinus),
    share(depth.tight),
    share(depth.bearingsGive),
    share(depth.loose),
    mostlySays(found, depth.from, speaker),
  ]);
  return rows.length === 0 ? [] : inColumns([...heads, { head: 'mostly from' }], rows);
}

function gapTable(found: ErrorsFound, speaker: Speaker): string[] {
  const { figure } = speaker;
  const heads = [
    { head: `gap, ${unitOf(speaker.display)}` },
    right('with shake'),
    right('±'),
    right('wanted'),
    right('too close'),
    right('fouls'),
  ];
  const rows = found.gaps.map((gap) => [
    gapName(gap.parts, speaker),
    figure(gap.planned),
    figure(gap.plusMinus),
    figure(gap.wanted),
    share(gap.tooClose),
    share(gap.fouls),
    mostlySays(found, gap.from, speaker),
  ]);
  return rows.length === 0 ? [] : inColumns([...heads, { head: 'mostly from' }], rows);
}

function checkTable(found: ErrorsFound, { figure, rule }: Speaker): string[] {
  const heads = [{ head: 'rule that only checks' }, right('comes out off by ±'), right('at most')];
  const rows = found.checks.map((check) => [
    rule(check.rule),
    figure(check.triedPlusMinus),
    figure(Math.max(Math.abs(check.least), Math.abs(check.most))),
  ]);
  return rows.length === 0 ? [] : inColumns(heads, rows);
}

function effects(found: ErrorsFound, speaker: Speaker): string[] {
  return found.sources.slice(0, TOLD).flatMap((source) => {
    const does = source.does.slice(0, EFFECTS).map((effect) => effectSays(found, effect, speaker));
    if (source.breaks) does.unshift('leaves some points with no place');
    return does.length === 0 ? [] : wrapped(`${errorSays(source, speaker)} ${does.join('; ')}.`, '  - ');
  });
}

function summary(found: ErrorsFound, { length, name, rule }: Speaker): string[] {
  const { errors, planted, trials, unplaced, notTried } = found;
  const stated = `Taken where nothing is stated: lengths ±${length(errors.lengths)}, holes ±${length(errors.holes)}, play ±${length(errors.bores)}, tip diameters ±${length(errors.tips)}.`;
  return [
    ...wrapped(stated),
    ...wrapped(`${planted} of ${trials} trials could be planted; shares are of these.`),
    ...unplaced.flatMap(({ id, trials: count }) => wrapped(`${name(id)} found no place in ${count} of the trials.`)),
    ...notTried.flatMap((id) => wrapped(`Not tried, because it sets no length: ${rule(id)}.`)),
  ];
}

/** Runs the trials and tells them; code 1 where more than one trial in a hundred cannot be planted, binds, lets go or fouls. */
export function errorsAnswer(placed: PlacedMovement, choice: ErrorsChoice): Answer {
  const errors = errorsOf(choice);
  const trials = wholeNumber('trials', choice.trials, 2000, 10, MOST_TRIALS);
  const seed = wholeNumber('seed', choice.seed, 1, 0, 2 ** 31);
  const found = findErrors(placed, { errors, trials, seed });
  const isSure =
    found.trials - found.planted <= RARE * found.trials &&
    found.depths.every(({ tight, loose }) => tight + loose <= RARE) &&
    found.gaps.every(({ fouls }) => fouls <= RARE);
  const speaker = speakerOf(placed.movement, { minus: '-' });
  const text = inBlocks([
    [titleLine(placed.movement)],
    depthTable(found, speaker),
    gapTable(found, speaker),
    checkTable(found, speaker),
    effects(found, speaker),
    summary(found, speaker),
  ]);
  return { text, json: { title: placed.movement.title, ...found }, code: isSure ? 0 : 1 };
}
