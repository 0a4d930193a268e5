/** A point straight above or below another. */
import { RuleKind } from '../../network.ts';
import { askAmong } from './asking.ts';
import { acrossCentreLine, apartAlong, lineAlong } from './centreLine.ts';
import type { RuleKindInPlanting } from './kind.ts';
import { offValue, otherOf } from './measuring.ts';

/** A line through the other point, told from the centre line. */
export const straightAboveInPlanting: RuleKindInPlanting<'straightAbove'> = {
  ask: (to, rule) => {
    const {
      across: { x, y },
    } = acrossCentreLine(to.movement);
    askAmong(to, rule, RuleKind.level, [rule.point, rule.of], [x, y, 0]);
  },
  measure: ({ movement, placeOf }, { point, of }) =>
    offValue(apartAlong(placeOf(point), placeOf(of), acrossCentreLine(movement).across)),
  struck: (now, { point, of }, id) => lineAlong(now, otherOf([point, of], id), acrossCentreLine(now.movement).along),
  told: ({ of }) => ({ kind: 'lineFrom', from: of }),
  // Offered where the document states its centre line.
  settles: ({ placed, near, point }) => {
    if (!placed.movement.centreLine) return [];
    const across = acrossCentreLine(placed.movement).across;
    return near
      .slice(0, OFFERED)
      .map((from) => ({ rule: { kind: 'straightAbove', point: point.id, of: from.id }, across }));
  },
};

/** Nearest points that are offered: a line through any of many would do. */
const OFFERED = 1;
