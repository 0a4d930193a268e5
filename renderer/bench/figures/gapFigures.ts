/** Disagreements: the loci that miss each other, and the gap between them drawn as a dimension. */

import type { Point } from '../../../solver/geometry/index.ts';
import { nearestOnLocus } from '../../../solver/geometry/index.ts';
import type { Disagreement } from '../../../solver/planting/index.ts';
import type { Place, PlacedMovement } from '../../../solver/planting/placed.ts';
import { toScreen, type View } from '../../state/view.ts';
import type { EngravedFigure } from '../engraver.ts';
import { readable } from '../labelPlacement.ts';
import type { Lettered } from '../lettering.ts';
import type { Stroke } from '../strokes/stroke.ts';
import { MIDDLE } from './lineWidths.ts';
import { type ScribedLocus, scribedFigure, scribedLocus } from './scribedArcs.ts';

/** Where a disagreement is seen: at one of its points, between the two loci that are furthest apart. */
interface Gap {
  readonly key: string;
  readonly place: Place;
  readonly loci: readonly ScribedLocus[];
  readonly from: Point;
  readonly to: Point;
  readonly gap: number;
}

function gapOf(placed: PlacedMovement, disagreement: Disagreement): Gap | undefined {
  const rules = placed.movement.rules.filter(({ id }) => disagreement.rules.includes(id));
  let best: Gap | undefined;
  let widest = -1;
  for (const id of disagreement.points) {
    const place = placed.places.get(id);
    if (place?.state !== 'contested') continue;
    const loci = rules.flatMap((rule) => scribedLocus(placed, rule, id, placed.rules.get(rule.id)?.length) ?? []);
    const feet = loci.map(({ locus }) => nearestOnLocus(locus, place));
    // A rule that holds the place outright pulls at the place itself.
    const ends = feet.length > 1 ? feet : [...feet, place];
    const [from, to, apart] = furthest(ends);
    if (from && to && apart > widest) {
      widest = apart;
      best = { key: disagreement.rules.join(' '), place, loci, from, to, gap: disagreement.gap };
    }
  }
  return best;
}

function furthest(points: readonly Point[]): readonly [Point | undefined, Point | undefined, number] {
  let found: readonly [Point | undefined, Point | undefined, number] = [undefined, undefined, -1];
  points.forEach((a, index) => {
    for (const b of points.slice(index + 1)) {
      const apart = Math.hypot(a.x - b.x, a.y - b.y);
      if (apart > found[2]) found = [a, b, apart];
    }
  });
  return found;
}

const gapsOf = (placed: PlacedMovement): Gap[] =>
  placed.disagreements.flatMap((disagreement) => gapOf(placed, disagreement) ?? []);

/** Figures of all disagreements, by key. */
export function gapFigures(placed: PlacedMovement): Map<string, EngravedFigure> {
  const figures = new Map<string, EngravedFigure>();
  for (const gap of gapsOf(placed)) {
    const key = `gap ${gap.key}`;
    const owner = `note:${key}`;
    const { strokes, ...rest } = scribedFigure(owner, gap.place, gap.loci);
    figures.set(key, { ...rest, strokes: [...strokes, ...dimension(gap)] });
  }
  return figures;
}

/** The unit vector along a gap; upright where it has no length on paper. */
function directionOf({ from, to }: Gap): Point {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  return length > 0 ? { x: (to.x - from.x) / length, y: (to.y - from.y) / length } : { x: 0, y: 1 };
}

/** Arrows from outside onto both ends, as narrow gaps are dimensioned. */
function dimension(gap: Gap): Stroke[] {
  const { place, from, to } = gap;
  const along = directionOf(gap);
  const strokes: Stroke[] = [];
  for (const [end, sign] of [
    [from, -1],
    [to, 1],
  ] as const) {
    const x = end.x - place.x;
    const y = end.y - place.y;
    const px = (ahead: number, aside: number) =>
      [sign * along.x * ahead - along.y * aside, sign * along.y * ahead + along.x * aside] as const;
    const line = (a: readonly [number, number], b: readonly [number, number]): Stroke => ({
      kind: 'line',
      x0: x,
      y0: y,
      x1: x,
      y1: y,
      px0: a,
      px1: b,
      pen: 'scribe',
      width: MIDDLE,
    });
    strokes.push(line([0, 0], px(26, 0)), line([0, 0], px(7, 3)), line([0, 0], px(7, -3)));
  }
  strokes.push({
    kind: 'line',
    x0: from.x - place.x,
    y0: from.y - place.y,
    x1: to.x - place.x,
    y1: to.y - place.y,
    pen: 'scribe',
    width: MIDDLE,
  });
  return strokes;
}

/** "misses by 0.43" beside each gap. */
export function gapLabels(placed: PlacedMovement, view: View, lengthSays: (mm: number) => string): Lettered[] {
  return gapsOf(placed).map((gap) => {
    const along = directionOf(gap);
    const middle = toScreen(view, { x: (gap.from.x + gap.to.x) / 2, y: (gap.from.y + gap.to.y) / 2 });
    const turn = readable(Math.atan2(along.y, along.x));
    const beside = (ahead: number, off: number) => ({
      at: {
        x: middle.x + ahead * along.x - off * Math.sin(turn),
        y: middle.y - ahead * along.y - off * Math.cos(turn),
      },
      turn,
    });
    return {
      key: `gap ${gap.key}`,
      text: `misses by ${lengthSays(gap.gap)}`,
      rank: 120,
      must: true,
      pen: 'scribe' as const,
      bold: true,
      sizePx: 14,
      places: [beside(0, 24), beside(0, -24), beside(90, 0), beside(-90, 0), beside(0, 40), beside(0, -40)],
    };
  });
}
