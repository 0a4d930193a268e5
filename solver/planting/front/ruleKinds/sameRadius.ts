/** Points at one radius about a centre. */
import { RuleKind } from '../../network.ts';
import { networkPoints, sourceOf } from './asking.ts';
import type { RuleKindInPlanting } from './kind.ts';
import { arcAbout, between, offValue } from './measuring.ts';

/** Every point is compared with the first one. */
export const sameRadiusInPlanting: RuleKindInPlanting<'sameRadius'> = {
  ask: (to, rule) => {
    const indices = networkPoints(to, rule, [rule.centre, ...rule.points]);
    const [centre = -1, first = -1, ...others] = indices ?? [];
    for (const other of others) {
      to.builder.rule(sourceOf(rule), RuleKind.sameRadius, [other, first, centre], [], rule.plusMinus ?? 0);
    }
  },
  measure: ({ placeOf }, { points, centre }) => {
    const radii = points.map((id) => between(placeOf(centre), placeOf(id)) ?? Number.NaN);
    return offValue(Math.max(...radii) - Math.min(...radii));
  },
  struck: (now, { centre }, point, length) => arcAbout(now, centre, point, length),
  sets: ({ points, centre }, set) => {
    for (const point of points) set.pair(point, centre);
  },
};
