/** What shows that a place has settled on a rule: the locus, faint and whole, and what it says; and outlines that cannot be. */

import type { Locus, Point } from '../../../solver/geometry/index.ts';
import type { Guide } from '../../state/preview.ts';
import { toScreen, type View } from '../../state/view.ts';
import type { EngravedFigure } from '../engraver.ts';
import type { Lettered } from '../lettering.ts';
import type { Stroke } from '../strokes/stroke.ts';
import { THIN } from './lineWidths.ts';
import { strokesOfOutline } from './outlineStrokes.ts';

/** Length of a guide line to each side, mm; far beyond any bench at any zoom that can be read. */
const FAR = 20_000;
const MANNER = { pen: 'scribe', width: THIN, type: 'dashed' } as const;
/** A place on a point has a ring about it, CSS pixels. */
const RING_PX = 15;

/** The figures of all guides, by key. */
export function guideFigures(guides: readonly Guide[]): Map<string, EngravedFigure> {
  return new Map(
    guides.map((guide) => {
      const { anchor, strokes } = guide.kind === 'rule' ? ofLocus(guide.locus) : ofOutline(guide.outline);
      return [guide.key, { owner: `note:${guide.key}`, anchor, strokes }];
    }),
  );
}

/** Strokes about the place that they are drawn from, mm. */
interface Drawn {
  readonly anchor: Point;
  readonly strokes: readonly Stroke[];
}

function ofOutline(outline: Extract<Guide, { kind: 'wrongOutline' }>['outline']): Drawn {
  const anchor = { x: 0, y: 0 };
  return { anchor, strokes: strokesOfOutline(outline, anchor, MANNER) };
}

function ofLocus(locus: Locus): Drawn {
  if (locus.kind === 'circle') {
    return { anchor: locus.centre, strokes: [{ kind: 'arc', x: 0, y: 0, radius: locus.radius, ...MANNER }] };
  }
  if (locus.kind === 'point') {
    return { anchor: locus.at, strokes: [{ kind: 'arc', x: 0, y: 0, radius: 0, radiusPx: RING_PX, ...MANNER }] };
  }
  const [x, y] = [locus.along.x * FAR, locus.along.y * FAR];
  const [x0, y0] = locus.kind === 'ray' ? [0, 0] : [-x, -y];
  return { anchor: locus.through, strokes: [{ kind: 'line', x0, y0, x1: x, y1: y, ...MANNER }] };
}

/** What each kept rule says, under its place. */
export function guideLabels(guides: readonly Guide[], view: View): Lettered[] {
  const rules = guides.filter((guide) => guide.kind === 'rule');
  return rules.map(({ says, key, at }, index) => {
    const { x, y } = toScreen(view, at);
    return {
      key,
      text: says,
      rank: 200 - index,
      must: true,
      pen: 'scribe' as const,
      bold: index === 0,
      sizePx: 14,
      places: [
        { at: { x, y: y + 34 + 20 * index }, turn: 0 },
        { at: { x, y: y - 34 - 20 * index }, turn: 0 },
      ],
    };
  });
}
