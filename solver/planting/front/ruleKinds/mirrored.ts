/** A point and its image in the centre line. */
import { RuleKind } from '../../network.ts';
import { networkPoints, sourceOf } from './asking.ts';
import { acrossCentreLine, mirroredPlace } from './centreLine.ts';
import type { RuleKindInPlanting } from './kind.ts';
import { between, offValue } from './measuring.ts';

/**
 * A tie: the image follows from the other. Two lines that cross square, so it is struck without any rounding but that of
 * a sum; with both unknown the two are linear in them.
 */
export const mirroredInPlanting: RuleKindInPlanting<'mirrored'> = {
  turn: 'ties',
  ask: (to, rule) => {
    const points = networkPoints(to, rule, [rule.point, rule.of]);
    if (!points) return;
    const { along, across, offset } = acrossCentreLine(to.movement);
    const plusMinus = rule.plusMinus ?? 0;
    to.builder.rule(sourceOf(rule), RuleKind.abreast, points, [along.x, along.y, 0], plusMinus);
    to.builder.rule(sourceOf(rule), RuleKind.halfway, points, [across.x, across.y, 2 * offset], plusMinus);
  },
  measure: ({ movement, placeOf }, { point, of }) =>
    offValue(between(placeOf(point), mirroredPlace(movement, placeOf(of)))),
  told: ({ of }) => ({ kind: 'lineFrom', from: of }),
  sets: ({ point, of }, set) => {
    set.place(point);
    set.place(of);
  },
};
