/**
 * The loci that place a chosen point, as short arcs and lines crossing at it, with the radii that strike them.
 */

import type { Curve, Point } from '../../../solver/geometry/index.ts';
import type { PointId, RuleId } from '../../../solver/movement/ids.ts';
import type { Rule } from '../../../solver/movement/schema.ts';
import { locusStruck } from '../../../solver/planting/index.ts';
import type { Place, PlacedMovement } from '../../../solver/planting/placed.ts';
import { forSame } from '../../state/derive/forSame.ts';
import type { EngravedFigure } from '../engraver.ts';
import type { Stroke } from '../strokes/stroke.ts';
import { STRONG_PX, THIN } from './lineWidths.ts';

/** One locus of a rule. */
export interface ScribedLocus {
  readonly rule: RuleId;
  readonly locus: Curve;
}

/** Half the angle of a scribed arc: it should be about as long as its radius is thick on the mock-up, a sixth of a turn at most. */
const HALF_SWEEP = 0.27;

/** The loci that place a point, in the order of its rules. Rules that fix it outright (held, opposite) have none. */
export function lociOf(placed: PlacedMovement, id: PointId): ScribedLocus[] {
  return placingRules(placed, id).flatMap(({ rule, length }) => scribedLocus(placed, rule, id, length) ?? []);
}

/** The rules that place a point, with their lengths; a drag changes neither, so they are found once for a movement. */
const placingRules = forSame(
  ({ movement, places }: PlacedMovement, id: PointId) => [movement, id, places.get(id)?.state],
  ({ movement, places, rules }, id) => {
    const placing = places.get(id)?.placedBy ?? [];
    return placing.flatMap((ruleId) => {
      const rule = movement.rules.find((each) => each.id === ruleId);
      return rule ? [{ rule, length: rules.get(ruleId)?.length }] : [];
    });
  },
);

/** The locus on which one rule keeps a point; none for rules that fix it outright. */
export function scribedLocus(
  placed: PlacedMovement,
  rule: Rule,
  id: PointId,
  length: number | undefined,
): ScribedLocus | undefined {
  const struck = locusStruck(placed, rule, id, length);
  return struck && { rule: rule.id, locus: struck.locus };
}

/** Where a locus is struck from: the centre of an arc, or a point of a line. */
export const struckFrom = (locus: Curve): Point => (locus.kind === 'circle' ? locus.centre : locus.through);

/** The figure of a chosen point's loci. */
export function scribedFigure(owner: string, place: Place, loci: readonly ScribedLocus[]): EngravedFigure {
  const strokes = loci.flatMap(({ locus }): Stroke[] => {
    const from = struckFrom(locus);
    const x = from.x - place.x;
    const y = from.y - place.y;
    const radial: Stroke = { kind: 'line', x0: x, y0: y, x1: 0, y1: 0, pen: 'scribe', width: THIN };
    if (locus.kind !== 'circle') {
      const { along } = locus;
      return [
        radial,
        {
          kind: 'line',
          x0: 0,
          y0: 0,
          x1: 0,
          y1: 0,
          px0: [-along.x * 46, -along.y * 46],
          px1: [along.x * 46, along.y * 46],
          pen: 'scribe',
          width: STRONG_PX,
        },
      ];
    }
    const start = Math.atan2(-y, -x) - HALF_SWEEP;
    const { radius } = locus;
    return [radial, { kind: 'arc', x, y, radius, start, sweep: 2 * HALF_SWEEP, pen: 'scribe', width: STRONG_PX }];
  });
  return { owner, anchor: { x: place.x, y: place.y }, strokes };
}
