/**
 * Dragging one point: at every step the nearest place to the pointer that keeps all rules.
 *
 * Each step starts from the one before and takes the places that are there as the sketch, so that no crossing changes
 * over. Nothing is written to the movement until the drag is released.
 */
import type { PointId } from '../../movement/index.ts';
import { plantNetwork } from '../kernel/plant.ts';
import type { Network, NetworkResult } from '../network.ts';
import { PointState } from '../network.ts';
import type { PlacedMovement } from '../placed.ts';
import type { PlantingGround } from './ground.ts';
import { PlantedMovement } from './planted.ts';
import { plantMovement } from './plantMovement.ts';

/** What a released drag leaves: an edit of sketch places. */
export interface MovedSketch {
  readonly kind: 'move';
  readonly places: readonly { readonly id: PointId; readonly at: readonly [number, number] }[];
}

export interface DragSession {
  /** The planting with the point as near to (x, y) as its rules let it. */
  readonly to: (x: number, y: number) => PlacedMovement;
  /** The edit that makes the last step's places the sketch; undefined where nothing moved. */
  readonly release: () => MovedSketch | undefined;
}

/** Places that differ by less did not move, mm: the planting's proof. */
const SAME_PLACE = 1e-9;
/** Times that a step lets the other loose points follow before it takes the place as the nearest. */
const MOST_PULLS = 12;
/** A pull that brings the point nearer by less than this is the last, mm: a hundredth of what a line on the bench shows. */
const PULLED = 1e-4;

/**
 * Starts to drag a point of a planted movement.
 *
 * @param pointId a point that is planted stays where it is: `to` then gives the planting unchanged
 */
export function startDrag(placed: PlacedMovement, pointId: PointId): DragSession {
  const start = placed instanceof PlantedMovement ? placed : (plantMovement(placed.movement) as PlantedMovement); // it makes no other
  const { ground, result } = start.index;
  const point = ground.indexOf.get(pointId);
  let last = start;
  if (point === undefined || result.states[point] === PointState.planted || ground.network.held[point] === 1) {
    return { to: () => start, release: () => undefined };
  }
  return {
    to: (x, y) => {
      last = last.following(pull(ground, last.index.result, point, x, y));
      return last;
    },
    release: () => movedSketch(start, last),
  };
}

/** Plants with the point sketched at the pointer and all else where it stands, until it comes no nearer. */
function pull(ground: PlantingGround, from: NetworkResult, point: number, x: number, y: number): NetworkResult {
  let result = from;
  let distance = Number.POSITIVE_INFINITY;
  for (let pulls = 0; pulls < MOST_PULLS; pulls++) {
    const next = plantNetwork(sketchedAt(ground.network, result.coords, point, x, y));
    const left = Math.hypot((next.coords[2 * point] ?? 0) - x, (next.coords[2 * point + 1] ?? 0) - y);
    if (pulls > 0 && left > distance - PULLED) break;
    result = next;
    distance = left;
  }
  return result;
}

function sketchedAt(network: Network, places: Float64Array, point: number, x: number, y: number): Network {
  const coords = Float64Array.from(places);
  for (let k = 0; k < network.pointCount; k++) {
    // Points that share the dragged one's place are sketched with it.
    const isShared = places[2 * k] === places[2 * point] && places[2 * k + 1] === places[2 * point + 1];
    if (network.held[k] === 1) coords.set(network.coords.subarray(2 * k, 2 * k + 2), 2 * k);
    else if (isShared) coords.set([x, y], 2 * k);
  }
  return { ...network, coords };
}

/** Sketch places of everything that moved; a post that slides takes its centre's place along, so that its radius stays. */
function movedSketch(start: PlantedMovement, last: PlantedMovement): MovedSketch | undefined {
  const { ground } = last.index;
  const moved = new Map<PointId, readonly [number, number]>();
  for (const [id, point] of ground.indexOf) {
    const [was, is] = [start.index.result.coords, last.index.result.coords];
    const [x, y] = [is[2 * point] ?? 0, is[2 * point + 1] ?? 0];
    if (Math.hypot(x - (was[2 * point] ?? 0), y - (was[2 * point + 1] ?? 0)) > SAME_PLACE) moved.set(id, [x, y]);
  }
  for (const { id, slidesAbout } of last.movement.posts) {
    const centre = slidesAbout === undefined ? undefined : ground.indexOf.get(slidesAbout);
    if (!moved.has(id) || slidesAbout === undefined || centre === undefined || ground.heldBy.has(centre)) continue;
    const { coords } = last.index.result;
    moved.set(slidesAbout, [coords[2 * centre] ?? 0, coords[2 * centre + 1] ?? 0]);
  }
  return moved.size === 0 ? undefined : { kind: 'move', places: [...moved].map(([id, at]) => ({ id, at })) };
}
