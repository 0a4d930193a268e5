/**
 * Points that follow exactly from others: p = Σ Mᵢ·qᵢ + N·e, with e the rule's own error.
 *
 * Same place, opposite and turned are one form, f(p, q, c) = p − c − R·(q − c) = e, solved here for whichever of its
 * points is the derived one.
 */
import type { Network } from '../network.ts';
import { RuleKind } from '../network.ts';

/** Row-major 2 × 2. */
export type Matrix2 = readonly [number, number, number, number];

/** How a point follows from others. */
export interface Derivation {
  readonly rule: number;
  readonly from: readonly { readonly point: number; readonly matrix: Matrix2 }[];
  /** How the rule's own error moves the point. */
  readonly error: Matrix2;
}

const IDENTITY: Matrix2 = [1, 0, 0, 1];

/** How a point follows from the other points of an exact rule; undefined for rules of other kinds. */
export function derivationOf(network: Network, rule: number, derived: number): Derivation | undefined {
  const parts = partsOf(network, rule);
  const own = parts?.find((part) => part.point === derived);
  const error = own && inverse(own.matrix);
  if (!parts || !error) return undefined;
  const from = parts
    .filter((part) => part.point !== derived)
    .map(({ point, matrix }) => ({ point, matrix: negated(product(error, matrix)) }));
  return { rule, from, error };
}

/** The factors of f's points: +1 for p, −R for q, R − 1 for c; undefined for rules of other kinds. */
export function partsOf(network: Network, rule: number): { point: number; matrix: Matrix2 }[] | undefined {
  const point = (k: number): number => network.points[4 * rule + k] ?? -1;
  switch (network.kinds[rule]) {
    case RuleKind.samePlace:
      return [
        { point: point(0), matrix: IDENTITY },
        { point: point(1), matrix: [-1, 0, 0, -1] },
      ];
    case RuleKind.opposite: // points p, c, q: half a turn
      return [
        { point: point(0), matrix: IDENTITY },
        { point: point(1), matrix: [-2, 0, 0, -2] },
        { point: point(2), matrix: IDENTITY },
      ];
    case RuleKind.between: {
      const share = network.values[3 * rule] ?? 0;
      return [
        { point: point(0), matrix: IDENTITY },
        { point: point(1), matrix: [share - 1, 0, 0, share - 1] },
        { point: point(2), matrix: [-share, 0, 0, -share] },
      ];
    }
    case RuleKind.turned: {
      const angle = network.values[3 * rule] ?? 0;
      const c = Math.cos(angle);
      const s = Math.sin(angle);
      return [
        { point: point(0), matrix: IDENTITY },
        { point: point(1), matrix: [-c, s, -s, -c] },
        { point: point(2), matrix: [c - 1, -s, s, c - 1] },
      ];
    }
    default:
      return undefined;
  }
}

function product(a: Matrix2, b: Matrix2): Matrix2 {
  return [a[0] * b[0] + a[1] * b[2], a[0] * b[1] + a[1] * b[3], a[2] * b[0] + a[3] * b[2], a[2] * b[1] + a[3] * b[3]];
}

const negated = (m: Matrix2): Matrix2 => [-m[0], -m[1], -m[2], -m[3]];

function inverse(m: Matrix2): Matrix2 | undefined {
  const determinant = m[0] * m[3] - m[1] * m[2];
  if (determinant === 0) return undefined;
  return [m[3] / determinant, -m[1] / determinant, -m[2] / determinant, m[0] / determinant];
}
