/** One walk over a drawing for every sink: layers in order, each shape to the sink's own words, lettering as strokes. */

import { strokesOfText } from '../draw/lettering.ts';
import type { Drawing, DrawnShape, LayerName, ShapeOf } from '../drawing.ts';

/** What a writer does with each kind of shape as the walk comes to it. */
export interface DrawingSink {
  /** Called before the shapes of each layer that holds any. */
  layer(name: LayerName): void;
  line(line: ShapeOf<'line'>): void;
  arc(arc: ShapeOf<'arc'>): void;
  circle(circle: ShapeOf<'circle'>): void;
  path(path: ShapeOf<'path'>): void;
  /** A sink that has letters of its own takes the text; one without gets the single strokes as paths. */
  text?(text: ShapeOf<'text'>): void;
  /** Called after the last shape of a layer. */
  endLayer?(): void;
}

/** Walks the drawing; empty layers are left out. */
export function walkDrawing(drawing: Drawing, sink: DrawingSink): void {
  for (const { name, shapes } of drawing.layers) {
    if (shapes.length === 0) continue;
    sink.layer(name);
    for (const shape of shapes) walkShape(shape, sink);
    sink.endLayer?.();
  }
}

function walkShape(shape: DrawnShape, sink: DrawingSink): void {
  if (shape.kind === 'line') sink.line(shape);
  else if (shape.kind === 'arc') sink.arc(shape);
  else if (shape.kind === 'circle') sink.circle(shape);
  else if (shape.kind === 'path') sink.path(shape);
  else if (sink.text) sink.text(shape);
  else for (const stroke of strokesOfText(shape)) sink.path(stroke);
}
