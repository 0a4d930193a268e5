/**
 * Marking-out steps: how the points of a plate are struck one after another, each from what is already on the metal.
 *
 * The order is the planting's own order of construction. What a rule gives directly (two depths, a radius and a line,
 * the opposite point) is struck so; points of coupled groups, and points whose partners do not stand on this plate, get
 * settings computed from two points that are there. Everything is told as seen on the face that is marked.
 */

import type { Point } from '../../geometry/index.ts';
import { crossingAngle } from '../../geometry/index.ts';
import type { LengthDisplay } from '../../movement/decimal.ts';
import { fixed } from '../../movement/decimal.ts';
import type { PointId, RuleId } from '../../movement/ids.ts';
import type { Rule } from '../../movement/schema.ts';
import type { Place, PlacedMovement } from '../../planting/placed.ts';
import { needsOfPlate, stateOf } from '../holes.ts';
import type { Datum, Face, MarkingStep } from '../marks.ts';
import { namer } from '../names.ts';
import { plateViewOf } from '../plateView.ts';
import { bestArcs, checkFor, crossingSine } from './bestArcs.ts';
import { crossingWords } from './crossing.ts';
import { arcFrom, type RuleGround } from './lociOfRules.ts';
import { edgesOf, type Locus, type Metal, type MetalPoint, metalPointAt, PLATE_CENTRE, resolveDatum } from './metal.ts';
import { locusWords, type StepVoice, stepLines, type Unsaid } from './stepWords.ts';
import { edgeOffset, strikeOf } from './strike.ts';

/** Which face is marked out, and from what. */
export interface MarkingOptions {
  /** May be left out for a movement without plates. */
  readonly plate?: string | undefined;
  /** The plate's marked face when left out. */
  readonly face?: Face | undefined;
  /** Two drilled holes, else the edges, else the centre of a round plate, else the first two points, when left out. */
  readonly datum?: Datum | undefined;
  /** The movement's own display when left out. */
  readonly display?: LengthDisplay | undefined;
}

/** Below this crossing angle a better way is looked for, degrees: common practice (arcs that cross flatly wander). */
export const POOR_CROSSING_DEG = 30;
/** Its sine, with room for the rounding of an exact 30°. */
const POOR_SINE = Math.sin((POOR_CROSSING_DEG * Math.PI) / 180) - 1e-9;
/** A better way must cross at least this much more steeply to be worth naming. */
const WORTHWHILE = 1.3;
const HUNDREDTH = 0.01;

/** The steps of one plate and face, in order; points that are not settled come last and are not given a mark. */
export function markingSteps(placed: PlacedMovement, options: MarkingOptions = {}): readonly MarkingStep[] {
  return markingPlan(placed, options).steps;
}

/** The steps with what they were told from. */
export interface MarkingPlan {
  readonly steps: readonly MarkingStep[];
  readonly faceLabel: string;
  /** What everything is measured from, as a sentence. */
  readonly datumSays: string;
  readonly datum: Metal['datum'];
  readonly voice: StepVoice;
}

/** The steps of a face together with the datum and the words' settings, for sheets and texts. */
export function markingPlan(placed: PlacedMovement, options: MarkingOptions = {}): MarkingPlan {
  const view = plateViewOf(placed.movement, options.plate, options.face);
  const points = orderedPoints(placed, options.plate);
  const seen = (place: Place): MetalPoint => ({ id: place.id, at: view.see(place) });
  const settled = points.filter((place) => place.state === 'planted');
  const isDone = (place: Place) => stateOf(placed.movement, place.id, options.plate) !== 'toMark';
  const drilled = settled.filter((place) => stateOf(placed.movement, place.id, options.plate) === 'drilled');
  const { datum, base, asked } = resolveDatum(
    view,
    { settled: settled.map(seen), drilled: drilled.map(seen) },
    options.datum,
  );
  const metal: Metal = { view, face: view.face, datum, base, edges: edgesOf(view), points: [] };
  const label = namer(placed.movement);
  const datumLabel =
    datum.kind === 'pair' ? label(datum.first) : datum.kind === 'centre' ? `the ${PLATE_CENTRE}` : 'the left edge';
  const voice: StepVoice = {
    display: options.display ?? placed.movement.display,
    label: (id) => (id === PLATE_CENTRE ? `the ${id}` : label(id)),
    datumLabel,
  };
  const maker = makerOf(placed, metal, voice);
  const steps = [...datumSteps(maker, settled, isDone)];
  const started = new Set(steps.map((step) => step.point));
  const rest = points.filter((place) => !started.has(place.id));
  for (const place of [
    ...rest.filter((p) => p.state === 'planted' && isDone(p)),
    ...rest.filter((p) => p.state === 'planted' && !isDone(p)),
  ]) {
    steps.push(isDone(place) ? alreadyStep(maker, place) : strikeStep(maker, place));
  }
  for (const place of rest) if (place.state !== 'planted') steps.push(unsettledStep(maker, place));
  const refused = asked ? undefined : 'The datum asked for is not on this plate; another is used.';
  const numbered = steps.map((step, index): MarkingStep => {
    const told = index === 0 && refused !== undefined ? { ...step, warns: refused } : step;
    return { number: index + 1, ...told, says: stepLines(told, voice).join(' ') };
  });
  return { steps: numbered, faceLabel: view.faceLabel, datumSays: datumSays(metal, voice), datum, voice };
}

function datumSays({ datum }: Metal, voice: StepVoice): string {
  switch (datum.kind) {
    case 'edges':
      return `Datum: the ${datum.upright.name} and the ${datum.level.name}. The base line is parallel to the ${datum.level.name} and points right.`;
    case 'centre':
      return `Datum: the ${PLATE_CENTRE} and the base line through it, which points right.`;
    case 'pair':
      return `Datum: ${voice.label(datum.first)}; the base line points from it to ${voice.label(datum.second)}.`;
  }
}

/** What is needed to write one step. */
interface Maker {
  readonly placed: PlacedMovement;
  readonly metal: Metal;
  readonly voice: StepVoice;
  readonly ground: RuleGround;
  readonly rules: ReadonlyMap<RuleId, Rule>;
}

function makerOf(placed: PlacedMovement, metal: Metal, voice: StepVoice): Maker {
  const placeOf = (id: PointId): Point | undefined => {
    const place = placed.places.get(id);
    return place && metal.view.see(place);
  };
  const { movement } = placed;
  const arborOfWheel = new Map<string, PointId>(movement.wheels.map((wheel) => [wheel.id, wheel.arbor]));
  return {
    placed,
    metal,
    voice,
    ground: { movement, metal, placeOf, arborOfWheel },
    rules: new Map(movement.rules.map((rule) => [rule.id, rule])),
  };
}

/** Points of the plate in the order of construction. */
function orderedPoints(placed: PlacedMovement, plate: string | undefined): readonly Place[] {
  const wanted = new Set(needsOfPlate(placed.movement, plate).map((need) => need.id));
  const ordered: Place[] = [];
  const take = (id: PointId): void => {
    const place = placed.places.get(id);
    if (place && wanted.delete(id)) ordered.push(place);
  };
  for (const step of placed.order) step.points.forEach(take);
  for (const id of [...wanted]) take(id);
  return ordered;
}

function blank(maker: Maker, place: Place, done: boolean) {
  const at = maker.metal.view.see(place);
  return { point: place.id, label: maker.voice.label(place.id), place: [at.x, at.y] as const, done };
}

function datumSteps(maker: Maker, settled: readonly Place[], isDone: (place: Place) => boolean): Unsaid[] {
  const { metal } = maker;
  const { datum } = metal;
  if (datum.kind === 'edges') return [];
  if (datum.kind === 'centre') {
    metal.points.push({ id: PLATE_CENTRE, at: datum.origin });
    const done = metal.view.plate?.centreMarked ?? false;
    const place = [datum.origin.x, datum.origin.y] as const;
    return [{ point: PLATE_CENTRE, label: 'Plate centre', kind: 'datum', loci: [], place, done }];
  }
  const pair = [datum.first, datum.second].map((id) => settled.find((place) => place.id === id));
  return pair.flatMap((place, index) => {
    if (!place) return [];
    const step = isDone(place) ? alreadyStep(maker, place) : datumStep(maker, place, index === 0);
    return [step];
  });
}

function datumStep(maker: Maker, place: Place, isFirst: boolean): Unsaid {
  const { metal } = maker;
  const at = metal.view.see(place);
  const first = metal.points[0];
  let loci: readonly (Locus | undefined)[] = [];
  if (isFirst) {
    const upright = metal.edges.find((edge) => edge.axis === 'x');
    const level = metal.edges.find((edge) => edge.axis === 'y');
    if (upright && level) loci = [edgeOffset(upright, at), edgeOffset(level, at)];
  } else if (first) {
    loci = [arcFrom(first, at)];
  }
  metal.points.push({ id: place.id, at });
  const told = loci.flatMap((locus) => (locus ? [locus.told] : []));
  return { ...blank(maker, place, false), kind: 'datum', loci: told };
}

function alreadyStep(maker: Maker, place: Place): Unsaid {
  const { metal } = maker;
  const at = metal.view.see(place);
  const check = checkFor(metal, [], at);
  metal.points.push({ id: place.id, at });
  return { ...blank(maker, place, true), kind: 'already', loci: [], ...(check ? { check } : {}) };
}

function unsettledStep(maker: Maker, place: Place): Unsaid {
  const why =
    place.state === 'loose' ? 'it can still move' : 'its rules disagree, or those of a point that it is struck from';
  const warns = `${maker.voice.label(place.id)} cannot be marked: ${why}. Settle it first.`;
  return { ...blank(maker, place, false), kind: 'unsettled', loci: [], warns };
}

function strikeStep(maker: Maker, place: Place): Unsaid {
  const { metal } = maker;
  const at = metal.view.see(place);
  const there = metalPointAt(metal, at);
  if (there) {
    const shared = { kind: 'line', through: there.id, to: there.id } as const;
    return { ...blank(maker, place, false), kind: 'same', loci: [shared] };
  }
  const rules = place.placedBy.flatMap((id) => maker.rules.get(id) ?? []);
  const strike = strikeOf(maker.ground, rules, at);
  const [first, second] = strike.loci;
  const step: Unsaid = {
    ...blank(maker, place, false),
    kind: strike.kind,
    loci: strike.loci.map((locus) => locus.told),
    ...(first && second ? crossingOf(maker, first, second, at) : {}),
  };
  const check = checkFor(metal, strike.loci, at);
  const warns = first && second ? warningOf(maker, first, second, at) : undefined;
  const orElse = strike.loci.some((locus) => locus.told.kind === 'ray') ? byDividers(maker, at) : undefined;
  metal.points.push({ id: place.id, at });
  return {
    ...step,
    ...(check ? { check } : {}),
    ...(orElse === undefined ? {} : { orElse }),
    ...(warns === undefined ? {} : { warns }),
  };
}

function crossingOf(maker: Maker, first: Locus, second: Locus, at: Point) {
  const crossing = crossingWords(first, second, at, maker.metal, maker.voice.label);
  const angle = crossingAngle(first, second, at);
  return {
    ...(crossing === undefined ? {} : { crossing }),
    crossingAngleDeg: (angle * 180) / Math.PI,
    movedByHundredth: HUNDREDTH / Math.sin(angle),
  };
}

/** The same place with dividers alone, for steps that ask for an angle. */
function byDividers(maker: Maker, at: Point): string | undefined {
  const arcs = bestArcs(maker.metal, at);
  if (!arcs || crossingSine(arcs[0], arcs[1], at) < POOR_SINE) return undefined;
  return `With dividers alone: ${arcsWords(maker, arcs, at)}.`;
}

/** Two arcs with the crossing that is meant. */
function arcsWords({ metal, voice }: Maker, [a, b]: readonly [Locus, Locus], at: Point): string {
  const words = crossingWords(a, b, at, metal, voice.label);
  const which = words === undefined ? '' : ` (${words})`;
  return `${locusWords(a.told, voice)} and ${locusWords(b.told, voice)}${which}`;
}

/** What to say of a crossing that is too flat, with a better way where the metal holds one. */
function warningOf(maker: Maker, first: Locus, second: Locus, at: Point): string | undefined {
  const { metal, voice } = maker;
  const sine = crossingSine(first, second, at);
  if (sine >= POOR_SINE) return undefined;
  const flat = `A flat crossing: the lines run together and the point wanders.`;
  const better = bestArcs(metal, at);
  if (better && crossingSine(better[0], better[1], at) > WORTHWHILE * sine) {
    const angle = (crossingAngle(better[0], better[1], at) * 180) / Math.PI;
    return `${flat} Better: ${arcsWords(maker, better, at)}, which cross at ${fixed(angle, 1)}°.`;
  }
  if (metal.datum.kind === 'edges') {
    const { upright, level } = metal.datum;
    const lines = [upright, level].map((edge) => locusWords(edgeOffset(edge, at).told, voice)).join(' and ');
    return `${flat} Better: lines at ${lines}, which cross at 90.0°.`;
  }
  return `${flat} Strike a witness point to one side first, or drill it by coordinates.`;
}
