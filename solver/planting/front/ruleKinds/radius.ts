/** A point at a length from a centre. */
import { MIN_LENGTH } from '../../../movement/index.ts';
import { RuleKind } from '../../network.ts';
import { askAmong } from './asking.ts';
import type { RuleKindInPlanting } from './kind.ts';
import { arcAbout, between, lengthValue, towards } from './measuring.ts';

/** A length between two points, as it is typed. */
export const radiusInPlanting: RuleKindInPlanting<'radius'> = {
  ask: (to, rule) => {
    const { length, plusMinus } = rule;
    if (!askAmong(to, rule, RuleKind.distance, [rule.point, rule.centre], [length])) return;
    to.builder.lengths.set(rule.id, { length, ...(plusMinus === undefined ? {} : { plusMinus }) });
  },
  measure: ({ placeOf }, { point, centre }) => lengthValue(between(placeOf(centre), placeOf(point))),
  struck: (now, { point, centre }, id, length) => arcAbout(now, point === id ? centre : point, id, length),
  sets: ({ point, centre }, set) => set.pair(point, centre),
  settles: ({ near, point, isCentre }) =>
    near
      .filter(({ id }) => isCentre(id))
      .map((from) => ({
        rule: { kind: 'radius', point: point.id, centre: from.id, length: MIN_LENGTH },
        across: towards(from, point),
      })),
};
