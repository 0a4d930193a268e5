/** A distance between two points. */
import { MIN_LENGTH } from '../../../movement/index.ts';
import { RuleKind } from '../../network.ts';
import { askAmong } from './asking.ts';
import type { RuleKindInPlanting } from './kind.ts';
import { arcAbout, between, lengthValue, otherOf, towards } from './measuring.ts';

/** A length between two points, as it is typed. */
export const distanceInPlanting: RuleKindInPlanting<'distance'> = {
  ask: (to, rule) => {
    const { length, plusMinus } = rule;
    if (!askAmong(to, rule, RuleKind.distance, rule.points, [length])) return;
    to.builder.lengths.set(rule.id, { length, ...(plusMinus === undefined ? {} : { plusMinus }) });
  },
  measure: ({ placeOf }, { points: [a, b] }) => lengthValue(between(placeOf(a), placeOf(b))),
  struck: (now, { points }, point, length) => arcAbout(now, otherOf(points, point), point, length),
  sets: ({ points }, set) => set.pair(...points),
  settles: ({ near, point, isCentre }) =>
    near
      .filter(({ id }) => !isCentre(id))
      .map((from) => ({
        rule: { kind: 'distance', points: [from.id, point.id], length: MIN_LENGTH },
        across: towards(from, point),
      })),
};
