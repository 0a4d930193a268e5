/** A direction about a centre. */
import { type Point, separation } from '../../../geometry/index.ts';
import { RuleKind } from '../../network.ts';
import { networkPoints, sourceOf } from './asking.ts';
import type { DraftOf, Measured, RuleKindInPlanting, RuleValue } from './kind.ts';
import { straightFrom, towards } from './measuring.ts';

const RADIANS = Math.PI / 180;

/** A ray from the centre; the ± of a direction is an angle. */
export const bearingInPlanting: RuleKindInPlanting<'bearing'> = {
  ask: (to, rule) => {
    const { point, centre, reference, angle, plusMinus = 0 } = rule;
    const points = networkPoints(to, rule, [point, centre, ...(reference === undefined ? [] : [reference])]);
    if (points) to.builder.rule(sourceOf(rule), RuleKind.ray, points, [angle * RADIANS], plusMinus * RADIANS);
  },
  measure: angleNow,
  struck: (now, { point, centre }, id) => straightFrom(now, point === id ? centre : point, id, 'ray'),
  told: ({ centre }) => ({ kind: 'ray', from: centre }),
  settles: ({ near, point }) =>
    near.map((from) => {
      const away = towards(from, point);
      return {
        rule: { kind: 'bearing', point: point.id, centre: from.id, angle: 0 },
        across: { x: -away.y, y: away.x },
      };
    }),
};

function angleNow({ placeOf }: Measured, rule: DraftOf<'bearing'>): RuleValue | undefined {
  const [centre, point] = [placeOf(rule.centre), placeOf(rule.point)];
  const reference = rule.reference && placeOf(rule.reference);
  if (!centre || !point || (rule.reference !== undefined && !reference)) return undefined;
  const angle = directionOf(centre, point);
  const zero = reference ? directionOf(centre, reference) : 0;
  if (angle === undefined || zero === undefined) return undefined;
  const value = (angle - zero) / RADIANS;
  return { kind: 'angle', value: ((value % 360) + 360) % 360, arm: separation(point, centre) };
}

function directionOf(from: Point, to: Point): number | undefined {
  if (from.x === to.x && from.y === to.y) return undefined;
  return Math.atan2(to.y - from.y, to.x - from.x);
}
