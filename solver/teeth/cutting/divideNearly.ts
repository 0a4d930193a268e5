/** Ways that only come near a count, with the error of each: for counts that no exact way reaches. */

import { type CrankMove, type DividingHead, type DividingKit, gcd, type NearWay } from './dividing.ts';

const TURN = 2 * Math.PI;

/**
 * Every tooth at the hole nearest to its true place, counted from the start, so that errors do not add up: the best
 * circle of the head.
 */
export function nearestHoleWay(count: number, head: DividingHead): NearWay | undefined {
  let best: { circle: number; place: number; spacing: number } | undefined;
  for (const circle of new Set(head.plates.flat())) {
    const holes = head.ratio * circle;
    const at = Array.from({ length: count + 1 }, (_, i) => Math.round((i * holes) / count) - (i * holes) / count);
    const place = Math.max(...at.map(Math.abs)) / holes;
    const spacing = Math.max(...at.slice(1).map((error, i) => Math.abs(error - (at[i] ?? 0)))) / holes;
    if (!best || spacing < best.spacing) best = { circle, place, spacing };
  }
  if (!best) return undefined;
  const [placeError, spacingError] = [best.place * TURN, best.spacing * TURN];
  return { kind: 'nearestHole', head: head.name, circle: best.circle, placeError, spacingError };
}

/** Most teeth moved at once in a near compound setting. */
const MOST_SKIPPED = 7;

/**
 * Two circles of one plate that come nearest to so many teeth at a time, going round as many times; the small error
 * adds up to the last tooth.
 */
export function nearCompoundWay(count: number, head: DividingHead): NearWay | undefined {
  let best: { first: CrankMove; second: CrankMove; step: number; skip: number } | undefined;
  for (let skip = 1; skip <= MOST_SKIPPED; skip++) {
    if (gcd(skip, count) !== 1) continue;
    const wanted = (skip * head.ratio) / count;
    for (const plate of head.plates) {
      for (const [i, a] of plate.entries()) {
        for (const b of plate.slice(i + 1)) {
          const found = nearestSum(wanted, a, b);
          const step = (found.error / head.ratio) * TURN;
          if (best && step >= best.step) continue;
          const turns = Math.floor(found.x / a);
          const first = { turns, holes: found.x - turns * a, circle: a };
          best = { step, skip, first, second: { turns: 0, holes: found.y, circle: b } };
        }
      }
    }
  }
  if (!best) return undefined;
  // Move j cuts tooth j·skip, wrong by j steps; neighbours lie so many moves apart as the inverse of the skip says.
  const apart =
    Array.from({ length: count }, (_, j) => j).find((j) => (j * (best?.skip ?? 1)) % count === 1 % count) ?? 1;
  const placeError = best.step * (count - 1);
  const spacingError = best.step * Math.max(apart, count - apart);
  return { kind: 'nearCompound', head: head.name, ...best, placeError, spacingError };
}

/** x/a + y/b nearest to a number of turns, |y| < b. */
function nearestSum(wanted: number, a: number, b: number): { x: number; y: number; error: number } {
  let best = { x: 0, y: 0, error: Number.POSITIVE_INFINITY };
  for (let y = 1 - b; y < b; y++) {
    const x = Math.round((wanted - y / b) * a);
    const error = Math.abs(x / a + y / b - wanted);
    if (x >= 0 && error < best.error) best = { x, y, error };
  }
  return best;
}

/** The nearest ways of the whole kit, the smallest error of a space first. */
export function nearWays(count: number, kit: DividingKit): readonly NearWay[] {
  const ways = kit.heads.flatMap((head) =>
    [nearestHoleWay(count, head) ?? [], nearCompoundWay(count, head) ?? []].flat(),
  );
  const second = Math.PI / 180 / 3600;
  const angle: NearWay = { kind: 'angle', placeError: second / 2, spacingError: second };
  return [...ways, angle].sort((p, q) => p.spacingError - q.spacingError);
}
