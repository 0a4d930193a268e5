/**
 * Ties that only check (told so by the maker): how far one is from holding, and how it presses on the points it names.
 *
 * A tie says f = p − c − w·(q − c) = 0 in complex numbers: w = 1 and no c for the same place, w = −1 for opposite,
 * w = e^(iθ) for turned, a real w for between. A push e on f pushes p by e, q by −w̄·e and c by (w̄ − 1)·e; a place that is derived hands its
 * push on to the roots that it follows from. Array kernel: indices come from a checked network, hence the `!`.
 */
import { RuleKind } from '../network.ts';
import { factorOfTie } from './reduce.ts';
import type { Ground } from './system.ts';

/** The points p, q and c of a tie (-1 where it has none) and its w. */
interface Tie {
  readonly p: number;
  readonly q: number;
  readonly c: number;
  readonly wr: number;
  readonly wi: number;
}

function tieOf({ network, reduction }: Ground, r: number): Tie {
  const at = (k: number): number => reduction.points[4 * r + k]!;
  const kind = network.kinds[r];
  if (kind === RuleKind.samePlace) return { p: at(0), q: at(1), c: -1, wr: 1, wi: 0 };
  const [wr, wi] = factorOfTie(kind!, network.values[3 * r]!);
  return kind === RuleKind.turned ? { p: at(0), q: at(1), c: at(2), wr, wi } : { p: at(0), q: at(2), c: at(1), wr, wi };
}

/** Which way a tie misses, as a unit vector; along x where it holds. */
export function tieMiss(ground: Ground, r: number): readonly [number, number] {
  const { p, q, c, wr, wi } = tieOf(ground, r);
  const x = (i: number): number => (i < 0 ? 0 : ground.coords[2 * i]!);
  const y = (i: number): number => (i < 0 ? 0 : ground.coords[2 * i + 1]!);
  const [dx, dy] = [x(q) - x(c), y(q) - y(c)];
  const ex = x(p) - x(c) - (wr * dx - wi * dy);
  const ey = y(p) - y(c) - (wr * dy + wi * dx);
  const size = Math.hypot(ex, ey);
  return size > 0 ? [ex / size, ey / size] : [1, 0];
}

/** How a push on a tie pushes the unknown roots behind its points: [root, x, y] each. */
export function tieForces(ground: Ground, r: number, ex: number, ey: number): [number, number, number][] {
  const { p, q, c, wr, wi } = tieOf(ground, r);
  const turned: readonly [number, number] = [wr * ex + wi * ey, wr * ey - wi * ex];
  return [
    ...pushed(ground, p, ex, ey),
    ...pushed(ground, q, -turned[0], -turned[1]),
    ...(c < 0 ? [] : pushed(ground, c, turned[0] - ex, turned[1] - ey)),
  ];
}

function pushed({ reduction }: Ground, point: number, fx: number, fy: number): [number, number, number][] {
  const at = reduction.derivedAt?.[point] ?? -1;
  if (at < 0) return reduction.unknown[point] ? [[point, fx, fy]] : [];
  const { roots, factors } = reduction.derived[at]!;
  // The transpose of a complex factor is its conjugate.
  return roots.map((root, k) => {
    const [re, im] = [factors[2 * k]!, factors[2 * k + 1]!];
    return [root, re * fx + im * fy, re * fy - im * fx];
  });
}
