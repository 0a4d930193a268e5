/** What does not turn: posts with their screw heads, walls with their ribs, plates with their openings. */
import type { Point } from '../../geometry/index.ts';
import type { Movement, Outline, Post } from '../../movement/schema.ts';
import { heightsOfPost } from '../bodies/heights.ts';
import type { Draft, Heights } from './solid.ts';

/** A post and the heads of the screws that hold it, at its place. */
export function postSolids(post: Post, centre: Point, movement: Movement): Draft[] {
  const disc = (heights: Heights, diameter: number, piece: 'whole' | 'head'): Draft => ({
    part: post.id,
    piece,
    role: 'post',
    heights,
    shape: 'ring',
    centre,
    inner: 0,
    outer: diameter / 2,
  });
  const heights = heightsOfPost(post, centre, movement);
  const heads = (post.heads ?? []).map(({ from, to, diameter }) => disc({ from, to }, diameter, 'head'));
  return [...(heights ? [disc(heights, post.diameter, 'whole')] : []), ...heads];
}

/** Walls and plates; a rib is a part of its wall's outline. */
export function caseSolids(movement: Movement): Draft[] {
  return [
    ...movement.walls.map(
      (wall): Draft => ({
        shape: 'region',
        part: wall.id,
        piece: 'whole',
        role: 'wall',
        heights: wall.levels,
        region: { outer: wall.outline, holes: wall.inner ? [wall.inner] : [] },
      }),
    ),
    ...movement.plates.map(
      (plate): Draft => ({
        shape: 'region',
        part: plate.id,
        piece: 'whole',
        role: 'plate',
        heights: plate.levels,
        region: { outer: plate.outline, holes: openingsIn(movement, plate.id) },
      }),
    ),
  ];
}

function openingsIn(movement: Movement, plateId: string): Outline[] {
  return movement.openings.filter((opening) => opening.plate === plateId).map((opening) => opening.outline);
}
