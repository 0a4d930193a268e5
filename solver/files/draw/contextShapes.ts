/** What surrounds the points on a context sheet: wheels with their true teeth, walls and posts. */

import type { Point } from '../../geometry/index.ts';
import { type PlateView, seenOutline } from '../../marking/index.ts';
import type { Movement, Outline, Wheel } from '../../movement/schema.ts';
import type { PlacedMovement } from '../../planting/placed.ts';
import { moduleOf, sizeOfWheel } from '../../teeth/index.ts';
import { wheelOutline } from '../../teeth/outlines/index.ts';
import { toothPhases } from '../../train/index.ts';
import type { DrawnShape } from '../drawing.ts';
import { shapeOfOutline } from './outlineShape.ts';

/** Teeth of a smaller module are a grey edge on paper, mm: their tip circle is drawn instead. */
const SMALLEST_MODULE = 0.25;
/** Movements with more teeth are drawn by their tip circles: the sheet would take longer to print than to read. */
const MOST_TEETH = 3000;
/** How far the drawn edge may miss the true one, mm: a third of the line's width. */
const TOLERANCE = 0.03;

/** The circles and outlines of wheels, by the layer that they go to. */
export interface WheelShapes {
  readonly pitch: readonly DrawnShape[];
  /** Of wheels whose teeth are not drawn. */
  readonly tips: readonly DrawnShape[];
  readonly teeth: readonly DrawnShape[];
}

/** Every wheel as seen: its pitch circle, and its teeth as they stand in mesh, or its tip circle where they are too fine. */
export function wheelShapes(placed: PlacedMovement, view: PlateView): WheelShapes {
  const { movement, places } = placed;
  const shapes = { pitch: [] as DrawnShape[], tips: [] as DrawnShape[], teeth: [] as DrawnShape[] };
  const isDrawn = movement.wheels.reduce((sum, { teeth }) => sum + teeth, 0) <= MOST_TEETH;
  const angles = isDrawn ? toothPhases(movement, places).angleDeg : undefined;
  for (const wheel of movement.wheels) {
    const place = places.get(wheel.arbor);
    if (!place) continue;
    const { x, y } = view.see(place);
    const size = sizeOfWheel(wheel, movement);
    shapes.pitch.push({ kind: 'circle', centre: [x, y], radius: size.pitchRadius });
    const phase = ((angles?.get(wheel.id) ?? 0) * Math.PI) / 180;
    const edges = angles && moduleOf(wheel.size) >= SMALLEST_MODULE ? toothEdges(wheel, movement, place, phase) : [];
    if (edges.length > 0) shapes.teeth.push(...edges.map((edge) => shapeOfOutline(seenOutline(view, edge))));
    else shapes.tips.push({ kind: 'circle', centre: [x, y], radius: size.tipRadius });
  }
  return shapes;
}

/** The edge of the teeth, or the trundles of a lantern, in the movement's coordinates; nothing for teeth that cannot be. */
function toothEdges(wheel: Wheel, movement: Movement, { x, y }: Point, phase: number): readonly Outline[] {
  const outline = wheelOutline(wheel, movement, { phase, tolerance: TOLERANCE });
  if (outline.kind === 'none') return [];
  const own = outline.loops.filter(({ role }) => role === 'teeth' || role === 'pin');
  return own.map(({ shape }): Outline => {
    if (shape.kind === 'circle') return { ...shape, centre: [shape.centre[0] + x, shape.centre[1] + y] };
    return { kind: 'path', vertices: shape.vertices.map((v) => ({ x: v.x + x, y: v.y + y, bulge: v.bulge })) };
  });
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
