/** `depthwright plant`: where every point stands, which rules hold, what is free and what disagrees. */

import { fixed, type LengthDisplay, lengthText } from '../../solver/movement/decimal.ts';
import type { PointId } from '../../solver/movement/ids.ts';
import type { Movement, Rule } from '../../solver/movement/schema.ts';
import type { Place, PlacedMovement, RuleOutcome } from '../../solver/planting/placed.ts';
import type { Answer } from './answer.ts';
import { inBlocks, inColumns, wrapped } from './columns.ts';

/** A rule holds where it misses by less than this, mm: the bound of "planted". */
const HOLDS = 1e-9;
const DEGREES = 180 / Math.PI;

const unitOf = (display: LengthDisplay): string => (display.unit === 'inch' ? 'inches' : 'millimetres');

/** Title line of every answer. */
export function titleLine(movement: Movement): string {
  return `${movement.title}, revision ${movement.revision}${movement.date === undefined ? '' : `, ${movement.date}`}`;
}

/** Whether everything has its place and nothing disagrees. */
export function isSettled(placed: PlacedMovement): boolean {
  return placed.freeMotions === 0 && placed.disagreements.length === 0;
}

/** A point with what is said of it. */
interface Named {
  readonly id: PointId;
  readonly name?: string;
  /** For a pipe: the arbor that it rides on. */
  readonly ridesOn?: PointId;
}

/** Points of one kind as rows: place, state, how they were placed. */
function pointRows(placed: PlacedMovement, points: readonly Named[]): string[][] {
  const { display } = placed.movement;
  return points.flatMap(({ id, name, ridesOn }) => {
    const place = placed.places.get(id);
    if (!place) return [];
    const angle = place.crossingAngle === undefined ? '' : `${fixed(place.crossingAngle * DEGREES, 1)}°`;
    const spread = place.spread ? `± ${lengthText(2 * place.spread.major, display)}` : '';
    const isDrilled = placed.movement.made.some((made) => made.point === id && made.state === 'drilled');
    const by =
      place.placedBy.join(', ') || (isDrilled ? 'drilled' : ridesOn === undefined ? '' : `rides on ${ridesOn}`);
    return [
      [id, name ?? '', lengthText(place.x, display), lengthText(place.y, display), place.state, spread, angle, by],
    ];
  });
}

function pointBlock(placed: PlacedMovement, kind: string, points: readonly Named[]): string[] {
  const rows = pointRows(placed, points);
  if (rows.length === 0) return [];
  const heads = [
    { head: kind },
    { head: 'name' },
    { head: 'x', align: 'right' },
    { head: 'y', align: 'right' },
    { head: 'state' },
    { head: '±' },
    { head: 'crossing', align: 'right' },
    { head: 'placed by' },
  ] as const;
  return inColumns(heads, rows);
}

const ROLES: Readonly<Record<RuleOutcome['role'], string>> = {
  places: 'places',
  spare: 'holds, spare',
  disagrees: 'disagrees',
  leftOut: 'left out',
};

/** The kind of a rule in the words of the trade. */
const KINDS: Readonly<Record<Rule['kind'], string>> = {
  held: 'held place',
  depth: 'depth',
  distance: 'distance',
  radius: 'radius',
  bearing: 'bearing',
  opposite: 'opposite',
  samePlace: 'same place',
  inLine: 'in line',
  sameRadius: 'same radius',
  evenSpacing: 'even spacing',
  clearBy: 'clear by',
};

function ruleBlock({ movement, rules }: PlacedMovement): string[] {
  const { display } = movement;
  const length = (mm: number | undefined): string => (mm === undefined ? '' : lengthText(mm, display));
  const rows = movement.rules.flatMap(({ id, kind }) => {
    const outcome = rules.get(id);
    if (!outcome) return [];
    const miss = Math.abs(outcome.missBy) < HOLDS ? '' : lengthText(outcome.missBy, display);
    const { calculated, measured, held } = outcome;
    const lengths = [outcome.length, calculated, measured, held].map(length);
    return [[id, KINDS[kind], ...lengths, ROLES[outcome.role], miss]];
  });
  if (rows.length === 0) return [];
  const number = (head: string) => ({ head, align: 'right' as const });
  const lengths = ['length', 'calculated', 'measured', 'held'].map(number);
  return inColumns([{ head: 'rule' }, { head: 'kind' }, ...lengths, { head: 'role' }, number('misses by')], rows);
}

/** The state in words: the sentence has the first disagreement, the list below it the others. */
function stateBlock(placed: PlacedMovement): string[] {
  return [...wrapped(placed.says), ...placed.disagreements.slice(1).flatMap(({ says }) => wrapped(says, '  - '))];
}

const round = (value: number): number => (value === 0 ? 0 : value);

function placeJson(point: Named, place: Place) {
  const { id, x, y, state, placedBy, free, other, crossingAngle, movedBy, spread } = place;
  return {
    id,
    ...(point.name !== undefined && { name: point.name }),
    x: round(x),
    y: round(y),
    state,
    placedBy,
    ...(free.length > 0 && { free }),
    ...(other && { otherCrossing: other }),
    ...(crossingAngle !== undefined && { crossingAngleDeg: crossingAngle * DEGREES, movedByHundredth: movedBy }),
    ...(spread && { spread }),
  };
}

function pointsJson(placed: PlacedMovement, points: readonly Named[]) {
  return points.flatMap((point) => {
    const place = placed.places.get(point.id);
    return place ? [placeJson(point, place)] : [];
  });
}

/** The planting as text and as data. Data is in millimetres and degrees whatever the display. */
export function plantAnswer(placed: PlacedMovement): Answer {
  const { movement } = placed;
  const text = inBlocks([
    [titleLine(movement), `Lengths in ${unitOf(movement.display)}, x right, y up, seen from the marked face.`],
    pointBlock(placed, 'arbor', movement.arbors),
    pointBlock(placed, 'post', movement.posts),
    pointBlock(placed, 'mark', movement.marks),
    ruleBlock(placed),
    stateBlock(placed),
  ]);
  const kinds = new Map(movement.rules.map(({ id, kind }) => [id, kind]));
  const json = {
    title: movement.title,
    settled: isSettled(placed),
    says: placed.says,
    arbors: pointsJson(placed, movement.arbors),
    posts: pointsJson(placed, movement.posts),
    marks: pointsJson(placed, movement.marks),
    rules: [...placed.rules.values()].map((outcome) => ({ ...outcome, kind: kinds.get(outcome.id) })),
    freeMotions: placed.freeMotions,
    disagreements: placed.disagreements,
  };
  return { text, json, code: isSettled(placed) ? 0 : 1 };
}
