/** What shows that a place has settled on a rule: the locus, faint and whole, and what it says. */
import type { Figure } from '../bench/engraver.ts';
import { THIN } from '../bench/figures/lineWidths.ts';
import type { Lettered } from '../bench/lettering.ts';
import type { Stroke } from '../bench/strokes/stroke.ts';
import { type Point, toScreen, type View } from '../bench/view.ts';
import type { Snap } from './snap.ts';

/** Length of a guide line to each side, mm; far beyond any bench at any zoom that can be read. */
const FAR = 20_000;

export function snapFigures(snap: Snap): Map<string, Figure> {
  const figures = new Map<string, Figure>();
  snap.candidates.forEach(({ locus, key }) => {
    const strokes: Stroke[] = [];
    const manner = { pen: 'scribe', width: THIN, type: 'dashed' } as const;
    let anchor = snap.at;
    if (locus.kind === 'circle') {
      anchor = locus.centre;
      strokes.push({ kind: 'arc', x: 0, y: 0, radius: locus.radius, ...manner });
    } else if (locus.kind === 'line') {
      const { along } = locus;
      anchor = locus.through;
      strokes.push({
        kind: 'line',
        x0: -along.x * FAR,
        y0: -along.y * FAR,
        x1: along.x * FAR,
        y1: along.y * FAR,
        ...manner,
      });
    } else strokes.push({ kind: 'arc', x: 0, y: 0, radius: 0, radiusPx: 15, ...manner });
    figures.set(`snap ${key}`, { owner: `note:snap ${key}`, anchor, strokes });
  });
  return figures;
}

/** What each kept rule says, under the place. */
export function snapLabels(snap: Snap, at: Point): (view: View) => Lettered[] {
  return (view) => {
    const { x, y } = toScreen(view, at);
    return snap.candidates.map(({ says, key }, index) => ({
      key: `snap ${key}`,
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
    }));
  };
}
