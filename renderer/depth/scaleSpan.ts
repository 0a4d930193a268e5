/** What the rule of distances shows, and where on it, in percent of its width. */
import type { DepthWindow } from '../../solver/teeth/index.ts';

/** A mark on the rule, percent from its left end. */
export interface ScaleMark {
  readonly name: string;
  readonly at: number;
}

/** Room left beyond the outermost mark, as a share of the span, and the least span that is drawn, mm. */
const PAD = 0.12;
const LEAST_SPAN = 0.05;

/** The distances at both ends of the rule, mm. */
export function scaleSpan(window: DepthWindow | undefined, marks: readonly ScaleMark[], distance: number) {
  const all = [
    ...marks.map(({ at }) => at),
    ...(window ? [window.deepest, window.shallowest, window.lostAt, window.turn.nearest, window.turn.farthest] : []),
  ];
  if (all.length === 0) all.push(distance);
  const [least, most] = [Math.min(...all), Math.max(...all)];
  const pad = PAD * Math.max(most - least, LEAST_SPAN);
  return [least - pad, most + pad] as const;
}

/** A stretch of the rule, from the smaller distance to the larger, kept on the rule. */
export interface Stretch {
  readonly left: number;
  readonly width: number;
}

/** Places on the rule, percent. */
export function stretchOf(ends: readonly [number, number], a: number, b: number): Stretch {
  const share = (value: number): number => Math.min(100, Math.max(0, (100 * (value - ends[0])) / (ends[1] - ends[0])));
  const [left, right] = [share(Math.min(a, b)), share(Math.max(a, b))];
  return { left, width: right - left };
}

/** The zones of a rule: too deep, fit to run, uneven, out of touch. A wheel in a ring opens the other way. */
export function zonesOf(window: DepthWindow, ends: readonly [number, number]) {
  const [deepEnd, openEnd] = window.internal ? [ends[1], ends[0]] : ends;
  return [
    { kind: window.deepestBy === 'binding' ? 'binds' : 'bottoms', ...stretchOf(ends, deepEnd, window.deepest) },
    { kind: 'runs', ...stretchOf(ends, window.deepest, window.shallowest) },
    { kind: 'uneven', ...stretchOf(ends, window.shallowest, window.lostAt) },
    { kind: 'out of touch', ...stretchOf(ends, window.lostAt, openEnd) },
  ] as const;
}
