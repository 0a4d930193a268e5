/** An arbor through its whole height, its collars, and what its hands, arms, fingers and pins reach. */
import type { Point } from '../../geometry/index.ts';
import type { Arbor, Wheel } from '../../movement/schema.ts';
import { heightsOfArbor } from '../bodies/heights.ts';
import { innerRadiusOf, type PartsIndex } from './partsIndex.ts';
import type { Draft, Heights, RingSolid } from './solid.ts';

/** The solids of one arbor at its place. */
export function arborSolids(arbor: Arbor, centre: Point, parts: PartsIndex): Draft[] {
  const whole = heightsOfArbor(arbor, parts.movement);
  if (!whole) return [];
  const ring: Omit<RingSolid, 'index'> = {
    part: arbor.id,
    piece: 'whole',
    role: 'arbor',
    heights: whole,
    arbor: arbor.id,
    shape: 'ring',
    centre,
    inner: innerRadiusOf(arbor.id, parts),
    outer: arbor.diameter / 2,
  };
  const bare = bareHeights(arbor, whole, parts.wheelsOn.get(arbor.id) ?? []);
  return [
    ...bare.map((heights): Draft => ({ ...ring, heights })),
    ...arbor.collars.map(({ from, to, diameter }): Draft => {
      const heights = { from, to };
      return { ...ring, piece: 'collar', role: 'collar', heights, outer: diameter / 2 };
    }),
    ...(arbor.swept ?? []).map(({ from, to, nearest, farthest }, nth): Draft => {
      return {
        ...ring,
        piece: 'swept',
        nth,
        role: 'swept',
        heights: { from, to },
        inner: Math.max(nearest, ring.inner),
        outer: farthest,
      };
    }),
  ];
}

/** Heights at which the arbor's own surface is bare: its span less the solid wheels, hubs and collars around it. */
function bareHeights(arbor: Arbor, whole: Heights, wheels: readonly Wheel[]): Heights[] {
  const covers: Heights[] = arbor.collars.filter((collar) => collar.diameter >= arbor.diameter);
  for (const wheel of wheels) {
    if (!wheel.internal) covers.push({ from: wheel.level, to: wheel.level + wheel.thickness });
    if (wheel.hub) covers.push(wheel.hub);
  }
  covers.sort((a, b) => a.from - b.from);
  const bare: Heights[] = [];
  let from = whole.from;
  for (const cover of covers) {
    if (cover.from > from) bare.push({ from, to: Math.min(cover.from, whole.to) });
    from = Math.max(from, cover.to);
  }
  if (from < whole.to) bare.push({ from, to: whole.to });
  return bare.filter((heights) => heights.to > heights.from);
}
