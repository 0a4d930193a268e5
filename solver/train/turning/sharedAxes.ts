/** Depths that join the same two axes: they share one centre distance, so sums of teeth and modules must agree. */

import type { Movement, RuleOf, Wheel } from '../../movement/schema.ts';
import { calculatedDepth, meshesOnlyWith, moduleOf } from '../../teeth/index.ts';
import { GAUGE } from '../../tolerances.ts';
import type { Axes } from './axes.ts';
import type { SharedAxes } from './linkage.ts';

/** Every set of two or more depths between the same two axes. */
export function sharedAxesOf(movement: Movement, axes: Axes): readonly SharedAxes[] {
  const wheels = new Map(movement.wheels.map((wheel) => [wheel.id, wheel]));
  const groups = new Map<string, { rule: RuleOf<'depth'>; a: Wheel; b: Wheel }[]>();
  for (const rule of movement.rules) {
    if (rule.kind !== 'depth' || rule.leaveOut) continue;
    const [a, b] = [wheels.get(rule.wheels[0]), wheels.get(rule.wheels[1])];
    if (!a || !b || axes.sameAxis(a.arbor, b.arbor)) continue;
    // Pitches come first: a pair that does not match has no depth to compare.
    if (calculatedDepth(a, b, movement).kind === 'mismatch') continue;
    const key = [axes.axisOf(a.arbor), axes.axisOf(b.arbor)].sort().join(' ');
    const group = groups.get(key);
    if (group) group.push({ rule, a, b });
    else groups.set(key, [{ rule, a, b }]);
  }
  return [...groups.values()].filter((group) => group.length > 1).map((group) => compareDepths(group, movement));
}

function compareDepths(
  group: readonly { readonly rule: RuleOf<'depth'>; readonly a: Wheel; readonly b: Wheel }[],
  movement: Movement,
): SharedAxes {
  const sized = group.map(({ rule, a, b }) => {
    const sum = a.internal || b.internal ? Math.abs(a.teeth - b.teeth) : a.teeth + b.teeth;
    const { distance } = calculatedDepth(a, b, movement);
    const isAlone = meshesOnlyWith(a, b, movement) && meshesOnlyWith(b, a, movement);
    return { rule: rule.id, wheels: [a.id, b.id] as const, sum, module: moduleOf(a.size), distance, isAlone };
  });
  const first = sized[0] as (typeof sized)[number]; // groups have two depths or more
  const misfits = (distance: number): boolean => Math.abs(distance - first.distance) > GAUGE;
  const isOnlyOne = sized.filter(({ distance }) => misfits(distance)).length === 1;
  const depths = sized.map(({ isAlone, ...depth }) => {
    const misfit = depth.distance - first.distance;
    const moduleThatFits = (depth.module * first.distance) / depth.distance;
    const fits = !misfits(depth.distance);
    const fitsFirst = (first.module * depth.distance) / first.distance;
    const recut = isAlone
      ? { wheels: depth.wheels, module: moduleThatFits }
      : isOnlyOne && sized.length === 2 && first.isAlone
        ? { wheels: first.wheels, module: fitsFirst }
        : undefined;
    return { ...depth, misfit, moduleThatFits, fits, ...(fits || !recut ? {} : { recut }) };
  });
  return { depths, fits: depths.every(({ fits }) => fits) };
}
