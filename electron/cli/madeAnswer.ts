/** `depthwright made`: what was read and drilled, what it tells, and the cures; between any two days what it changed. */

import { depthVerdicts, type JudgedDepth } from '../../solver/clearance/index.ts';
import {
  consequencesOf,
  daysOf,
  depthReadings,
  distancesTell,
  movementAsOf,
  offPlaces,
  type PlaceReadings,
  placeReadings,
  sizeReadings,
} from '../../solver/made/index.ts';
import type { Movement } from '../../solver/movement/schema.ts';
import { plantMovement } from '../../solver/planting/index.ts';
import type { PlacedMovement } from '../../solver/planting/placed.ts';
import { shakeSays, verdictCureSays, verdictSays } from '../../solver/words/clearance/index.ts';
import { type Speaker, speakerOf, unitOf } from '../../solver/words/index.ts';
import { dutySays } from '../../solver/words/planting/index.ts';
import {
  changesSay,
  doubtSays,
  holeCureSays,
  offPlaceSays,
  outlierSays,
  pairSays,
  partSizeSays,
} from '../../solver/words/shop/index.ts';
import { type Answer, CommandRefusal } from './answer.ts';
import { inBlocks, inColumns, type PrintedColumn, wrapped } from './columns.ts';
import { titleLine } from './plantAnswer.ts';

/** The day to go back to, and the one to compare with: as the file writes days, or `drawn`. */
export interface MadeChoice {
  readonly asOf?: string;
  readonly since?: string;
}

const figureIn =
  ({ figure }: Speaker) =>
  (mm: number | undefined): string =>
    mm === undefined ? '' : figure(mm);
const right = (head: string): PrintedColumn => ({ head, align: 'right' });

function stateAt(movement: Movement, option: string, day: string): Movement {
  if (day === 'drawn' || /^\d{4}-\d\d-\d\d$/.test(day)) return movementAsOf(movement, day);
  const days = daysOf(movement).join(', ') || 'none';
  throw new CommandRefusal(
    `--${option}: found "${day}", expected "drawn" or a day such as 2026-05-01. Days in it: ${days}`,
  );
}

/** What was made of a movement, as text and as data; exit 1 where something is doubtful or off its place. */
export function madeAnswer(now: PlacedMovement, { asOf, since }: MadeChoice): Answer {
  const placed = asOf === undefined ? now : plantMovement(stateAt(now.movement, 'as-of', asOf));
  const { movement } = placed;
  const depths = depthReadings(movement);
  const sizes = sizeReadings(movement);
  const holes = distancesTell(placed);
  const drilled = placeReadings(movement, placed.places);
  const off = offPlaces(movement);
  const speaker = speakerOf(movement, { minus: '-' });
  const standing = depthsStanding(placed);
  const stopped = standing.filter(({ verdict }) => verdict.severity === 'stops').length;
  const doubts = [...depths, ...sizes, ...drilled, holes].flatMap((each) => [...each.doubts]);
  const outliers = [...depths, ...sizes, ...drilled].flatMap(({ measured }) => measured?.outliers ?? []);
  const says = [
    ...new Set(doubts.map((doubt) => doubtSays(doubt, speaker))),
    ...outliers.map((outlier) => outlierSays(outlier, speaker)),
  ];
  const change =
    since === undefined ? undefined : consequencesOf(plantMovement(stateAt(now.movement, 'since', since)), placed);
  const changed = change === undefined ? [] : changesSay(change, speaker);
  const cured = off.filter(({ cures }) => cures[0]?.kind !== 'leave');
  const json = {
    title: movement.title,
    asOf: asOf ?? null,
    days: daysOf(now.movement),
    depths: depths.map(({ rule, calculated, measured }) => ({ rule, calculated, measured: measured ?? null })),
    depthsNow: standing.map(({ verdict, change }) => ({
      rule: verdict.rule,
      duty: verdict.duty,
      calculated: verdict.calculated,
      wanted: verdict.wanted,
      now: verdict.distance,
      change,
      shake: verdict.shake ?? null,
      verdict: verdictSays(verdict, speaker),
      stops: verdict.severity === 'stops',
      goodDistance: verdict.goodDistance ?? null,
    })),
    sizes: sizes.map(({ size, measured, isUsed }) => ({
      ...size,
      says: partSizeSays(size, speaker),
      measured: measured ?? null,
      isUsed,
    })),
    places: drilled.map(({ point, measured, made, isUsed }) => ({
      point,
      measured: measured ?? null,
      made: made?.at ?? null,
      isUsed,
    })),
    doubts: says,
    wrongHoles: holes.report.wrong,
    offPlaces: off.map((each) => ({
      ...each,
      cures: each.cures.map((cure) => ({ ...cure, says: holeCureSays(cure, speaker) })),
    })),
    since: since === undefined ? null : { day: since, says: changed },
  };
  const unit = unitOf(movement.display);
  const text = inBlocks([
    [titleLine(movement)],
    headed(`Depths as read, ${unit}`, depthLines(speaker, depths)),
    headed(`Depths as they stand, ${unit}`, standingLines(speaker, standing)),
    headed(`Sizes, ${unit}`, sizeLines(speaker, sizes)),
    headed(`Holes as drilled, ${unit}`, placeLines(speaker, drilled)),
    headed(
      'To be asked about',
      says.flatMap((each) => wrapped(each, '  - ')),
    ),
    headed(`Holes that the distances show off their places, ${unit}`, wrongLines(speaker, holes)),
    ...off.map((each) => [
      `${offPlaceSays(each, speaker)}, as drilled`,
      ...each.cures.flatMap((cure) => wrapped(holeCureSays(cure, speaker), '  - ')),
    ]),
    headed(
      `Changed since ${since ?? ''}`,
      changed.flatMap((each) => wrapped(each, '  - ')),
    ),
  ]);
  return { text, json, code: says.length + holes.report.wrong.length + cured.length + stopped > 0 ? 1 : 0 };
}

const headed = (head: string, lines: readonly string[]): readonly string[] =>
  lines.length > 0 ? [head, ...lines] : [];

function depthLines(speaker: Speaker, depths: ReturnType<typeof depthReadings>): readonly string[] {
  if (depths.length === 0) return [];
  const mm = figureIn(speaker);
  const useOf = (id: string): string => {
    const rule = speaker.movement.rules.find((each) => each.id === id);
    return rule?.kind === 'depth' ? rule.use : '';
  };
  return inColumns(
    [{ head: 'depth' }, right('calculated'), right('measured'), right('±'), right('readings'), { head: 'in use' }],
    depths.map(({ rule, calculated, measured }) => {
      const read = measured
        ? [mm(measured.length), mm(measured.plusMinus), String(measured.used.length)]
        : ['', '', ''];
      return [pairSays(rule, speaker), mm(calculated), ...read, useOf(rule)];
    }),
  );
}

/** A depth as it stands, and how far it moved since it was drawn, mm. */
interface StandingDepth {
  readonly verdict: JudgedDepth;
  readonly change: number;
}

function depthsStanding(placed: PlacedMovement): readonly StandingDepth[] {
  const drawn = depthVerdicts(plantMovement(movementAsOf(placed.movement, 'drawn')));
  return [...depthVerdicts(placed).values()].map((verdict) => ({
    verdict,
    change: verdict.distance - (drawn.get(verdict.rule)?.distance ?? verdict.distance),
  }));
}

/** One table answers a reading: what was calculated and wanted, what it is now, how it runs, and what would cure it. */
function standingLines(speaker: Speaker, standing: readonly StandingDepth[]): readonly string[] {
  if (standing.length === 0) return [];
  const { figure } = speaker;
  return inColumns(
    [
      { head: 'depth' },
      { head: 'duty' },
      right('calculated'),
      right('wanted'),
      right('now'),
      right('change'),
      { head: 'shake now' },
      { head: 'verdict' },
      { head: 'cure' },
    ],
    standing.map(({ verdict, change }) => [
      pairSays(verdict.rule, speaker),
      dutySays({ duty: verdict.duty, role: 'checks' }),
      figure(verdict.calculated),
      figure(verdict.wanted),
      figure(verdict.distance),
      figure(change),
      shakeSays(verdict, speaker),
      verdictSays(verdict, speaker),
      verdictCureSays(verdict, speaker),
    ]),
  );
}

function sizeLines(speaker: Speaker, sizes: ReturnType<typeof sizeReadings>): readonly string[] {
  if (sizes.length === 0) return [];
  const mm = figureIn(speaker);
  return inColumns(
    [{ head: 'size' }, right('drawn'), right('measured'), right('±'), right('in use')],
    sizes.map(({ size, measured }) => [
      partSizeSays(size, speaker),
      mm(size.drawn),
      mm(measured?.length),
      mm(measured?.plusMinus),
      mm(size.inUse),
    ]),
  );
}

function wrongLines(speaker: Speaker, { report }: ReturnType<typeof distancesTell>): readonly string[] {
  if (report.wrong.length === 0) return [];
  const { name, figure } = speaker;
  return inColumns(
    [{ head: 'hole' }, right('right by'), right('up by'), right('±')],
    report.wrong.map(({ id, dx, dy, plusMinus }) => [name(id), figure(dx), figure(dy), figure(plusMinus)]),
  );
}

function placeLines(speaker: Speaker, places: readonly PlaceReadings[]): readonly string[] {
  if (places.length === 0) return [];
  const mm = figureIn(speaker);
  const at = (place: readonly [number, number] | undefined): string[] => [mm(place?.[0]), mm(place?.[1])];
  return inColumns(
    [
      { head: 'hole' },
      right('x read'),
      right('y read'),
      right('±'),
      right('readings'),
      right('x drilled'),
      right('y drilled'),
    ],
    places.map(({ point, measured, made }) => [
      speaker.name(point),
      ...at(measured?.at),
      mm(measured?.plusMinus),
      measured ? String(measured.used.length) : '',
      ...at(made?.at),
    ]),
  );
}
