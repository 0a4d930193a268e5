/** The picture of one marking-out step: what is struck now, what is there already, and the plate. Millimetres, y up, as seen on the face. */

import type { Point } from '../../solver/geometry/index.ts';
import { boundsOfOutline } from '../../solver/geometry/index.ts';
import type { MarkingLocus, MarkingStep, PlateView } from '../../solver/marking/index.ts';
import type { Outline } from '../../solver/movement/schema.ts';
import type { PlacedMovement } from '../../solver/planting/placed.ts';

/** One mark already there, or the one to be struck. */
export interface StepMark extends Point {
  readonly id: string;
  readonly label: string;
}

/** A line or an arc of the step, mm as seen on the face. */
export type StruckLine =
  | {
      readonly kind: 'arc';
      readonly centre: Point;
      readonly radius: number;
      readonly start: Point;
      readonly end: Point;
    }
  | { readonly kind: 'line'; readonly from: Point; readonly to: Point };

/** What the picture of a step draws, mm as seen on the face. */
export interface StepFigure {
  readonly outlines: readonly Outline[];
  readonly there: readonly StepMark[];
  readonly target: StepMark;
  readonly struck: readonly StruckLine[];
  /** From where the dividers, or a square, reach to the target: drawn faintly, with their length, mm. */
  readonly legs: readonly { readonly from: Point; readonly length: number; readonly isPricked: boolean }[];
  /** Ids of the points that the step is struck or checked from. */
  readonly sources: ReadonlySet<string>;
  readonly bounds: readonly [number, number, number, number];
}

/** Half of the arc that is shown on both sides of the target, as a share of a turn at its centre, and its least length, mm. */
const ARC_HALF_TURN = 0.035;
const ARC_LEAST = 4;

/** Picture of step `index`. */
export function stepFigure(
  placed: PlacedMovement,
  view: PlateView,
  steps: readonly MarkingStep[],
  index: number,
  outlines: readonly Outline[],
): StepFigure | undefined {
  const step = steps[index];
  if (!step) return undefined;
  const target = markOf(step);
  const there = steps
    .slice(0, index)
    .filter((each) => each.kind !== 'unsettled')
    .map(markOf);
  const placeOf = (id: string): Point | undefined => {
    const known = there.find((mark) => mark.id === id);
    if (known) return known;
    const place = [...placed.places.values()].find((each) => each.id === id);
    return place && view.see(place);
  };
  const bounds = boundsOf(outlines, [...there, target]);
  const reach = Math.hypot(bounds[2] - bounds[0], bounds[3] - bounds[1]);
  return {
    outlines,
    there,
    target,
    struck: (step.kind === 'same' ? [] : step.loci).flatMap((locus) => struckLine(locus, target, placeOf, reach)),
    legs: step.loci.flatMap((locus) => legOf(locus, target, placeOf)),
    sources: new Set([...step.loci.flatMap(sourcesOf), ...(step.check ? [step.check.from] : [])]),
    bounds,
  };
}

function markOf({ point, label, place: [x, y] }: MarkingStep): StepMark {
  return { id: point, label, x, y };
}

function sourcesOf(locus: MarkingLocus): readonly string[] {
  switch (locus.kind) {
    case 'arc':
      return [locus.from];
    case 'line':
      return [locus.through, locus.to];
    case 'ray':
      return locus.reference === undefined ? [locus.from] : [locus.from, locus.reference];
    case 'offset':
      return [];
  }
}

/** Does the line of an offset run up and down? */
const isUpright = (locus: Extract<MarkingLocus, { kind: 'offset' }>): boolean =>
  locus.from === 'datum' ? locus.along === 'x' : locus.from === 'left edge' || locus.from === 'right edge';

function legOf(
  locus: MarkingLocus,
  target: Point,
  placeOf: (id: string) => Point | undefined,
): StepFigure['legs'][number][] {
  if (locus.kind === 'arc') {
    const from = placeOf(locus.from);
    return from ? [{ from, length: locus.radius, isPricked: true }] : [];
  }
  if (locus.kind !== 'offset' || locus.distance === 0) return [];
  const inwards = locus.from === 'right edge' || locus.from === 'upper edge' ? -1 : 1;
  const back = -inwards * locus.distance;
  const from = isUpright(locus) ? { x: target.x + back, y: target.y } : { x: target.x, y: target.y + back };
  return [{ from, length: Math.abs(locus.distance), isPricked: false }];
}

/** Half of the piece of a line that is scribed at a distance from an edge, as a share of the plate. */
const SCRIBED_SHARE = 0.1;
/** A line through points is drawn on beyond them by this share of its length. */
const BEYOND = 0.08;

function struckLine(
  locus: MarkingLocus,
  target: Point,
  placeOf: (id: string) => Point | undefined,
  reach: number,
): StruckLine[] {
  if (locus.kind === 'arc') {
    const centre = placeOf(locus.from);
    return centre ? [arcAbout(centre, locus.radius, target)] : [];
  }
  if (locus.kind === 'offset') {
    const half = SCRIBED_SHARE * reach;
    const [dx, dy] = isUpright(locus) ? [0, half] : [half, 0];
    return [{ kind: 'line', from: { x: target.x - dx, y: target.y - dy }, to: { x: target.x + dx, y: target.y + dy } }];
  }
  const from = placeOf(locus.kind === 'line' ? locus.through : locus.from);
  const on = locus.kind === 'line' ? placeOf(locus.to) : undefined;
  return from ? lineOver([from, target, ...(on ? [on] : [])]) : [];
}

/** The line over points that lie on one, from the first farthest one to the last. */
function lineOver(points: readonly Point[]): StruckLine[] {
  const [from] = points;
  const far = points.reduce((a, b) => (from && apart(from, b) > apart(from, a) ? b : a));
  if (!from || apart(from, far) === 0) return [];
  const length = apart(from, far);
  const [ux, uy] = [(far.x - from.x) / length, (far.y - from.y) / length];
  const along = points.map(({ x, y }) => (x - from.x) * ux + (y - from.y) * uy);
  const [first, last] = [Math.min(...along), Math.max(...along)];
  const beyond = BEYOND * (last - first);
  const at = (t: number): Point => ({ x: from.x + t * ux, y: from.y + t * uy });
  return [{ kind: 'line', from: at(first - beyond), to: at(last + beyond) }];
}

const apart = (a: Point, b: Point): number => Math.hypot(a.x - b.x, a.y - b.y);

function arcAbout(centre: Point, radius: number, target: Point): StruckLine {
  const angle = Math.atan2(target.y - centre.y, target.x - centre.x);
  const half = Math.max(ARC_HALF_TURN * 2 * Math.PI, ARC_LEAST / Math.max(radius, 1e-6));
  const at = (a: number): Point => ({ x: centre.x + radius * Math.cos(a), y: centre.y + radius * Math.sin(a) });
  return { kind: 'arc', centre, radius, start: at(angle - half), end: at(angle + half) };
}

function boundsOf(outlines: readonly Outline[], marks: readonly Point[]): StepFigure['bounds'] {
  const boxes = outlines.map((outline) => boundsOfOutline(outline));
  const xs = [...boxes.flatMap((b) => [b[0], b[2]]), ...marks.map((mark) => mark.x)];
  const ys = [...boxes.flatMap((b) => [b[1], b[3]]), ...marks.map((mark) => mark.y)];
  return [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)];
}
