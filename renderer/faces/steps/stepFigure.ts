/** The picture of one marking-out step: what is struck now, what is there already, and the plate. Millimetres, y up, as seen on the face. */

import { boundsOfOutline } from '../../../solver/geometry/index.ts';
import type { Outline } from '../../../solver/movement/index.ts';
import type { PlacedMovement, Point } from '../../../solver/planting/index.ts';
import type { MarkingLocus, MarkingStep, PlateView } from '../../../solver/workshop/index.ts';

/** One mark already there, or the one to be struck. */
export interface StepMark extends Point {
  readonly id: string;
  readonly label: string;
}

export type StruckLine =
  | {
      readonly kind: 'arc';
      readonly centre: Point;
      readonly radius: number;
      readonly start: Point;
      readonly end: Point;
    }
  | { readonly kind: 'line'; readonly from: Point; readonly to: Point };

export interface StepFigure {
  readonly outlines: readonly Outline[];
  readonly there: readonly StepMark[];
  readonly target: StepMark;
  readonly struck: readonly StruckLine[];
  /** From where the dividers reach to the target, for the legs drawn faintly. */
  readonly legs: readonly { readonly from: Point; readonly says: number }[];
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
    struck: step.loci.flatMap((locus) => struckLine(locus, target, placeOf, bounds, reach)),
    legs: step.loci.flatMap((locus) => {
      const from = locus.kind === 'arc' ? placeOf(locus.from) : undefined;
      return from && locus.kind === 'arc' ? [{ from, says: locus.radius }] : [];
    }),
    bounds,
  };
}

function markOf({ point, label, place: [x, y] }: MarkingStep): StepMark {
  return { id: point, label, x, y };
}

function struckLine(
  locus: MarkingLocus,
  target: Point,
  placeOf: (id: string) => Point | undefined,
  bounds: StepFigure['bounds'],
  reach: number,
): StruckLine[] {
  if (locus.kind === 'arc') {
    const centre = placeOf(locus.from);
    return centre ? [arcAbout(centre, locus.radius, target)] : [];
  }
  if (locus.kind === 'offset') {
    const alongY =
      locus.from === 'left edge' || locus.from === 'right edge' || (locus.from === 'datum' && locus.along === 'x');
    return alongY
      ? [{ kind: 'line', from: { x: target.x, y: bounds[1] }, to: { x: target.x, y: bounds[3] } }]
      : [{ kind: 'line', from: { x: bounds[0], y: target.y }, to: { x: bounds[2], y: target.y } }];
  }
  const from = placeOf(locus.kind === 'line' ? locus.through : locus.from);
  if (!from) return [];
  const towards = locus.kind === 'line' ? (placeOf(locus.to) ?? target) : target;
  const length = Math.hypot(towards.x - from.x, towards.y - from.y);
  if (length === 0) return [];
  const on = Math.min(reach, 1.15 * Math.max(length, Math.hypot(target.x - from.x, target.y - from.y)));
  const to = { x: from.x + ((towards.x - from.x) * on) / length, y: from.y + ((towards.y - from.y) * on) / length };
  return [{ kind: 'line', from, to }];
}

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
