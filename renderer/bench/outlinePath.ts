/** A closed outline as SVG path data in its own millimetres, y up (the caller's matrix turns it over). */
import type { Outline } from '../../solver/movement/schema.ts';

/** The `d` of a path element; empty for an outline without corners. */
export function outlinePath(outline: Outline): string {
  if (outline.kind === 'circle') {
    const [x, y] = outline.centre;
    const r = outline.radius;
    return `M${x - r} ${y} A${r} ${r} 0 0 1 ${x + r} ${y} A${r} ${r} 0 0 1 ${x - r} ${y} Z`;
  }
  const { vertices } = outline;
  const first = vertices[0];
  if (!first) return '';
  const pieces = vertices.map((vertex, index) => {
    const next = vertices[(index + 1) % vertices.length] ?? first;
    if (vertex.bulge === 0) return `L${next.x} ${next.y}`;
    const chord = Math.hypot(next.x - vertex.x, next.y - vertex.y);
    const radius = (chord * (1 + vertex.bulge ** 2)) / (4 * Math.abs(vertex.bulge));
    // With y up, a left turn runs with increasing angle: sweep 1.
    const [large, sweep] = [Math.abs(vertex.bulge) > 1 ? 1 : 0, vertex.bulge > 0 ? 1 : 0];
    return `A${radius} ${radius} 0 ${large} ${sweep} ${next.x} ${next.y}`;
  });
  return `M${first.x} ${first.y} ${pieces.join(' ')} Z`;
}
