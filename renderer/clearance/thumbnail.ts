/** A placed movement as a small picture: rims of wheels, posts, and the outlines of the case, in mm with y down. */
import { type Solid, solidsOf } from '../../solver/clearance/index.ts';
import { type Bounds, boundsOfOutline } from '../../solver/geometry/index.ts';
import type { PlacedMovement } from '../../solver/planting/placed.ts';
import { outlinePath } from '../bench/outlinePath.ts';

/** Shapes of an SVG in mm, y down. */
export interface Thumbnail {
  readonly viewBox: string;
  readonly circles: readonly {
    readonly key: string;
    readonly role: Solid['role'];
    readonly x: number;
    readonly y: number;
    readonly radius: number;
  }[];
  /** Walls and plates, y up as in the movement: the picture turns them over. */
  readonly outlines: readonly { readonly key: string; readonly role: 'wall' | 'plate'; readonly d: string }[];
}

/** Room around what is drawn, mm. */
const MARGIN = 2;

/** The picture of a placing from its solids. */
export function thumbnailOf(placed: PlacedMovement): Thumbnail {
  const circles = solidsOf(placed).flatMap((solid): Thumbnail['circles'][number][] => {
    if (solid.shape !== 'ring' || (solid.role !== 'wheel' && solid.role !== 'post')) return [];
    const { x, y } = solid.centre;
    return [{ key: `${solid.part} ${solid.index}`, role: solid.role, x, y: -y, radius: solid.outer }];
  });
  const { plates, walls } = placed.movement;
  const outlines = [
    ...plates.map(({ id, outline }) => ({ key: id, role: 'plate' as const, d: outlinePath(outline) })),
    ...walls.map(({ id, outline, inner }) => ({
      key: id,
      role: 'wall' as const,
      d: [outline, ...(inner ? [inner] : [])].map(outlinePath).join(' '),
    })),
  ];
  const reaches = [
    ...circles.map(({ x, y, radius: r }): Bounds => [x - r, y - r, x + r, y + r]),
    ...[...plates, ...walls].map(({ outline }): Bounds => {
      const [left, bottom, right, top] = boundsOfOutline(outline);
      return [left, -top, right, -bottom];
    }),
  ];
  return { viewBox: viewBoxOf(reaches), circles, outlines };
}

function viewBoxOf(reaches: readonly Bounds[]): string {
  if (reaches.length === 0) return '0 0 1 1';
  const left = Math.min(...reaches.map((reach) => reach[0])) - MARGIN;
  const top = Math.min(...reaches.map((reach) => reach[1])) - MARGIN;
  const width = Math.max(...reaches.map((reach) => reach[2])) + MARGIN - left;
  const height = Math.max(...reaches.map((reach) => reach[3])) + MARGIN - top;
  return `${left} ${top} ${width} ${height}`;
}
