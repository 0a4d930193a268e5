/**
 * The loci that place a chosen point, as short arcs and lines crossing at it, with the radii that strike them.
 */

import type { Point } from '../../../solver/geometry/index.ts';
import type { PointId, RuleId } from '../../../solver/movement/ids.ts';
import type { Movement, Rule } from '../../../solver/movement/schema.ts';
import type { Place, PlacedMovement } from '../../../solver/planting/placed.ts';
import { HOLDS } from '../../../solver/tolerances.ts';
import { forSame } from '../../state/derive/forSame.ts';
import type { Figure } from '../engraver.ts';
import type { Stroke } from '../strokes/stroke.ts';
import { STRONG, THIN } from './lineWidths.ts';

/** One locus: struck from `from`, with a length where it is an arc. */
export interface ScribedLocus {
  readonly rule: RuleId;
  readonly kind: 'arc' | 'line';
  readonly from: Place;
  readonly radius?: number;
  /** Direction of a line, unit vector. */
  readonly along?: Point;
}

/** Half the angle of a scribed arc: it should be about as long as its radius is thick on the mock-up, a sixth of a turn at most. */
const HALF_SWEEP = 0.27;

/** The loci that place a point, in the order of its rules. Rules that fix it outright (held, opposite) have none. */
export function lociOf(placed: PlacedMovement, id: PointId): ScribedLocus[] {
  return placingRules(placed, id).flatMap(({ rule, length }) => locusOfRule(placed, rule, id, length) ?? []);
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

/**
 * The locus on which one rule keeps the point `id`; none for rules that fix it outright.
 *
 * @param length the length that the rule asks for, mm; as it stands where the rule has none
 */
export function locusOfRule(
  placed: PlacedMovement,
  rule: Rule,
  id: PointId,
  length: number | undefined,
): ScribedLocus | undefined {
  const place = placed.places.get(id);
  const otherId = struckFrom(placed.movement, rule, id);
  const from = otherId && placed.places.get(otherId);
  if (!place || !from) return undefined;
  const away = Math.hypot(place.x - from.x, place.y - from.y);
  if (away < HOLDS) return undefined;
  if (rule.kind === 'bearing' || rule.kind === 'inLine') {
    return { rule: rule.id, kind: 'line', from, along: { x: (place.x - from.x) / away, y: (place.y - from.y) / away } };
  }
  return { rule: rule.id, kind: 'arc', from, radius: length ?? away };
}

/** The point from which a rule strikes its locus for `id`. */
export function struckFrom(movement: Movement, rule: Rule, id: PointId): PointId | undefined {
  const other = (pair: readonly PointId[]): PointId | undefined => pair.find((each) => each !== id);
  switch (rule.kind) {
    case 'depth':
      return other(rule.wheels.flatMap((wheel) => movement.wheels.find((each) => each.id === wheel)?.arbor ?? []));
    case 'distance':
      return other(rule.points);
    case 'radius':
    case 'bearing':
      return rule.point === id ? rule.centre : rule.point;
    case 'inLine':
      return rule.point === id ? rule.through[0] : rule.point;
    case 'sameRadius':
    case 'evenSpacing':
      return rule.centre;
    case 'clearBy':
      return other(
        rule.parts.flatMap(
          (part) => movement.wheels.find((wheel) => wheel.id === part)?.arbor ?? (part as string as PointId),
        ), // a part without wheels is a point or a wall; a wall is looked up in vain
      );
    case 'held':
    case 'opposite':
    case 'samePlace':
      return undefined;
  }
}

/** The figure of a chosen point's loci. */
export function scribedFigure(owner: string, place: Place, loci: readonly ScribedLocus[]): Figure {
  const strokes = loci.flatMap((locus): Stroke[] => {
    const x = locus.from.x - place.x;
    const y = locus.from.y - place.y;
    const radial: Stroke = { kind: 'line', x0: x, y0: y, x1: 0, y1: 0, pen: 'scribe', width: THIN };
    if (locus.kind === 'line' && locus.along) {
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
          width: STRONG,
        },
      ];
    }
    const start = Math.atan2(-y, -x) - HALF_SWEEP;
    const radius = locus.radius ?? Math.hypot(x, y);
    return [radial, { kind: 'arc', x, y, radius, start, sweep: 2 * HALF_SWEEP, pen: 'scribe', width: STRONG }];
  });
  return { owner, anchor: { x: place.x, y: place.y }, strokes };
}
