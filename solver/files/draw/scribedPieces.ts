/** The short pieces of arcs and lines that cross at a step's place: what the maker sees on the metal. */

import type { Point } from '../../geometry/index.ts';
import type { MarkingLocus, MarkingStep } from '../../marking/index.ts';
import type { DrawnShape } from '../drawing.ts';

/**
 * Pieces reaching `reach` mm to each side of the step's place; distances from edges are not scribed.
 *
 * @param there all steps of the face: a locus starts from a point that one of them made, the plate's centre included
 */
export function scribedPieces(step: MarkingStep, there: readonly MarkingStep[], reach: number): readonly DrawnShape[] {
  if (step.kind === 'datum' || step.kind === 'already') return [];
  const at: Point = { x: step.place[0], y: step.place[1] };
  const placeOf = (id: string): Point | undefined => {
    const place = there.find((each) => each.point === id)?.place;
    return place && { x: place[0], y: place[1] };
  };
  return step.loci.flatMap((locus) => pieceOf(locus, at, placeOf, reach) ?? []);
}

function pieceOf(
  locus: MarkingLocus,
  at: Point,
  placeOf: (id: string) => Point | undefined,
  reach: number,
): DrawnShape | undefined {
  if (locus.kind === 'offset') return undefined;
  const from = placeOf(locus.kind === 'line' ? locus.through : locus.from);
  if (!from) return undefined;
  if (locus.kind === 'arc') {
    const angle = Math.atan2(at.y - from.y, at.x - from.x);
    const half = Math.min(Math.PI / 2, reach / locus.radius);
    return { kind: 'arc', centre: [from.x, from.y], radius: locus.radius, start: angle - half, end: angle + half };
  }
  const length = Math.hypot(at.x - from.x, at.y - from.y);
  const ux = ((at.x - from.x) / length) * reach;
  const uy = ((at.y - from.y) / length) * reach;
  return length === 0 ? undefined : { kind: 'line', from: [at.x - ux, at.y - uy], to: [at.x + ux, at.y + uy] };
}
