/**
 * Dragging one point: at every step the nearest place to the pointer that keeps all rules.
 *
 * The kernel keeps the plan and the side of every crossing, so that nothing jumps. Nothing is written to the movement
 * until the drag is released.
 */

import type { PointId } from '../../movement/ids.ts';
import type { Arbor, Mark, Movement, Post, Rule } from '../../movement/schema.ts';
import { HOLDS } from '../../tolerances.ts';
import { createPlanner, type Planner } from '../kernel/planner.ts';
import { type NetworkResult, PointState } from '../network.ts';
import type { PlacedMovement } from '../placed.ts';
import { PlantedMovement } from './planted.ts';
import { plantAsSketched, plantMovement } from './plantMovement.ts';

/** What a released drag leaves: an edit of sketch places. */
export interface MovedSketch {
  readonly kind: 'move';
  readonly places: readonly { readonly id: PointId; readonly at: readonly [number, number] }[];
}

/** One drag, from the press to the release. */
export interface DragSession {
  /** The planting with the point as near to (x, y) as its rules let it. */
  readonly to: (x: number, y: number) => PlacedMovement;
  /** The edit that makes the last step's places the sketch; undefined where nothing moved. */
  readonly release: () => MovedSketch | undefined;
  /**
   * What the movement would come to with these rules as well, if the drag were released with the point at (x, y): the
   * planting after the edits that move the sketch and add the rules, without a check of the document. Undefined where
   * the rules do not hold on the branch that is dragged: a drag turns no crossing over, and to look for one takes long.
   */
  readonly keeping: (rules: readonly Rule[], x: number, y: number) => PlacedMovement | undefined;
}

/** Pulls that one step takes at most; a far pointer is reached by the next steps. */
const MOST_PULLS = 60;
/** A pull that brings the point nearer by less is the last, mm: a hand moves less between two frames of the screen. */
const FAR = 5;

/**
 * Starts to drag a point of a planted movement.
 *
 * @param pointId a point that is planted stays where it is: `to` then gives the planting unchanged
 */
export function startDrag(placed: PlacedMovement, pointId: PointId): DragSession {
  const start = placed instanceof PlantedMovement ? placed : (plantMovement(placed.movement) as PlantedMovement); // it makes no other
  const { ground, result } = start.index;
  const point = ground.indexOf.get(pointId);
  if (point === undefined || result.states[point] === PointState.planted || ground.network.held[point] === 1) {
    return {
      to: () => start,
      release: () => undefined,
      keeping: (rules, x, y) => plantMovement(withSketch(start.movement, new Map([[pointId, [x, y]]]), rules), start),
    };
  }
  const planner = createPlanner(ground.network);
  let last = start;
  /** Does all hold as the sketch means it without more rules? Else a planting that does not tells nothing of these. */
  let isAsSketched: boolean | undefined;
  return {
    to: (x, y) => {
      last = last.following(pull(planner, last.index.result, point, x, y));
      return last;
    },
    release: () => movedSketch(start, last),
    keeping: (rules, x, y) => {
      const moved = new Map(movedSketch(start, last)?.places.map(({ id, at }) => [id, at]));
      const movement = withSketch(start.movement, moved.set(pointId, [x, y]), rules);
      const kept = plantAsSketched(movement, last);
      if (kept) return kept;
      isAsSketched ??= plantAsSketched(start.movement, start) !== undefined;
      return isAsSketched ? undefined : plantMovement(movement, last);
    },
  };
}

/** The movement with other sketch places and more rules; everything else stays the same object. */
function withSketch(
  movement: Movement,
  places: ReadonlyMap<PointId, readonly [number, number]>,
  rules: readonly Rule[],
): Movement {
  const moved = <Point extends Arbor | Post | Mark>(points: readonly Point[]): readonly Point[] => {
    if (!points.some(({ id }) => places.has(id))) return points;
    return points.map((point) => {
      const at = places.get(point.id);
      return at ? { ...point, at } : point;
    });
  };
  return {
    ...movement,
    arbors: moved(movement.arbors),
    posts: moved(movement.posts),
    marks: moved(movement.marks),
    rules: [...movement.rules, ...rules],
  };
}

/** Drags again while the point still goes far: one drag of the kernel follows a distant pointer only so far. */
function pull(planner: Planner, from: NetworkResult, point: number, x: number, y: number): NetworkResult {
  let before = from;
  let result = planner.drag(point, x, y);
  for (let pulls = 1; pulls < MOST_PULLS; pulls++) {
    const nearer = distanceOf(before, point, x, y) - distanceOf(result, point, x, y);
    if (nearer < FAR || distanceOf(result, point, x, y) < HOLDS) break;
    before = result;
    result = planner.drag(point, x, y);
  }
  return result;
}

function distanceOf({ coords }: NetworkResult, point: number, x: number, y: number): number {
  return Math.hypot((coords[2 * point] ?? 0) - x, (coords[2 * point + 1] ?? 0) - y);
}

/**
 * Sketch places of everything that moved, and of all that is placed together with it: a group is planted from its sketch
 * as a whole, and from one stale member it would end a little elsewhere. A post that slides takes its centre's place
 * along, so that its radius stays.
 */
function movedSketch(start: PlantedMovement, last: PlantedMovement): MovedSketch | undefined {
  const { ground, result } = last.index;
  // A drag keeps its plan, so the steps are those of its start.
  const { stepOf } = start.index;
  const [was, is] = [start.index.result.coords, result.coords];
  const hasMoved = (point: number): boolean =>
    Math.hypot((is[2 * point] ?? 0) - (was[2 * point] ?? 0), (is[2 * point + 1] ?? 0) - (was[2 * point + 1] ?? 0)) >
    HOLDS;
  const steps = new Set<number>();
  for (const point of ground.indexOf.values()) if (hasMoved(point)) steps.add(stepOf[point] ?? -1);
  const moved = new Map<PointId, readonly [number, number]>();
  for (const [id, point] of ground.indexOf) {
    if (steps.has(stepOf[point] ?? -1)) moved.set(id, [is[2 * point] ?? 0, is[2 * point + 1] ?? 0]);
  }
  for (const { id, slidesAbout } of last.movement.posts) {
    const centre = slidesAbout === undefined ? undefined : ground.indexOf.get(slidesAbout);
    if (!moved.has(id) || slidesAbout === undefined || centre === undefined || ground.heldBy.has(centre)) continue;
    const { coords } = last.index.result;
    moved.set(slidesAbout, [coords[2 * centre] ?? 0, coords[2 * centre + 1] ?? 0]);
  }
  return moved.size === 0 ? undefined : { kind: 'move', places: [...moved].map(([id, at]) => ({ id, at })) };
}
