/** A point on the line through two others. */
import { type Point, separation } from '../../../geometry/index.ts';
import { MIN_LENGTH } from '../../../movement/index.ts';
import { RuleKind } from '../../network.ts';
import { askAmong } from './asking.ts';
import type { RuleKindInPlanting, SettlingCandidate, SettlingGround } from './kind.ts';
import { offValue, straightFrom, towards } from './measuring.ts';

/** Lines through pairs of near points are offered, the nearest ones. */
const LINES_OFFERED = 3;

/** A line without an end: the point may stand on either side. */
export const inLineInPlanting: RuleKindInPlanting<'inLine'> = {
  ask: (to, rule) => askAmong(to, rule, RuleKind.inLine, [rule.point, ...rule.through]),
  measure: ({ placeOf }, { point, through: [a, b] }) => offValue(lineOffset(placeOf(point), placeOf(a), placeOf(b))),
  struck: (now, { point, through }, id) => straightFrom(now, point === id ? through[0] : point, id, 'line'),
  told: ({ through }) => ({ kind: 'line', through }),
  settles: settlingLines,
};

function lineOffset(point: Point | undefined, a: Point | undefined, b: Point | undefined): number | undefined {
  if (!point || !a || !b) return undefined;
  const length = separation(a, b);
  if (length === 0) return separation(point, a);
  return Math.abs((b.x - a.x) * (point.y - a.y) - (b.y - a.y) * (point.x - a.x)) / length;
}

/** Lines through two planted points, those that pass nearest to the point. */
function settlingLines({ point, near }: SettlingGround): readonly SettlingCandidate[] {
  const lines: { readonly off: number; readonly candidate: SettlingCandidate }[] = [];
  near.forEach((a, index) => {
    for (const b of near.slice(index + 1)) {
      if (separation(a, b) < MIN_LENGTH) continue;
      const along = towards(a, b);
      const across = { x: -along.y, y: along.x };
      const off = Math.abs((point.x - a.x) * across.x + (point.y - a.y) * across.y);
      lines.push({ off, candidate: { rule: { kind: 'inLine', point: point.id, through: [a.id, b.id] }, across } });
    }
  });
  return lines
    .sort((a, b) => a.off - b.off)
    .slice(0, LINES_OFFERED)
    .map(({ candidate }) => candidate);
}
