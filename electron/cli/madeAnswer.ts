/** `depthwright made`: what was read and drilled, what it tells, and the cures; between any two days what it changed. */

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
import { fixed } from '../../solver/movement/decimal.ts';
import type { Movement } from '../../solver/movement/schema.ts';
import { plantMovement } from '../../solver/planting/index.ts';
import type { PlacedMovement } from '../../solver/planting/placed.ts';
import { findingChangesSay } from '../../solver/words/clearance/index.ts';
import { speakerOf } from '../../solver/words/index.ts';
import { type Answer, Refusal } from './answer.ts';
import { type Column, inBlocks, inColumns, wrapped } from './columns.ts';
import { titleLine } from './plantAnswer.ts';

/** The day to go back to, and the one to compare with: as the file writes days, or `drawn`. */
export interface MadeChoice {
  readonly asOf?: string;
  readonly since?: string;
}

const mm = (value: number | undefined): string => (value === undefined ? '' : fixed(value, 3));
const right = (head: string): Column => ({ head, align: 'right' });

function stateAt(movement: Movement, option: string, day: string): Movement {
  if (day === 'drawn' || /^\d{4}-\d\d-\d\d$/.test(day)) return movementAsOf(movement, day);
  const days = daysOf(movement).join(', ') || 'none';
  throw new Refusal(`--${option}: found "${day}", expected "drawn" or a day such as 2026-05-01. Days in it: ${days}`);
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
  const odd = oddSays(movement, [...depths, ...sizes, ...drilled]);
  const says = [...new Set([...depths, ...sizes, ...drilled, holes].flatMap(({ doubts }) => doubts)), ...odd];
  const change =
    since === undefined ? undefined : consequencesOf(plantMovement(stateAt(now.movement, 'since', since)), placed);
  const changed = change ? [...change.says, ...findingChangesSay(change, speakerOf(movement, { minus: '-' }))] : [];
  const cured = off.filter(({ cures }) => cures[0]?.kind !== 'leave');
  const json = {
    title: movement.title,
    asOf: asOf ?? null,
    days: daysOf(now.movement),
    depths: depths.map(({ rule, calculated, measured }) => ({ rule, calculated, measured: measured ?? null })),
    sizes: sizes.map(({ size, measured, isUsed }) => ({ ...size, measured: measured ?? null, isUsed })),
    places: drilled.map(({ point, measured, made, isUsed }) => ({
      point,
      measured: measured ?? null,
      made: made?.at ?? null,
      isUsed,
    })),
    doubts: says,
    wrongHoles: holes.report.wrong,
    offPlaces: off,
    since: since === undefined ? null : { day: since, says: changed },
  };
  const text = inBlocks([
    [titleLine(movement)],
    headed('Depths, mm', depthLines(movement, depths)),
    headed('Sizes, mm', sizeLines(sizes)),
    headed('Holes as drilled, mm', placeLines(drilled)),
    headed(
      'To be asked about',
      says.flatMap((each) => wrapped(each, '  - ')),
    ),
    headed('Holes that the distances show off their places', wrongLines(holes)),
    ...off.map(({ point, cures }) => [`${point} as drilled`, ...cures.flatMap((cure) => wrapped(cure.says, '  - '))]),
    headed(
      `Changed since ${since ?? ''}`,
      changed.flatMap((each) => wrapped(each, '  - ')),
    ),
  ]);
  return { text, json, code: says.length + holes.report.wrong.length + cured.length > 0 ? 1 : 0 };
}

const headed = (head: string, lines: readonly string[]): readonly string[] =>
  lines.length > 0 ? [head, ...lines] : [];

/** Readings that do not belong with the others of the same thing. */
function oddSays(
  movement: Movement,
  all: readonly {
    readonly measured?: { readonly outliers: readonly { readonly id: string; readonly off: number }[] };
  }[],
): readonly string[] {
  return all.flatMap(({ measured }) =>
    (measured?.outliers ?? []).map(({ id, off }) => {
      const date = movement.readings.find((reading) => reading.id === id)?.date;
      const when = date === undefined ? '' : ` of ${date}`;
      return `Reading ${id}${when} does not belong with the others: ${mm(off)} mm off the rest, and not used.`;
    }),
  );
}

function depthLines(movement: Movement, depths: ReturnType<typeof depthReadings>): readonly string[] {
  if (depths.length === 0) return [];
  const useOf = (id: string): string => {
    const rule = movement.rules.find((each) => each.id === id);
    return rule?.kind === 'depth' ? rule.use : '';
  };
  return inColumns(
    [{ head: 'depth' }, right('calculated'), right('measured'), right('±'), right('readings'), { head: 'in use' }],
    depths.map(({ rule, calculated, measured }) => {
      const read = measured
        ? [mm(measured.length), mm(measured.plusMinus), String(measured.used.length)]
        : ['', '', ''];
      return [rule, mm(calculated), ...read, useOf(rule)];
    }),
  );
}

function sizeLines(sizes: ReturnType<typeof sizeReadings>): readonly string[] {
  if (sizes.length === 0) return [];
  return inColumns(
    [{ head: 'size' }, right('drawn'), right('measured'), right('±'), right('in use')],
    sizes.map(({ size, measured }) => [
      `${size.label}, ${size.what}`,
      mm(size.drawn),
      mm(measured?.length),
      mm(measured?.plusMinus),
      mm(size.inUse),
    ]),
  );
}

const wrongLines = ({ report }: ReturnType<typeof distancesTell>): readonly string[] =>
  report.wrong.length === 0
    ? []
    : inColumns(
        [{ head: 'hole' }, right('right by'), right('up by'), right('±')],
        report.wrong.map(({ id, dx, dy, plusMinus }) => [id, mm(dx), mm(dy), mm(plusMinus)]),
      );

function placeLines(places: readonly PlaceReadings[]): readonly string[] {
  if (places.length === 0) return [];
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
      point,
      ...at(measured?.at),
      mm(measured?.plusMinus),
      measured ? String(measured.used.length) : '',
      ...at(made?.at),
    ]),
  );
}
