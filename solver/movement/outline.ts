/** Outlines of plates, walls and openings: a circle, or a closed path of lines and arcs. */
import { z } from 'zod';
import { bounded, coordinate, length, place } from './quantities.ts';

const circle = z.looseObject({ kind: z.literal('circle'), centre: place, radius: length });

const vertex = z.looseObject({
  x: coordinate,
  y: coordinate,
  /** Tangent of a quarter of the included angle of the arc to the next vertex; + turns left; 0 is a straight line. */
  bulge: bounded(-1e6, 1e6).default(0),
});

const path = z.looseObject({
  kind: z.literal('path'),
  /** Vertices in order; the last joins the first. */
  vertices: z.array(vertex).min(2).max(10_000),
});

export const outline = z.discriminatedUnion('kind', [circle, path]);
