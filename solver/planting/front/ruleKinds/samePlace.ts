/** Two points at one place. */
import { RuleKind } from '../../network.ts';
import { askAmong } from './asking.ts';
import type { RuleKindInPlanting } from './kind.ts';
import { between, offValue } from './measuring.ts';

/** A tie: the two points are one. */
export const samePlaceInPlanting: RuleKindInPlanting<'samePlace'> = {
  ask: (to, rule) => askAmong(to, rule, RuleKind.samePlace, rule.points),
  measure: ({ placeOf }, { points: [a, b] }) => offValue(between(placeOf(a), placeOf(b))),
  sets: ({ points }, set) => points.forEach(set.place),
};
