/** Points evenly spaced about a centre. */
import { RuleKind } from '../../network.ts';
import { networkPoints, sourceOf } from './asking.ts';
import type { RuleKindInPlanting } from './kind.ts';
import { arcAbout, between, offValue, turnedAbout } from './measuring.ts';

const TURN = 2 * Math.PI;

/** Every point is the first one turned about the centre. */
export const evenSpacingInPlanting: RuleKindInPlanting<'evenSpacing'> = {
  ask: (to, rule) => {
    const [centre = -1, first = -1, ...others] = networkPoints(to, rule, [rule.centre, ...rule.points]) ?? [];
    const count = rule.points.length;
    const plusMinus = rule.plusMinus ?? 0;
    others.forEach((other, index) => {
      // Half a turn is told without a sine, so that it stays exact.
      if (2 * (index + 1) === count) {
        to.builder.rule(sourceOf(rule), RuleKind.opposite, [other, centre, first], [], plusMinus);
      } else {
        const turned = (TURN * (index + 1)) / count;
        to.builder.rule(sourceOf(rule), RuleKind.turned, [other, first, centre], [turned], plusMinus);
      }
    });
  },
  measure: ({ placeOf }, { points, centre }) => {
    const [first] = points;
    const from = first && placeOf(first);
    const misses = points.map(
      (id, index) =>
        between(placeOf(id), turnedAbout(from, placeOf(centre), (TURN * index) / points.length)) ?? Number.NaN,
    );
    return offValue(Math.max(...misses));
  },
  struck: (now, { centre }, point, length) => arcAbout(now, centre, point, length),
  sets: ({ points, centre }, set) => {
    for (const point of points) set.pair(point, centre);
  },
};
