/** What surrounds the points on a context sheet: pitch and tip circles of wheels, walls and posts. */
import { sizeOfWheel } from '../../gearing/index.ts';
import type { PlacedMovement } from '../../planting/placed.ts';
import type { DrawnShape } from '../drawing.ts';
import { type PlateView, seenOutline } from '../plateView.ts';
import { shapeOfOutline } from './outlineShape.ts';

/** Pitch and tip circles of every wheel, as seen. */
export function wheelCircles(placed: PlacedMovement, view: PlateView): { pitch: DrawnShape[]; tips: DrawnShape[] } {
  const pitch: DrawnShape[] = [];
  const tips: DrawnShape[] = [];
  for (const wheel of placed.movement.wheels) {
    const place = placed.places.get(wheel.arbor);
    if (!place) continue;
    const { x, y } = view.see(place);
    const size = sizeOfWheel(wheel, placed.movement);
    pitch.push({ kind: 'circle', centre: [x, y], radius: size.pitchRadius });
    tips.push({ kind: 'circle', centre: [x, y], radius: size.tipRadius });
  }
  return { pitch, tips };
}

/** Walls and posts, as seen. */
export function caseShapes(placed: PlacedMovement, view: PlateView): readonly DrawnShape[] {
  const walls = placed.movement.walls.flatMap((wall) =>
    [wall.outline, wall.inner].flatMap((outline) => (outline ? [shapeOfOutline(seenOutline(view, outline))] : [])),
  );
  const posts = placed.movement.posts.flatMap((post): DrawnShape[] => {
    const place = placed.places.get(post.id);
    if (!place) return [];
    const { x, y } = view.see(place);
    return [{ kind: 'circle', centre: [x, y], radius: post.diameter / 2 }];
  });
  return [...walls, ...posts];
}
