/** A point on the centre line. */
import { separation } from '../../../geometry/index.ts';
import { centreLineOf } from '../../../movement/index.ts';
import { RuleKind } from '../../network.ts';
import { askAmong } from './asking.ts';
import { acrossCentreLine } from './centreLine.ts';
import type { RuleKindInPlanting } from './kind.ts';
import { offValue } from './measuring.ts';

/** A fixed line of the document. */
export const onCentreLineInPlanting: RuleKindInPlanting<'onCentreLine'> = {
  ask: (to, rule) => {
    const { across, offset } = acrossCentreLine(to.movement);
    askAmong(to, rule, RuleKind.onLine, [rule.point], [across.x, across.y, offset]);
  },
  measure: ({ movement, placeOf }, { point }) => {
    const at = placeOf(point);
    const { across, offset } = acrossCentreLine(movement);
    return offValue(at && Math.abs(across.x * at.x + across.y * at.y - offset));
  },
  struck: ({ movement, placeOf }, { point }) => {
    const at = placeOf(point);
    const { through, along } = centreLineOf(movement);
    if (!at || separation(at, through) === 0) return undefined;
    return { from: point, locus: { kind: 'line', through, along } };
  },
  told: () => ({ kind: 'centreLine' }),
  // Offered where the document states its centre line.
  settles: ({ placed: { movement }, point }) =>
    movement.centreLine
      ? [{ rule: { kind: 'onCentreLine', point: point.id }, across: acrossCentreLine(movement).across }]
      : [],
};
