/** Holes by their distances from the plate's straight edges, for a height gauge, odd-leg calipers or a marking gauge. */

import { decimalLengthText, type LengthDisplay, unitName } from '../../movement/decimal.ts';
import type { Hole } from '../marks.ts';
import type { PlateView } from '../plateView.ts';
import { type EdgeLine, edgesOf, insideEdge } from '../steps/metal.ts';

/** One hole by its distances from edges. */
export interface EdgeOffset {
  readonly label: string;
  readonly diameter: number;
  /** Distances from the edges that were chosen, mm, in their order. */
  readonly distances: readonly number[];
}

/** Holes by their distances from edges, as data and as text. */
export interface EdgeOffsets {
  readonly edges: readonly EdgeLine['name'][];
  readonly lines: readonly EdgeOffset[];
  readonly text: string;
}

/**
 * Distances of holes (as seen on the view's face) from its edges: one upright and one level edge, left and lower first.
 *
 * @param from names of the edges to measure from, where they are not to be the first that the plate has
 * @returns undefined for plates without two such edges
 */
export function edgeOffsets(
  holes: readonly Hole[],
  view: PlateView,
  display: LengthDisplay,
  from: readonly string[] = [],
): EdgeOffsets | undefined {
  const all = edgesOf(view);
  const edgeAlong = (axis: 'x' | 'y') => {
    const own = all.filter((edge) => edge.axis === axis);
    return own.find(({ name }) => from.includes(name)) ?? own[0];
  };
  const [upright, level] = [edgeAlong('x'), edgeAlong('y')];
  if (!upright || !level) return undefined;
  const lines = holes.map(({ label, diameter, x, y }): EdgeOffset => {
    return { label, diameter, distances: [upright, level].map((edge) => insideEdge(edge, { x, y })) };
  });
  const show = (mm: number) => decimalLengthText(mm, display);
  const text = [
    `From the edges, ${unitName(display)}. ${view.faceLabel}.`,
    ...lines.map(
      ({ label, distances }) =>
        `${label}: ${show(distances[0] ?? 0)} from the ${upright.name}, ${show(distances[1] ?? 0)} from the ${level.name}`,
    ),
  ];
  return { edges: [upright.name, level.name], lines, text: `${text.join('\n')}\n` };
}
