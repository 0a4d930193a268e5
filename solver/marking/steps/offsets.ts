/** Lines at distances from the datum of a plate, through a place. */
import type { Point } from '../../geometry/index.ts';
import { type EdgeLine, insideEdge, type Metal, type MetalLocus } from './metal.ts';

/** Two lines at distances from the datum's edges, or from the base line and its square; none with a datum of two points. */
export function offsetLoci(metal: Metal, at: Point): readonly [MetalLocus, MetalLocus] | undefined {
  const { datum } = metal;
  if (datum.kind === 'edges') {
    return [edgeOffset(datum.upright, at), edgeOffset(datum.level, at)];
  }
  return datum.kind === 'centre' ? datumOffsets(metal, at) : undefined;
}

/** The line parallel to an edge through a point. */
export function edgeOffset(edge: EdgeLine, at: Point): MetalLocus {
  return {
    kind: 'line',
    through: at,
    along: edge.axis === 'x' ? { x: 0, y: 1 } : { x: 1, y: 0 },
    told: { kind: 'offset', from: edge.name, distance: insideEdge(edge, at) },
  };
}

/** Two lines parallel and square to the base line through a point, told from the datum point. */
export function datumOffsets(metal: Metal, at: Point): readonly [MetalLocus, MetalLocus] {
  const origin =
    metal.datum.kind === 'edges' ? { x: metal.datum.upright.at, y: metal.datum.level.at } : metal.datum.origin;
  const ux = { x: Math.cos(metal.base), y: Math.sin(metal.base) };
  const uy = { x: -ux.y, y: ux.x };
  const dx = at.x - origin.x;
  const dy = at.y - origin.y;
  const line = (way: Point, along: 'x' | 'y', distance: number): MetalLocus => ({
    kind: 'line',
    through: at,
    along: way,
    told: { kind: 'offset', from: 'datum', along, distance },
  });
  return [line(uy, 'x', dx * ux.x + dy * ux.y), line(ux, 'y', dx * uy.x + dy * uy.y)];
}
