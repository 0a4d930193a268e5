/** One try of the search: sketch places and recorded sides, and the planting that they give. */

import type { PointId } from '../../movement/ids.ts';
import type { Edit } from '../../movement/index.ts';
import type { Movement } from '../../movement/schema.ts';
import { plantMovement } from '../../planting/index.ts';
import type { PlacedMovement } from '../../planting/placed.ts';
import { HOLDS } from '../../tolerances.ts';
import type { Room, RoomMeasure } from './roomOf.ts';

/** A placing that was tried, and what it is worth. */
export interface PlantingTry {
  readonly placed: PlacedMovement;
  readonly room: Room;
  /** Rises with every shortfall made good, and then with the smallest surplus. */
  readonly score: number;
}

export type Sketch = ReadonlyMap<PointId, readonly [number, number]>;

/** Plants a movement with some points sketched elsewhere and some recorded crossings turned over. */
export function plantTry(
  movement: Movement,
  sketch: Sketch,
  turnedOver: ReadonlySet<PointId>,
  measure: RoomMeasure,
): PlantingTry {
  const placed = plantMovement(sketched(movement, sketch, turnedOver));
  const room = placed.disagreements.length > 0 ? NOWHERE : measure.of(placed);
  return { placed, room, score: room.surplus < 0 ? -room.shortfall : room.surplus };
}

/** The same placing measured afresh. */
export function measuredAgain({ placed }: PlantingTry, measure: RoomMeasure): PlantingTry {
  const room = placed.disagreements.length > 0 ? NOWHERE : measure.of(placed);
  return { placed, room, score: room.surplus < 0 ? -room.shortfall : room.surplus };
}

const NOWHERE: Room = { surplus: Number.NEGATIVE_INFINITY, shortfall: Number.POSITIVE_INFINITY };

const OTHER_SIDE = { left: 'right', right: 'left', ahead: 'behind', behind: 'ahead' } as const;

function sketched(movement: Movement, sketch: Sketch, turnedOver: ReadonlySet<PointId>): Movement {
  const put = <T extends { readonly id: PointId; readonly at: readonly [number, number] }>(point: T): T => {
    const at = sketch.get(point.id);
    const moved = at ? { ...point, at } : point;
    const { crossing } = point as { readonly crossing?: Movement['arbors'][number]['crossing'] };
    if (!crossing || !turnedOver.has(point.id)) return moved;
    return { ...moved, crossing: { ...crossing, side: OTHER_SIDE[crossing.side] } };
  };
  return {
    ...movement,
    arbors: movement.arbors.map(put),
    posts: movement.posts.map(put),
    marks: movement.marks.map(put),
  };
}

/** The places of a planting as sketch places, which plant to the same. */
export function sketchOf(placed: PlacedMovement): Sketch {
  return new Map([...placed.places].map(([id, { x, y }]) => [id, [x, y] as const]));
}

/** The one edit that turns a movement into the one that a try planted. */
export function editOf(movement: Movement, found: PlacedMovement): Edit {
  const points = [...movement.arbors, ...movement.posts, ...movement.marks];
  const places = points.flatMap(({ id, at }) => {
    const place = found.places.get(id);
    if (!place || Math.hypot(place.x - at[0], place.y - at[1]) <= HOLDS) return [];
    return [{ id, at: [place.x, place.y] as const }];
  });
  const others = new Map(
    [...found.movement.arbors, ...found.movement.posts, ...found.movement.marks].map((p) => [p.id, p]),
  );
  const sides = points.flatMap(({ id, crossing }): Edit[] => {
    const other = others.get(id)?.crossing;
    return crossing && other && crossing.side !== other.side
      ? [{ kind: 'setCrossing', point: id, crossing: other }]
      : [];
  });
  return { kind: 'several', edits: [...(places.length > 0 ? [{ kind: 'move' as const, places }] : []), ...sides] };
}
