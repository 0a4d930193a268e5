/** `depthwright plant`: where every point stands, which rules hold, what is free and what disagrees. */

import { depthVerdicts, type JudgedDepth } from '../../solver/clearance/index.ts';
import type { PointId } from '../../solver/movement/ids.ts';
import type { Movement } from '../../solver/movement/schema.ts';
import { type CrossingCure, crossingCure, type Disagreement, tracePlanting } from '../../solver/planting/index.ts';
import type { Place, PlacedMovement } from '../../solver/planting/placed.ts';
import { HOLDS } from '../../solver/tolerances.ts';
import { verdictCureSays, verdictSays } from '../../solver/words/clearance/index.ts';
import { ruleHeading, type Speaker } from '../../solver/words/index.ts';
import { crossingCureSays, disagreementSays, dutySays, plantingSays } from '../../solver/words/planting/index.ts';
import { pairSays } from '../../solver/words/shop/index.ts';
import type { Answer } from './answer.ts';
import { inBlocks, inColumns, wrapped } from './columns.ts';
import { plainSpeaker } from './plainSpeaker.ts';

const DEGREES = 180 / Math.PI;

const unitOf = (display: Movement['display']): string => (display.unit === 'inch' ? 'inches' : 'millimetres');

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
function pointRows(placed: PlacedMovement, points: readonly Named[], speaker: Speaker): string[][] {
  const { name, figure, angle, rule } = speaker;
  return points.flatMap(({ id, ridesOn }) => {
    const place = placed.places.get(id);
    if (!place) return [];
    const crossing = place.crossingAngle === undefined ? '' : angle(place.crossingAngle);
    const spread = place.spread ? `± ${figure(2 * place.spread.major)}` : '';
    const isDrilled = placed.movement.made.some((made) => made.point === id && made.state === 'drilled');
    const by =
      place.placedBy.map(rule).join(', ') ||
      (isDrilled ? 'drilled' : ridesOn === undefined ? '' : `rides on ${name(ridesOn)}`);
    return [[name(id), figure(place.x), figure(place.y), place.state, spread, crossing, by]];
  });
}

function pointBlock(placed: PlacedMovement, kind: string, points: readonly Named[], speaker: Speaker): string[] {
  const rows = pointRows(placed, points, speaker);
  if (rows.length === 0) return [];
  const heads = [
    { head: kind },
    { head: 'x', align: 'right' },
    { head: 'y', align: 'right' },
    { head: 'state' },
    { head: '±' },
    { head: 'crossing', align: 'right' },
    { head: 'placed by' },
  ] as const;
  return inColumns(heads, rows);
}

function ruleBlock({ movement, rules }: PlacedMovement, { figure, rule }: Speaker): string[] {
  const length = (mm: number | undefined): string => (mm === undefined ? '' : figure(mm));
  const rows = movement.rules.flatMap(({ id, kind }) => {
    const outcome = rules.get(id);
    if (!outcome) return [];
    const miss = Math.abs(outcome.missBy) < HOLDS ? '' : figure(outcome.missBy);
    const { calculated, measured, held } = outcome;
    const lengths = [outcome.length, calculated, measured, held].map(length);
    return [[rule(id), ruleHeading(kind), ...lengths, dutySays(outcome), miss]];
  });
  if (rows.length === 0) return [];
  const number = (head: string) => ({ head, align: 'right' as const });
  const lengths = ['length', 'calculated', 'measured', 'held'].map(number);
  return inColumns([{ head: 'rule' }, { head: 'kind' }, ...lengths, { head: 'duty' }, number('misses by')], rows);
}

/** A disagreement with the other crossing that would cure it, where there is one. */
interface Told {
  readonly disagreement: Disagreement;
  readonly crossing: CrossingCure | undefined;
}

/** Disagreements of which other crossings are looked for: each costs many plantings. */
const MOST_CROSSED = 5;

const toldIn = (placed: PlacedMovement): readonly Told[] =>
  placed.disagreements.map((disagreement, k) => ({
    disagreement,
    crossing: k < MOST_CROSSED ? crossingCure(placed, disagreement) : undefined,
  }));

/** The state in words: the sentence has the first disagreement, the list below it the others; other crossings first. */
function stateBlock(placed: PlacedMovement, told: readonly Told[], speaker: Speaker): string[] {
  const crossings = told.flatMap(({ crossing }) => (crossing ? [crossingCureSays(crossing, speaker)] : []));
  const others = told.slice(1).map(({ disagreement }) => disagreementSays(disagreement, speaker));
  return [
    ...wrapped(plantingSays(placed, speaker)),
    ...[...new Set(crossings), ...others].flatMap((says) => wrapped(says, '  - ')),
  ];
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

function disagreementJson({ disagreement, crossing }: Told, speaker: Speaker) {
  const { rules, points, gap, cure } = disagreement;
  const other = crossing && {
    otherCrossing: {
      points: crossing.points,
      moves: crossing.moves,
      edit: crossing.edit,
      says: crossingCureSays(crossing, speaker),
    },
  };
  return { rules, points, gap, says: disagreementSays(disagreement, speaker), ...other, ...(cure && { cure }) };
}

/** What `plant` may be asked besides. */
export interface PlantChoice {
  /** How the planting came about, as JSON. */
  readonly trace?: boolean;
}

function traceAnswer(placed: PlacedMovement): Answer {
  const json = tracePlanting(placed.movement);
  return {
    text: `${JSON.stringify(json, undefined, 2)}\n`,
    json,
    code: isSettled(placed) && stoppedDepths(placed).length === 0 ? 0 : 1,
  };
}

/** Depths that stop as they are planted: whatever the rules of the plane say, the movement does not run. */
export function stoppedDepths(placed: PlacedMovement): readonly JudgedDepth[] {
  return [...depthVerdicts(placed).values()].filter(({ severity }) => severity === 'stops');
}

function depthBlock(stopped: readonly JudgedDepth[], speaker: Speaker): string[] {
  return stopped.flatMap((verdict) => {
    const cure = verdictCureSays(verdict, speaker);
    return wrapped(
      `${pairSays(verdict.rule, speaker)} ${verdictSays(verdict, speaker)}${cure && ` Or ${cure}.`}`,
      '  - ',
    );
  });
}

/** The planting as text and as data. Data is in millimetres and degrees whatever the display. */
export function plantAnswer(placed: PlacedMovement, { trace = false }: PlantChoice = {}): Answer {
  const { movement } = placed;
  if (trace) return traceAnswer(placed);
  const speaker = plainSpeaker(movement);
  const told = toldIn(placed);
  const stopped = stoppedDepths(placed);
  const text = inBlocks([
    [titleLine(movement), `Lengths in ${unitOf(movement.display)}, x right, y up, seen from the marked face.`],
    pointBlock(placed, 'arbor', movement.arbors, speaker),
    pointBlock(placed, 'post', movement.posts, speaker),
    pointBlock(placed, 'mark', movement.marks, speaker),
    ruleBlock(placed, speaker),
    stateBlock(placed, told, speaker),
    stopped.length > 0 ? ['Depths that stop:', ...depthBlock(stopped, speaker)] : [],
  ]);
  const kinds = new Map(movement.rules.map(({ id, kind }) => [id, kind]));
  const json = {
    title: movement.title,
    settled: isSettled(placed),
    says: plantingSays(placed, speaker),
    arbors: pointsJson(placed, movement.arbors),
    posts: pointsJson(placed, movement.posts),
    marks: pointsJson(placed, movement.marks),
    rules: [...placed.rules.values()].map((outcome) => ({ ...outcome, kind: kinds.get(outcome.id) })),
    freeMotions: placed.freeMotions,
    disagreements: told.map((each) => disagreementJson(each, speaker)),
    depthsThatStop: stopped.map((verdict) => ({
      rule: verdict.rule,
      duty: verdict.duty,
      distance: verdict.distance,
      fault: verdict.fault?.kind,
      goodDistance: verdict.goodDistance ?? null,
      says: verdictSays(verdict, speaker),
    })),
  };
  return { text, json, code: isSettled(placed) && stopped.length === 0 ? 0 : 1 };
}
