/** A placed movement as a small picture: rims of wheels, posts and the case, in mm with y down. */
import { type Solid, solidsOf } from '../../solver/clearance/index.ts';
import type { PlacedMovement } from '../../solver/planting/index.ts';

export interface Thumbnail {
  readonly viewBox: string;
  readonly circles: readonly {
    readonly key: string;
    readonly role: Solid['role'];
    readonly x: number;
    readonly y: number;
    readonly radius: number;
  }[];
}

/** Room around the outermost circle, mm. */
const MARGIN = 2;

export function thumbnailOf(placed: PlacedMovement): Thumbnail {
  const circles = solidsOf(placed).flatMap((solid): Thumbnail['circles'][number][] => {
    const key = `${solid.part} ${solid.index}`;
    const { role } = solid;
    if (solid.shape === 'ring') {
      return role === 'wheel' || role === 'post'
        ? [{ key, role, x: solid.centre[0], y: -solid.centre[1], radius: solid.outer }]
        : [];
    }
    const { outer } = solid.region;
    if (outer.kind !== 'circle' || role !== 'wall') return [];
    return [{ key, role, x: outer.centre[0], y: -outer.centre[1], radius: outer.radius }];
  });
  const edge = (at: (circle: Thumbnail['circles'][number]) => number, pick: typeof Math.min): number =>
    circles.length === 0 ? 0 : pick(...circles.map(at));
  const left = edge(({ x, radius }) => x - radius, Math.min) - MARGIN;
  const top = edge(({ y, radius }) => y - radius, Math.min) - MARGIN;
  const width = edge(({ x, radius }) => x + radius, Math.max) + MARGIN - left;
  const height = edge(({ y, radius }) => y + radius, Math.max) + MARGIN - top;
  return { viewBox: `${left} ${top} ${width} ${height}`, circles };
}
