/** Parts of the case in plan: walls cut and hatched, plates and openings as outlines. */

import type { Point } from '../../../solver/geometry/index.ts';
import { boundsOfOutline } from '../../../solver/geometry/index.ts';
import type { Opening, Plate, Wall } from '../../../solver/movement/schema.ts';
import type { ViewBounds } from '../../state/view.ts';
import type { EngravedFigure } from '../engraver.ts';
import type { Stroke } from '../strokes/stroke.ts';
import { THICK, THIN } from './lineWidths.ts';
import { ringOfOutline, strokesOfOutline } from './outlineStrokes.ts';

const middleOf = ([minX, minY, maxX, maxY]: ViewBounds): Point => ({ x: (minX + maxX) / 2, y: (minY + maxY) / 2 });

/** A wall is cut by the plane of the plan: thick outlines, hatched between them (ISO 128-50). */
export function wallFigure(wall: Wall): EngravedFigure {
  const bounds = boundsOfOutline(wall.outline);
  const anchor = middleOf(bounds);
  const rings = wall.inner ? [wall.outline, wall.inner] : [wall.outline];
  const strokes = rings.flatMap((ring) => strokesOfOutline(ring, anchor, { pen: 'ink', width: THICK }));
  const holes = wall.inner ? [ringOfOutline(wall.inner, anchor)] : [];
  return {
    owner: wall.id,
    anchor,
    strokes: [...strokes, ...centreLines(bounds, anchor)],
    regions: [{ pen: 'faint', outer: ringOfOutline(wall.outline, anchor), holes }],
  };
}

/** The rim of a plate, softly. */
export function plateFigure(plate: Plate): EngravedFigure {
  const anchor = middleOf(boundsOfOutline(plate.outline));
  return {
    owner: plate.id,
    anchor,
    strokes: strokesOfOutline(plate.outline, anchor, { pen: 'soft', width: THICK }),
  };
}

/** The rim of an opening, dashed, from a little context on. */
export function openingFigure(opening: Opening): EngravedFigure {
  const anchor = middleOf(boundsOfOutline(opening.outline));
  return {
    owner: opening.id,
    anchor,
    strokes: strokesOfOutline(opening.outline, anchor, { pen: 'soft', width: THIN, type: 'dashed', from: 0.2 }),
  };
}

/** Centre lines of a cut part, chain thin, standing 12 px out on every side. */
function centreLines([minX, minY, maxX, maxY]: ViewBounds, anchor: Point): Stroke[] {
  const manner = { pen: 'faint', width: THIN, type: 'chain', from: 0.15 } as const;
  return [
    {
      kind: 'line',
      x0: minX - anchor.x,
      y0: 0,
      x1: maxX - anchor.x,
      y1: 0,
      px0: [-14, 0],
      px1: [14, 0],
      ...manner,
    },
    { kind: 'line', x0: 0, y0: minY - anchor.y, x1: 0, y1: maxY - anchor.y, px0: [0, -14], px1: [0, 14], ...manner },
  ];
}
