/** A point at the height of another. */
import { RuleKind } from '../../network.ts';
import { askAmong } from './asking.ts';
import { acrossCentreLine, apartAlong, lineAlong } from './centreLine.ts';
import type { RuleKindInPlanting } from './kind.ts';
import { offValue, otherOf } from './measuring.ts';

/** A line through the other point, told from the centre line. */
export const sameHeightInPlanting: RuleKindInPlanting<'sameHeight'> = {
  ask: (to, rule) => {
    const {
      along: { x, y },
    } = acrossCentreLine(to.movement);
    askAmong(to, rule, RuleKind.level, [rule.point, rule.of], [x, y, 0]);
  },
  measure: ({ movement, placeOf }, { point, of }) =>
    offValue(apartAlong(placeOf(point), placeOf(of), acrossCentreLine(movement).along)),
  struck: (now, { point, of }, id) => lineAlong(now, otherOf([point, of], id), acrossCentreLine(now.movement).across),
  told: ({ of }) => ({ kind: 'lineFrom', from: of }),
  // Offered where the document states its centre line.
  settles: ({ placed, near, point }) => {
    if (!placed.movement.centreLine) return [];
    const across = acrossCentreLine(placed.movement).along;
    return near
      .slice(0, OFFERED)
      .map((from) => ({ rule: { kind: 'sameHeight', point: point.id, of: from.id }, across }));
  },
};

/** Nearest points that are offered: a line through any of many would do. */
const OFFERED = 1;
