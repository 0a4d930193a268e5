/** Depths that join the same two axes: they share one centre distance, so sums of teeth and modules must agree. */
import type { Movement, RuleOf, Wheel } from '../../movement/schema.ts';
import { calculatedDepth, calledOf, moduleOf } from '../../teeth/index.ts';
import type { Axes } from './axes.ts';
import { roundText } from './tradeWords.ts';
import type { SharedAxes } from './turning.ts';

/** Distances that differ by less are one distance, mm: a tenth of the smallest step anyone marks out. */
const SAME_DISTANCE = 1e-3;

/** Every set of two or more depths between the same two axes. */
export function sharedAxesOf(movement: Movement, axes: Axes): readonly SharedAxes[] {
  const wheels = new Map(movement.wheels.map((wheel) => [wheel.id, wheel]));
  const groups = new Map<string, { rule: RuleOf<'depth'>; a: Wheel; b: Wheel }[]>();
  for (const rule of movement.rules) {
    if (rule.kind !== 'depth' || rule.leaveOut) continue;
    const [a, b] = [wheels.get(rule.wheels[0]), wheels.get(rule.wheels[1])];
    if (!a || !b || axes.sameAxis(a.arbor, b.arbor)) continue;
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
    return {
      names: `${calledOf(a)} with ${calledOf(b)}`,
      rule: rule.id,
      wheels: [a.id, b.id] as const,
      sum,
      module: moduleOf(a.size),
      distance,
    };
  });
  const first = sized[0] as (typeof sized)[number]; // groups have two depths or more
  const depths = sized.map(({ names: _, ...depth }) => ({
    ...depth,
    misfit: depth.distance - first.distance,
    moduleThatFits: (depth.module * first.distance) / depth.distance,
  }));
  const wrong = depths.filter((depth) => Math.abs(depth.misfit) > SAME_DISTANCE);
  const names = new Map(sized.map((depth) => [depth.rule, depth.names]));
  const pair = (depth: Pick<SharedAxes['depths'][number], 'rule'>): string => names.get(depth.rule) ?? depth.rule;
  const says =
    wrong.length === 0
      ? `${depths.map(pair).join(' and ')} share two axes and one distance of ${roundText(first.distance, 6)} mm.`
      : wrong
          .map((depth) => {
            const way = depth.misfit > 0 ? 'too deep' : 'too shallow';
            return `${pair(depth)} (sum ${depth.sum}) stands between the same axes as ${pair(first)} (sum ${first.sum}): at ${roundText(first.distance, 6)} mm it is ${roundText(Math.abs(depth.misfit))} mm ${way}; make the sums equal, or cut it with module ${roundText(depth.moduleThatFits, 6)}.`;
          })
          .join(' ');
  return { depths, fits: wrong.length === 0, says };
}
