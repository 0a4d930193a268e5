/** A point straight opposite another. */
import { RuleKind } from '../../network.ts';
import { askAmong } from './asking.ts';
import type { RuleKindInPlanting } from './kind.ts';
import { between, offValue, turnedAbout } from './measuring.ts';

/** A tie: the place follows exactly. */
export const oppositeInPlanting: RuleKindInPlanting<'opposite'> = {
  ask: (to, rule) => askAmong(to, rule, RuleKind.opposite, [rule.point, rule.centre, rule.of]),
  measure: ({ placeOf }, { point, centre, of }) =>
    offValue(between(placeOf(point), turnedAbout(placeOf(of), placeOf(centre), Math.PI))),
  sets: ({ point, of }, set) => {
    set.place(point);
    set.place(of);
  },
};
