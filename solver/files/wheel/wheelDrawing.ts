/** The outline of a wheel as a drawing for the writers: edge, openings, holes, and circles to scribe only. */
import type { WheelLoop, WheelOutline } from '../../teeth/outlines/index.ts';
import { extentsOf } from '../draw/extents.ts';
import type { Drawing, DrawnShape, Layer, LayerName } from '../drawing.ts';

const LAYERS: Readonly<Record<WheelLoop['role'], LayerName>> = {
  teeth: 'OUTLINE',
  body: 'OUTLINE',
  opening: 'OPENINGS',
  bore: 'HOLES',
  pin: 'HOLES',
};

const shapeOf = (shape: WheelLoop['shape']): DrawnShape =>
  shape.kind === 'circle' ? shape : { kind: 'path', vertices: shape.vertices, closed: true };

/** The drawing of a wheel lying with its centre at the origin, seen from above. */
export function wheelDrawing(name: string, outline: WheelOutline): Drawing {
  const layers = (['OUTLINE', 'HOLES', 'OPENINGS'] as const).map(
    (layer): Layer => ({
      name: layer,
      shapes: outline.loops.filter(({ role }) => LAYERS[role] === layer).map(({ shape }) => shapeOf(shape)),
    }),
  );
  const all = [...layers, { name: 'SCRIBE' as const, shapes: outline.witness.map(shapeOf) }].filter(
    ({ shapes }) => shapes.length > 0,
  );
  return { title: name, face: 'Seen from above', mirrored: false, layers: all, extents: extentsOf(all) };
}
