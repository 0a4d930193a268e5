/** The exact ways to divide a circle into a count: direct, simple, compound, differential. */
import { type CrankMove, type DividingHead, type DividingKit, type DividingWay, gcd } from './dividing.ts';

/** A plain plate on the spindle: every so many holes. */
export function directWays(count: number, plainPlates: readonly (readonly number[])[]): DividingWay[] {
  const circles = [...new Set(plainPlates.flat())].sort((a, b) => a - b);
  return circles
    .filter((circle) => circle % count === 0)
    .map((circle) => {
      const holes = circle / count;
      return { kind: 'direct', circle, holes };
    });
}

/** Every circle of the head on which ratio/count of a turn falls on a hole. */
export function simpleMoves(count: number, head: DividingHead): CrankMove[] {
  const turns = Math.floor(head.ratio / count);
  const rest = head.ratio - turns * count;
  const circles = [...new Set(head.plates.flat())].sort((a, b) => a - b);
  if (rest === 0) return [{ turns, holes: 0, circle: circles[0] ?? 1 }];
  const share = gcd(rest, count);
  const [over, under] = [rest / share, count / share];
  return circles
    .filter((circle) => circle % under === 0)
    .map((circle) => ({ turns, holes: (over * circle) / under, circle }));
}

/** Simple dividing on a head with every circle that serves; `undefined` when none does. */
export function simpleWay(count: number, head: DividingHead): DividingWay | undefined {
  const moves = simpleMoves(count, head);
  if (moves.length === 0) return undefined;
  return { kind: 'simple', head: head.name, moves };
}

/** Two circles of one plate whose holes add up to ratio/count: the way with the smallest moves. */
export function compoundWay(count: number, head: DividingHead): DividingWay | undefined {
  let best: { first: CrankMove; second: CrankMove; size: number } | undefined;
  for (const plate of head.plates) {
    for (const [i, a] of plate.entries()) {
      for (const b of plate.slice(i + 1)) {
        const found = compoundOn(count, head.ratio, a, b);
        if (found && (!best || found.size < best.size)) best = found;
      }
    }
  }
  if (!best) return undefined;
  const { first, second } = best;
  return { kind: 'compound', head: head.name, first, second };
}

/** x/a + y/b = ratio/count with x the crank's holes in all and |y| below one turn. */
function compoundOn(count: number, ratio: number, a: number, b: number) {
  // x·b·count + y·a·count = ratio·a·b
  const total = ratio * a * b;
  if (total % (gcd(a, b) * count) !== 0) return undefined;
  const wanted = total / count;
  let best: { first: CrankMove; second: CrankMove; size: number } | undefined;
  for (let y = 1 - b; y < b; y++) {
    const rest = wanted - y * a;
    if (y === 0 || rest <= 0 || rest % b !== 0) continue;
    const x = rest / b;
    const size = x / a + Math.abs(y) / b;
    if (best && size >= best.size) continue;
    const turns = Math.floor(x / a);
    best = { first: { turns, holes: x - turns * a, circle: a }, second: { turns: 0, holes: y, circle: b }, size };
  }
  return best;
}

/** How far from the count the head may be set for differential dividing. */
const FARTHEST = 30;

/**
 * Differential dividing: the head is set for another count, and the spindle turns the plate by change wheels.
 * Plate turns for one turn of the spindle: ratio·(as − count)/as, with the crank when positive.
 */
export function differentialWay(count: number, head: DividingHead, wheels: readonly number[]): DividingWay | undefined {
  for (let off = 1; off <= FARTHEST; off++) {
    for (const as of [count + off, count - off]) {
      const move = as > 1 ? simpleMoves(as, head)[0] : undefined;
      if (!move) continue;
      const over = head.ratio * Math.abs(as - count);
      const train = changeWheels(over, as, wheels);
      if (!train) continue;
      const sense = as > count ? 'with' : 'against';
      return { kind: 'differential', head: head.name, as, move, ...train, sense };
    }
  }
  return undefined;
}

/** One or two pairs out of the wheels with driving/driven = over/under. */
export function changeWheels(
  over: number,
  under: number,
  wheels: readonly number[],
): { readonly driving: readonly number[]; readonly driven: readonly number[] } | undefined {
  for (const [i, a] of wheels.entries()) {
    for (const [j, b] of wheels.entries()) {
      if (i !== j && a * under === b * over) return { driving: [a], driven: [b] };
    }
  }
  for (const [i, a] of wheels.entries()) {
    for (const [j, b] of wheels.entries()) {
      if (i === j) continue;
      for (const [k, c] of wheels.entries()) {
        if (k <= i || k === j) continue;
        for (const [l, d] of wheels.entries()) {
          if (l === i || l === j || l === k || l < j) continue;
          if (a * c * under === b * d * over) return { driving: [a, c], driven: [b, d] };
        }
      }
    }
  }
  return undefined;
}

/** All exact ways with the kit, the easiest first. */
export function exactWays(count: number, kit: DividingKit): readonly DividingWay[] {
  const simple = kit.heads.flatMap((head) => simpleWay(count, head) ?? []);
  const ways = [...directWays(count, kit.plainPlates), ...simple];
  if (ways.length > 0) return ways;
  const compound = kit.heads.flatMap((head) => compoundWay(count, head) ?? []);
  const differential = kit.heads.flatMap((head) => differentialWay(count, head, kit.changeWheels) ?? []);
  return [...compound, ...differential];
}
