/** What does not change while one point of a movement is dragged, as the kinds of rules look for what it could settle on. */
import type { PointId } from '../../solver/movement/ids.ts';
import type { Movement, Wheel } from '../../solver/movement/schema.ts';
import type { Place, PlacedMovement } from '../../solver/planting/placed.ts';
import { HOLDS, ONE_PLACE } from '../../solver/tolerances.ts';
import { forSame } from '../state/derive/forSame.ts';
import type { SnapQuestion } from './snapQuestion.ts';

/** The ground of a drag. */
export interface SnapScene {
  readonly placed: PlacedMovement;
  readonly point: PointId;
  /** The point and whatever moves along with it. */
  readonly moving: ReadonlySet<PointId>;
  /** Points at the dragged one's place: their wheels are its own. */
  readonly axis: ReadonlySet<PointId>;
  /** Places of all that stands still, where they are now. */
  readonly still: (question: SnapQuestion) => readonly Place[];
  /** Those of them that others are measured from. */
  readonly centres: (question: SnapQuestion) => readonly Place[];
  /** Lines from a centre through another point that pass near the target. */
  readonly lines: (question: SnapQuestion) => readonly NearLine[];
}

/** A line through two places that passes near the target; `along` is a unit vector. */
export interface NearLine {
  readonly centre: Place;
  readonly other: Place;
  readonly along: { readonly x: number; readonly y: number };
}

/** Found once for a drag: each of its steps asks about the same movement, point and company. */
export const snapScene = forSame(
  ({ movement }: PlacedMovement, point: PointId, moving: ReadonlySet<PointId>) => [movement, point, moving],
  (placed, point, moving): SnapScene => {
    const ids = [...placed.places.keys()].filter((id) => !moving.has(id));
    const centreIds = centresOf(placed.movement);
    const still = ofQuestion(({ placed: { places } }) => ids.flatMap((id) => places.get(id) ?? []));
    const centres = ofQuestion((question) => still(question).filter(({ id }) => centreIds.has(id)));
    const lines = ofQuestion((question) => nearLines(question, centres(question), still(question)));
    return { placed, point, moving, axis: axisOf(placed, point), still, centres, lines };
  },
);

/** An answer that is worked out once for a question. */
function ofQuestion<T>(find: (question: SnapQuestion) => T): (question: SnapQuestion) => T {
  let last: { readonly question: SnapQuestion; readonly answer: T } | undefined;
  return (question) => {
    if (last?.question !== question) last = { question, answer: find(question) };
    return last.answer;
  };
}

/** Points that others are measured from: centres of rules, and arbors that carry pipes. */
function centresOf(movement: Movement): ReadonlySet<PointId> {
  const centres = new Set<PointId>();
  for (const rule of movement.rules) {
    if ('centre' in rule) centres.add(rule.centre);
    if ('at' in rule) centres.add(rule.point);
  }
  for (const { ridesOn } of movement.arbors) if (ridesOn) centres.add(ridesOn);
  return centres;
}

function nearLines(
  { target, reach }: SnapQuestion,
  centres: readonly Place[],
  still: readonly Place[],
): readonly NearLine[] {
  const found: NearLine[] = [];
  for (const centre of centres) {
    for (const other of still) {
      const [dx, dy] = [other.x - centre.x, other.y - centre.y];
      const length = Math.hypot(dx, dy);
      // Most of the many pairs end here.
      if (Math.abs((target.x - centre.x) * dy - (target.y - centre.y) * dx) > 2 * reach * length) continue;
      if (other.id !== centre.id && length >= ONE_PLACE) {
        found.push({ centre, other, along: { x: dx / length, y: dy / length } });
      }
    }
  }
  return found;
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

/** The wheels of some arbors. */
export function wheelsOn(movement: Movement, points: ReadonlySet<PointId>): Wheel[] {
  return movement.wheels.filter(({ arbor }) => points.has(arbor));
}
