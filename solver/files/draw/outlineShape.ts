/** Outlines of the movement as drawn shapes. */
import type { Outline } from '../../movement/schema.ts';
import type { DrawnShape } from '../drawing.ts';

/** A circle, or a closed path with the same bulges. */
export function shapeOfOutline(outline: Outline): DrawnShape {
  if (outline.kind === 'circle') return { kind: 'circle', centre: outline.centre, radius: outline.radius };
  return { kind: 'path', closed: true, vertices: outline.vertices.map(({ x, y, bulge }) => ({ x, y, bulge })) };
}
