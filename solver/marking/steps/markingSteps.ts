/**
 * Marking-out steps: how the points of a plate are struck one after another, each from what is already on the metal.
 *
 * The order is the planting's own order of construction. What a rule gives directly (two depths, a radius and a line,
 * the opposite point) is struck so; points of coupled groups, and points whose partners do not stand on this plate, get
 * settings computed from two points that are there. Everything is told as seen on the face that is marked.
 */

import { needsOfPlate } from '../../clearance/bodies/index.ts';
import { crossingAngle, type Point } from '../../geometry/index.ts';
import type { PointId, RuleId } from '../../movement/ids.ts';
import type { Rule } from '../../movement/schema.ts';
import type { Place, PlacedMovement } from '../../planting/placed.ts';
import { stateOf } from '../holes.ts';
import type { Datum, Face, MarkingStep, StepWarning, TwoArcs } from '../marks.ts';
import { namer } from '../names.ts';
import { plateViewOf } from '../plateView.ts';
import { bestArcs, checkFor, crossingSine } from './bestArcs.ts';
import { crossingTold } from './crossing.ts';
import {
  edgesOf,
  type Metal,
  type MetalLocus,
  type MetalPoint,
  metalPointAt,
  PLATE_CENTRE,
  type ResolvedDatum,
  resolveDatum,
} from './metal.ts';
import { arcFrom, type RuleGround } from './metalLoci.ts';
import { edgeOffset } from './offsets.ts';
import { strikeOf } from './strike.ts';

/** Which face is marked out, and from what. */
export interface MarkingOptions {
  /** May be left out for a movement without plates. */
  readonly plate?: string | undefined;
  /** The plate's marked face when left out. */
  readonly face?: Face | undefined;
  /** Two drilled holes, else the edges, else the centre of a round plate, else the first two points, when left out. */
  readonly datum?: Datum | undefined;
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
  /** What everything is measured from. */
  readonly datum: ResolvedDatum;
}

/** A step before it has its number. */
type Unnumbered = Omit<MarkingStep, 'number'>;

/** The steps of a face together with the datum, for sheets and texts. */
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
  const maker = makerOf(placed, metal);
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
  const numbered = steps.map((step, index): MarkingStep => {
    const warns: StepWarning | undefined = index === 0 && !asked ? { kind: 'otherDatum' } : step.warns;
    return { number: index + 1, ...step, ...(warns ? { warns } : {}) };
  });
  return { steps: numbered, faceLabel: view.faceLabel, datum };
}

/** What is needed to write one step. */
interface Maker {
  readonly placed: PlacedMovement;
  readonly metal: Metal;
  readonly name: (id: string) => string;
  readonly ground: RuleGround;
  readonly rules: ReadonlyMap<RuleId, Rule>;
}

function makerOf(placed: PlacedMovement, metal: Metal): Maker {
  const placeOf = (id: PointId): Point | undefined => {
    const place = placed.places.get(id);
    return place && metal.view.see(place);
  };
  const { movement } = placed;
  const arborOfWheel = new Map<string, PointId>(movement.wheels.map((wheel) => [wheel.id, wheel.arbor]));
  return {
    placed,
    metal,
    name: namer(movement),
    ground: { movement, metal, placeOf, arborOfWheel },
    rules: new Map(movement.rules.map((rule) => [rule.id, rule])),
  };
}

/** Points of the plate in the order of construction. */
function orderedPoints(placed: PlacedMovement, plate: string | undefined): readonly Place[] {
  const wanted = new Set(needsOfPlate(placed, plate).map((need) => need.id));
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
  return { point: place.id, label: maker.name(place.id), place: [at.x, at.y] as const, done };
}

function datumSteps(maker: Maker, settled: readonly Place[], isDone: (place: Place) => boolean): Unnumbered[] {
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

function datumStep(maker: Maker, place: Place, isFirst: boolean): Unnumbered {
  const { metal } = maker;
  const at = metal.view.see(place);
  const first = metal.points[0];
  let loci: readonly (MetalLocus | undefined)[] = [];
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

function alreadyStep(maker: Maker, place: Place): Unnumbered {
  const { metal } = maker;
  const at = metal.view.see(place);
  const check = checkFor(metal, [], at);
  metal.points.push({ id: place.id, at });
  return { ...blank(maker, place, true), kind: 'already', loci: [], ...(check ? { check } : {}) };
}

function unsettledStep(maker: Maker, place: Place): Unnumbered {
  const warns: StepWarning = { kind: 'notSettled', isLoose: place.state === 'loose' };
  return { ...blank(maker, place, false), kind: 'unsettled', loci: [], warns };
}

function strikeStep(maker: Maker, place: Place): Unnumbered {
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
  const step: Unnumbered = {
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
    ...(orElse ? { orElse } : {}),
    ...(warns ? { warns } : {}),
  };
}

function crossingOf(maker: Maker, first: MetalLocus, second: MetalLocus, at: Point) {
  const crossing = crossingTold(first, second, at, maker.metal);
  const angle = crossingAngle(first, second, at);
  return {
    ...(crossing ? { crossing } : {}),
    crossingAngleDeg: (angle * 180) / Math.PI,
    movedByHundredth: HUNDREDTH / Math.sin(angle),
  };
}

/** The same place with dividers alone, for steps that ask for an angle. */
function byDividers({ metal }: Maker, at: Point): TwoArcs | undefined {
  const arcs = bestArcs(metal, at);
  return arcs && crossingSine(arcs[0], arcs[1], at) >= POOR_SINE ? arcsTold(metal, arcs, at) : undefined;
}

/** Two arcs with the crossing that is meant. */
function arcsTold(metal: Metal, [a, b]: readonly [MetalLocus, MetalLocus], at: Point): TwoArcs {
  const crossing = crossingTold(a, b, at, metal);
  return { loci: [a.told, b.told], ...(crossing ? { crossing } : {}) };
}

/** What to heed at a crossing that is too flat, with a better way where the metal holds one. */
function warningOf({ metal }: Maker, first: MetalLocus, second: MetalLocus, at: Point): StepWarning | undefined {
  const sine = crossingSine(first, second, at);
  if (sine >= POOR_SINE) return undefined;
  const better = bestArcs(metal, at);
  if (better && crossingSine(better[0], better[1], at) > WORTHWHILE * sine) {
    const angle = crossingAngle(better[0], better[1], at);
    return { kind: 'flatBetterArcs', arcs: arcsTold(metal, better, at), angle };
  }
  if (metal.datum.kind !== 'edges') return { kind: 'flatNothingBetter' };
  const { upright, level } = metal.datum;
  return { kind: 'flatBetterOffsets', loci: [edgeOffset(upright, at).told, edgeOffset(level, at).told] };
}
