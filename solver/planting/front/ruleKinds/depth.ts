/** The depth of two wheels: a distance of their arbors. */

import { separation } from '../../../geometry/index.ts';
import type { PointId, WheelId } from '../../../movement/ids.ts';
import { MIN_LENGTH } from '../../../movement/index.ts';
import type { Movement, RuleOf, Wheel } from '../../../movement/schema.ts';
import { calculatedDepth } from '../../../teeth/index.ts';
import { RuleKind } from '../../network.ts';
import { depthLength } from '../depthLengths.ts';
import { networkPoints, refuse, sourceOf } from './asking.ts';
import type { RuleKindInPlanting, SettlingCandidate, SettlingGround, Translation } from './kind.ts';
import { arcAbout, between, lengthValue, otherOf, towards } from './measuring.ts';

/** A depth places by whichever of its distances is in use. */
export const depthInPlanting: RuleKindInPlanting<'depth'> = {
  ask: askDepth,
  note: (to, rule) => {
    const [a, b] = rule.wheels.map((id) => to.wheelOf(id));
    if (a && b) to.builder.lengths.set(rule.id, depthLength(rule, a, b, to.movement));
  },
  measure: ({ movement, placeOf }, { wheels }) => {
    const [a, b] = arborsOfWheels(movement, wheels);
    return lengthValue(between(a && placeOf(a), b && placeOf(b)));
  },
  struck: (now, { wheels }, point, length) =>
    arcAbout(now, otherOf(arborsOfWheels(now.movement, wheels), point), point, length),
  settles: settlingDepths,
};

function askDepth(to: Translation, rule: RuleOf<'depth'>): void {
  const [a, b] = rule.wheels.map((id) => to.wheelOf(id));
  if (!a || !b) {
    refuse(to, rule, [], { kind: 'missing', what: 'wheel' });
    return;
  }
  const points = networkPoints(to, rule, [a.arbor, b.arbor]);
  if (!points) return;
  const depth = depthLength(rule, a, b, to.movement);
  if (!(depth.length > 0)) {
    refuse(to, rule, [a.arbor, b.arbor], { kind: 'noDistance', distance: depth.length });
    return;
  }
  to.builder.lengths.set(rule.id, depth);
  const isCalculated = depth.length === depth.calculated && rule.use === 'calculated';
  const { length, plusMinus = 0 } = depth;
  to.builder.rule(sourceOf(rule), RuleKind.distance, points, [length], plusMinus, isCalculated ? 1 : 0);
}

function arborsOfWheels(movement: Movement, wheels: readonly WheelId[]): (PointId | undefined)[] {
  return wheels.map((id) => movement.wheels.find((each) => each.id === id)?.arbor);
}

/** Depths of the point's wheels with wheels of the same size at the same height on planted arbors. */
function settlingDepths({ placed, point }: SettlingGround): readonly SettlingCandidate[] {
  const { movement } = placed;
  const own = movement.wheels.filter(({ arbor }) => arbor === point.id);
  const meshed = new Set(movement.rules.flatMap((rule) => (rule.kind === 'depth' ? [pairKey(...rule.wheels)] : [])));
  return own.flatMap((wheel) =>
    movement.wheels.flatMap((other): SettlingCandidate[] => {
      const place = placed.places.get(other.arbor);
      if (place?.state !== 'planted' || meshed.has(pairKey(wheel.id, other.id)) || !meetInHeight(wheel, other)) {
        return [];
      }
      if (separation(place, point) < MIN_LENGTH) return [];
      const depth = calculatedDepth(other, wheel, movement);
      if (depth.kind !== 'depth') return [];
      const rule = { kind: 'depth', wheels: [other.id, wheel.id], use: 'calculated', allowance: 0 } as const;
      return [{ rule, across: towards(place, point), calculated: depth.distance }];
    }),
  );
}

const pairKey = (a: string, b: string): string => (a < b ? `${a} ${b}` : `${b} ${a}`);

const meetInHeight = (a: Wheel, b: Wheel): boolean =>
  Math.max(a.level, b.level) < Math.min(a.level + a.thickness, b.level + b.thickness);
