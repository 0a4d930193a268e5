/**
 * Rules that could be kept by the point under the pointer, each with the places where it would hold.
 *
 * Only what does not move with the dragged point is offered, and nothing that a rule of the movement says already.
 */

import type { PointId } from '../../solver/movement/ids.ts';
import type { Movement, Rule, Wheel } from '../../solver/movement/schema.ts';
import type { DraftRule } from '../../solver/planting/index.ts';
import type { Place, PlacedMovement } from '../../solver/planting/placed.ts';
import { calculatedDepth } from '../../solver/teeth/index.ts';
import { HOLDS, ONE_PLACE } from '../../solver/tolerances.ts';
import { forSame } from '../state/derive/forSame.ts';
import { joinableWith } from './joinable.ts';
import type { SnapCandidate } from './snap.ts';
import { type PossibleGap, possibleGaps, snapGaps } from './snapGaps.ts';
import { isNear, type SnapQuestion } from './snapQuestion.ts';

/** How willingly each kind is taken: depths first, a round radius only when the pointer is almost on it. */
const WEIGHT = {
  depth: 1.6,
  samePlace: 1.2,
  opposite: 1.2,
  radius: 1,
  inLine: 0.7,
  bearing: 0.7,
  round: 0.35,
};

/** Everything that could be kept near the target; `chooseSnap` takes from it. */
export function snapCandidates(question: SnapQuestion): SnapCandidate[] {
  const { placed, point, moving } = question;
  const known = snapGround(placed, point, moving);
  const still = known.still.flatMap((id) => placed.places.get(id) ?? []);
  return [
    ...depths(question, known.depths),
    ...snapGaps(question, known.gaps),
    ...aboutCentres(question, still, known),
    ...samePlaces(question, still, known.joinable),
  ];
}

/** What does not change while one point of a movement is dragged. */
interface SnapGround {
  /** Points that do not move along. */
  readonly still: readonly PointId[];
  readonly centres: ReadonlySet<PointId>;
  /** Points whose place the dragged one may share. */
  readonly joinable: ReadonlySet<string>;
  readonly depths: readonly PossibleDepth[];
  readonly gaps: readonly PossibleGap[];
  /** What rules say already. */
  readonly said: ReadonlySet<string>;
  /** Lengths of the radius rules about each centre that belong to other points. */
  readonly radii: ReadonlyMap<PointId, readonly number[]>;
}

/** Found once for a drag: each of its steps asks about the same movement, point and company. */
const snapGround = forSame(
  ({ movement }: PlacedMovement, point: PointId, moving: ReadonlySet<PointId>) => [movement, point, moving],
  (placed, point, moving): SnapGround => {
    const { movement } = placed;
    const axis = axisOf(placed, point);
    const radii = new Map<PointId, number[]>();
    for (const rule of movement.rules) {
      if (rule.kind !== 'radius' || rule.point === point) continue;
      radii.set(rule.centre, [...(radii.get(rule.centre) ?? []), rule.length]);
    }
    return {
      still: [...placed.places.keys()].filter((id) => !moving.has(id)),
      centres: centresOf(movement),
      joinable: joinableWith(movement, point),
      depths: possibleDepths(movement, axis, moving),
      gaps: possibleGaps(movement, point, moving, axis),
      said: new Set(movement.rules.map(sayingOf)),
      radii,
    };
  },
);

/** The point and all that hangs on it: whatever would move along. */
export function movesWith(placed: PlacedMovement, point: PointId): ReadonlySet<PointId> {
  const found = new Set<PointId>([point]);
  const queue: PointId[] = [point];
  const take = (id: PointId): void => {
    if (found.has(id)) return;
    found.add(id);
    queue.push(id);
  };
  for (let id = queue.pop(); id !== undefined; id = queue.pop()) {
    for (const next of placed.places.get(id)?.hangsOn ?? []) take(next);
    const here = placed.places.get(id);
    for (const arbor of placed.movement.arbors) {
      if (arbor.ridesOn === id) take(arbor.id);
      if (arbor.id === id && arbor.ridesOn && here) take(arbor.ridesOn);
    }
  }
  return found;
}

function wheelsOn(movement: Movement, points: ReadonlySet<PointId>): Wheel[] {
  return movement.wheels.filter(({ arbor }) => points.has(arbor));
}

/** Axis group of the dragged point only: its own wheels and those of pipes at its place. */
function axisOf({ movement, places }: PlacedMovement, point: PointId): ReadonlySet<PointId> {
  const here = places.get(point);
  const group = new Set<PointId>([point]);
  for (const arbor of movement.arbors) {
    const there = places.get(arbor.id);
    const rides = arbor.ridesOn !== undefined && (arbor.ridesOn === point || arbor.id === point);
    if (rides && here && there && Math.hypot(here.x - there.x, here.y - there.y) < HOLDS) {
      group.add(arbor.id);
      if (arbor.ridesOn) group.add(arbor.ridesOn);
    }
  }
  return group;
}

const levelsMeet = (a: Wheel, b: Wheel): boolean => a.level < b.level + b.thickness && b.level < a.level + a.thickness;

/** Two wheels that could mesh, one of them dragged. */
interface PossibleDepth {
  readonly drives: Wheel;
  readonly driven: Wheel;
  readonly other: Wheel;
  readonly distance: number;
}

function possibleDepths(
  movement: Movement,
  axis: ReadonlySet<PointId>,
  moving: ReadonlySet<PointId>,
): readonly PossibleDepth[] {
  const found: PossibleDepth[] = [];
  const joined = new Set(movement.rules.flatMap((rule) => (rule.kind === 'depth' ? [rule.wheels.join(' ')] : [])));
  for (const own of wheelsOn(movement, axis)) {
    for (const other of movement.wheels) {
      if (moving.has(other.arbor) || !levelsMeet(own, other)) continue;
      if (joined.has(`${own.id} ${other.id}`) || joined.has(`${other.id} ${own.id}`)) continue;
      const [drives, driven] = inOrderOfDrive(movement, own, other);
      const depth = calculatedDepth(drives, driven, movement);
      if (depth.kind === 'depth') found.push({ drives, driven, other, distance: depth.distance });
    }
  }
  return found;
}

function depths(question: SnapQuestion, possible: readonly PossibleDepth[]): SnapCandidate[] {
  const { placed, target, reach } = question;
  const found: SnapCandidate[] = [];
  for (const { drives, driven, other, distance } of possible) {
    const centre = placed.places.get(other.arbor);
    if (!centre || !isNear(centre, distance, target, 2 * reach)) continue;
    found.push({
      key: `depth ${drives.id} ${driven.id}`,
      locus: { kind: 'circle', centre, radius: distance },
      keeps: { kind: 'depth', wheels: [drives.id, driven.id], use: 'calculated', allowance: 0 },
      says: `depth ${question.lengthSays(distance)} with ${question.nameOf(other.id)}`,
      weight: WEIGHT.depth,
    });
  }
  return found;
}

/** The wheel on the driving arbor drives; otherwise the one with more teeth, as in a going train. */
function inOrderOfDrive(movement: Movement, a: Wheel, b: Wheel): readonly [Wheel, Wheel] {
  if (movement.drive?.arbor === a.arbor) return [a, b];
  if (movement.drive?.arbor === b.arbor) return [b, a];
  return a.teeth >= b.teeth ? [a, b] : [b, a];
}

/** Points that others are measured from: centres of rules, and arbors that carry pipes. */
function centresOf(movement: Movement): ReadonlySet<PointId> {
  const centres = new Set<PointId>();
  for (const rule of movement.rules) {
    if ('centre' in rule) centres.add(rule.centre);
    if (rule.kind === 'held') centres.add(rule.point);
  }
  for (const { ridesOn } of movement.arbors) if (ridesOn) centres.add(ridesOn);
  return centres;
}

function aboutCentres(
  question: SnapQuestion,
  still: readonly Place[],
  { centres, said, radii: lengths }: SnapGround,
): SnapCandidate[] {
  const { point } = question;
  const found: SnapCandidate[] = [];
  for (const centre of still) {
    if (!centres.has(centre.id)) continue;
    found.push(...radii(question, centre, lengths.get(centre.id) ?? []), ...bearings(question, centre));
    for (const other of still) {
      if (other.id === centre.id || Math.hypot(other.x - centre.x, other.y - centre.y) < ONE_PLACE) continue;
      found.push(...lines(question, centre, other));
    }
  }
  return found.filter(({ keeps }) => !said.has(sayingOf(keeps)) && mentions(keeps, point));
}

/** What a rule says, without its number: to see that it is said already. */
function sayingOf(rule: DraftRule | Rule): string {
  if (rule.kind === 'radius') return `radius ${rule.point} ${rule.centre}`;
  if (rule.kind === 'bearing') return `bearing ${rule.point} ${rule.centre}`;
  if (rule.kind === 'inLine') return `inLine ${rule.point} ${[...rule.through].sort().join(' ')}`;
  if (rule.kind === 'opposite') return `opposite ${rule.point} ${rule.centre}`;
  return '';
}

const mentions = (rule: DraftRule, point: PointId): boolean => 'point' in rule && rule.point === point;

/** Radii that others have about the centre, and round ones. */
function radii(question: SnapQuestion, centre: Place, others: readonly number[]): SnapCandidate[] {
  const { point, target, reach, lengthSays, nameOf } = question;
  const away = Math.hypot(target.x - centre.x, target.y - centre.y);
  const lengths = new Map<number, number>();
  const step = roundStep(reach);
  lengths.set(Math.round(away / step) * step, WEIGHT.round);
  for (const length of others) lengths.set(length, WEIGHT.radius);
  return [...lengths]
    .filter(([length]) => length > reach && Math.abs(length - away) <= 2 * reach)
    .map(([length, weight]) => ({
      key: `radius ${centre.id} ${length.toFixed(6)}`,
      locus: { kind: 'circle', centre, radius: length },
      keeps: { kind: 'radius', point, centre: centre.id, length: Number(length.toFixed(6)) },
      says: `radius ${lengthSays(length)} from ${nameOf(centre.id)}`,
      weight,
    }));
}

/** A round number of millimetres that is several reaches wide. */
export function roundStep(reach: number): number {
  return [0.1, 0.5, 1, 2, 5, 10, 50, 100].find((step) => step >= 2 * reach) ?? 1000;
}

const QUARTERS = [
  { angle: 90, along: { x: 0, y: 1 }, says: 'straight above' },
  { angle: -90, along: { x: 0, y: -1 }, says: 'straight below' },
  { angle: 0, along: { x: 1, y: 0 }, says: 'level with, to the right of' },
  { angle: 180, along: { x: -1, y: 0 }, says: 'level with, to the left of' },
] as const;

function bearings({ point, target, reach, nameOf }: SnapQuestion, centre: Place): SnapCandidate[] {
  return QUARTERS.filter(({ along }) => {
    const ahead = (target.x - centre.x) * along.x + (target.y - centre.y) * along.y;
    const off = Math.abs((target.x - centre.x) * along.y - (target.y - centre.y) * along.x);
    return ahead > 2 * reach && off <= 2 * reach;
  }).map(({ angle, along, says }) => ({
    key: `bearing ${centre.id} ${angle}`,
    locus: { kind: 'ray', through: centre, along },
    keeps: { kind: 'bearing', point, centre: centre.id, angle },
    says: `${says} ${nameOf(centre.id)}`,
    weight: WEIGHT.bearing,
  }));
}

const NO_LINES: readonly SnapCandidate[] = [];

/** In line with the centre and another, or straight opposite the other. */
function lines({ point, target, reach, nameOf }: SnapQuestion, centre: Place, other: Place): readonly SnapCandidate[] {
  const [dx, dy] = [other.x - centre.x, other.y - centre.y];
  const length = Math.hypot(dx, dy);
  // Most of the many pairs end here.
  if (Math.abs((target.x - centre.x) * dy - (target.y - centre.y) * dx) > 2 * reach * length) return NO_LINES;
  const along = { x: dx / length, y: dy / length };
  const found: SnapCandidate[] = [
    {
      key: `inLine ${[centre.id, other.id].sort().join(' ')}`,
      locus: { kind: 'line', through: centre, along },
      keeps: { kind: 'inLine', point, through: [centre.id, other.id] },
      says: `in line with ${nameOf(centre.id)} and ${nameOf(other.id)}`,
      weight: WEIGHT.inLine,
    },
  ];
  const image = { x: 2 * centre.x - other.x, y: 2 * centre.y - other.y };
  if (Math.hypot(image.x - target.x, image.y - target.y) <= 2 * reach) {
    found.push({
      key: `opposite ${centre.id} ${other.id}`,
      locus: { kind: 'point', at: image },
      keeps: { kind: 'opposite', point, centre: centre.id, of: other.id },
      says: `straight opposite ${nameOf(other.id)}`,
      weight: WEIGHT.opposite,
    });
  }
  return found;
}

function samePlaces(
  { point, target, reach, nameOf }: SnapQuestion,
  still: readonly Place[],
  joinable: ReadonlySet<string>,
): SnapCandidate[] {
  return still
    .filter((place) => joinable.has(place.id) && Math.hypot(place.x - target.x, place.y - target.y) <= 2 * reach)
    .map((place) => ({
      key: `samePlace ${place.id}`,
      locus: { kind: 'point', at: place },
      keeps: { kind: 'samePlace', points: [point, place.id] },
      says: `same place as ${nameOf(place.id)}`,
      weight: WEIGHT.samePlace,
      first: true,
    }));
}
