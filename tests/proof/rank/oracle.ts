/**
 * An oracle for what rules settle: a singular value decomposition (ml-matrix) of all rows of all rules that hold, written
 * without the kernel: every tie is two rows of its own, nothing is merged or eliminated.
 */
import { Matrix, SVD } from 'ml-matrix';
import { type Network, RuleKind } from '../../../solver/planting/network.ts';

/** Value over the largest below which a motion is not resisted, and below which a place is barely settled. */
export const LACKING = 1e-9;
export const BARELY = 1e-6;

export interface Decomposed {
  /** Singular values over the largest, rising, of columns scaled by points. */
  readonly values: readonly number[];
  /** Per value: displacement of every point of the network, unscaled. */
  readonly vectors: readonly Float64Array[];
}

type Entry = readonly [point: number, dx: number, dy: number];

/** Rows of one rule at the places: derivatives by the points that it speaks of. */
export function rowsOf(network: Network, r: number, coords: ArrayLike<number>): Entry[][] {
  const [p, a, c] = [0, 1, 2].map((k) => network.points[4 * r + k] as number) as [number, number, number]; // four a rule
  const [v0, v1] = [network.values[3 * r] as number, network.values[3 * r + 1] as number]; // three a rule
  const from = (i: number, j: number): [number, number, number] => {
    const [dx, dy] = [
      (coords[2 * i] as number) - (coords[2 * j] as number),
      (coords[2 * i + 1] as number) - (coords[2 * j + 1] as number),
    ]; // points of the network
    return [dx, dy, Math.hypot(dx, dy)];
  };
  const tie = (q: number, centre: number, angle: number): Entry[][] => {
    const [w, z] = [Math.cos(angle), Math.sin(angle)];
    return [
      [
        [p, 1, 0],
        [q, -w, z],
        [centre, w - 1, -z],
      ],
      [
        [p, 0, 1],
        [q, -z, -w],
        [centre, z, w - 1],
      ],
    ];
  };
  switch (network.kinds[r]) {
    case RuleKind.distance: {
      const [dx, dy, d] = from(p, a);
      return [
        [
          [p, dx / d, dy / d],
          [a, -dx / d, -dy / d],
        ],
      ];
    }
    case RuleKind.ray: {
      // radius · (angle of p about a - angle of the reference about a), which is zero here.
      const [dx, dy, d] = from(p, a);
      const row: Entry[] = [
        [p, -dy / d, dx / d],
        [a, dy / d, -dx / d],
      ];
      if (c < 0) return [row];
      const [ex, ey, e] = from(c, a);
      const by = d / (e * e);
      return [[...row, [c, ey * by, -ex * by], [a, -ey * by, ex * by]]];
    }
    case RuleKind.inLine: {
      // Twice the area of the three, over the length a-c.
      const [ax, ay] = [coords[2 * a] as number, coords[2 * a + 1] as number]; // as above
      const [cx, cy] = [coords[2 * c] as number, coords[2 * c + 1] as number]; // as above
      const [px, py] = [coords[2 * p] as number, coords[2 * p + 1] as number]; // as above
      const e = Math.hypot(cx - ax, cy - ay);
      return [
        [
          [p, (ay - cy) / e, (cx - ax) / e],
          [a, (cy - py) / e, (px - cx) / e],
          [c, (py - ay) / e, (ax - px) / e],
        ],
      ];
    }
    case RuleKind.sameRadius: {
      const [gx, gy, g] = from(p, c);
      const [hx, hy, h] = from(a, c);
      return [
        [
          [p, gx / g, gy / g],
          [a, -hx / h, -hy / h],
          [c, hx / h - gx / g, hy / h - gy / g],
        ],
      ];
    }
    case RuleKind.onLine:
      return [[[p, v0, v1]]];
    case RuleKind.samePlace:
      return [
        [
          [p, 1, 0],
          [a, -1, 0],
        ],
        [
          [p, 0, 1],
          [a, 0, -1],
        ],
      ];
    case RuleKind.opposite:
      return tie(c, a, Math.PI);
    default:
      return tie(a, c, v0);
  }
}

/** Decomposes the rules listed, at the places given. */
export function decompose(network: Network, coords: ArrayLike<number>, rules: readonly number[]): Decomposed {
  const columnOf = new Map<number, number>();
  for (let i = 0; i < network.pointCount; i++) if (!network.held[i]) columnOf.set(i, columnOf.size);
  const columns = 2 * columnOf.size;
  if (columns === 0) return { values: [], vectors: [] };
  const rows = rules.flatMap((r) => rowsOf(network, r, coords));
  const matrix = Matrix.zeros(Math.max(rows.length, columns), columns);
  rows.forEach((row, i) => {
    for (const [point, dx, dy] of row) {
      const column = columnOf.get(point);
      if (column === undefined) continue;
      matrix.set(i, 2 * column, matrix.get(i, 2 * column) + dx);
      matrix.set(i, 2 * column + 1, matrix.get(i, 2 * column + 1) + dy);
    }
  });
  const scale = [...columnOf.values()].map((column) => {
    const length = Math.hypot(...matrix.getColumn(2 * column), ...matrix.getColumn(2 * column + 1)) / Math.SQRT2;
    return length > 0 ? length : 1;
  });
  for (let i = 0; i < matrix.rows; i++) {
    for (let k = 0; k < columns; k++) matrix.set(i, k, matrix.get(i, k) / (scale[k >> 1] as number));
  } // one a point
  const svd = new SVD(matrix, { computeLeftSingularVectors: false, computeRightSingularVectors: true });
  const most = Math.max(1e-300, ...svd.diagonal);
  const order = svd.diagonal.map((_, k) => k).sort((a, b) => (svd.diagonal[a] as number) - (svd.diagonal[b] as number)); // indices of it
  const vectors = order.map((k) => {
    const all = new Float64Array(2 * network.pointCount);
    for (const [point, column] of columnOf) {
      for (const c of [0, 1]) {
        all[2 * point + c] = svd.rightSingularVectors.get(2 * column + c, k) / (scale[column] as number);
      }
    } // as above
    return all;
  });
  return { values: order.map((k) => (svd.diagonal[k] as number) / most), vectors };
}

/** How far a displacement moves each point, over the farthest. */
export function shares(vector: Float64Array): Float64Array {
  const length = Float64Array.from(
    { length: vector.length / 2 },
    (_, i) => Math.hypot(vector[2 * i] as number, vector[2 * i + 1] as number), // two a point
  );
  const most = Math.max(1e-300, ...length);
  return length.map((v) => v / most);
}

/** Motions that no rule resists, as one number a point: how far it goes in any of them. */
export function movable({ values, vectors }: Decomposed, pointCount: number): Float64Array {
  const far = new Float64Array(pointCount);
  vectors.forEach((vector, k) => {
    if ((values[k] as number) >= LACKING) return; // one a vector
    shares(vector).forEach((share, i) => {
      far[i] = Math.max(far[i] as number, share); // one a point
    });
  });
  return far;
}

/** How far one rule is from holding, a number a row of `rowsOf` and in its order, mm. */
export function residualsOf(network: Network, r: number, coords: ArrayLike<number>): number[] {
  const [p, a, c] = [0, 1, 2].map((k) => network.points[4 * r + k] as number) as [number, number, number]; // four a rule
  const [v0, v1, v2] = [0, 1, 2].map((k) => network.values[3 * r + k] as number) as [number, number, number]; // three a rule
  const at = (i: number): [number, number] => [coords[2 * i] as number, coords[2 * i + 1] as number]; // points of the network
  const minus = (i: number, j: number): [number, number] => [at(i)[0] - at(j)[0], at(i)[1] - at(j)[1]];
  const tie = (q: number, centre: number, angle: number): number[] => {
    const [[px, py], [qx, qy], [w, z]] = [minus(p, centre), minus(q, centre), [Math.cos(angle), Math.sin(angle)]];
    return [px - w * qx + z * qy, py - z * qx - w * qy];
  };
  switch (network.kinds[r]) {
    case RuleKind.distance:
      return [Math.hypot(...minus(p, a)) - v0];
    case RuleKind.ray: {
      const [dx, dy] = minus(p, a);
      const [ex, ey] = c < 0 ? [1, 0] : minus(c, a);
      const off = Math.atan2(dy, dx) - Math.atan2(ey, ex) - v0;
      return [Math.hypot(dx, dy) * Math.atan2(Math.sin(off), Math.cos(off))];
    }
    case RuleKind.inLine: {
      const [[dx, dy], [ex, ey]] = [minus(p, a), minus(c, a)];
      return [(ex * dy - ey * dx) / Math.hypot(ex, ey)];
    }
    case RuleKind.sameRadius:
      return [Math.hypot(...minus(p, c)) - Math.hypot(...minus(a, c))];
    case RuleKind.onLine:
      return [v0 * at(p)[0] + v1 * at(p)[1] - v2];
    case RuleKind.samePlace:
      return minus(p, a);
    case RuleKind.opposite:
      return tie(c, a, Math.PI);
    default:
      return tie(a, c, v0);
  }
}
