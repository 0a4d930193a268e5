/** A mover for loose arbors that are held by depths alone: every centre distance of the given pairs is kept. */
import type { Point } from '../../geometry/index.ts';
import type { ArborId } from '../../movement/ids.ts';
import type { Mover } from './closeRing.ts';

/** Misfit of a distance at which the places are taken as right, mm. */
const EXACT = 1e-11;

/**
 * @param places all arbors
 * @param motion directions in which loose arbors start to move, as the planting gives them (largest 1)
 * @param pairs  arbors whose distance is kept
 */
export function keepDepths(
  places: ReadonlyMap<ArborId, Point>,
  motion: ReadonlyMap<ArborId, Point>,
  pairs: readonly (readonly [ArborId, ArborId])[],
): Mover {
  const movers = [...motion.keys()].filter((id) => places.has(id));
  const column = new Map(movers.map((id, index) => [id, 2 * index]));
  const kept = pairs.flatMap(([a, b]) => {
    const [pa, pb] = [places.get(a), places.get(b)];
    return pa && pb && (column.has(a) || column.has(b)) ? [{ a, b, length: Math.hypot(pb.x - pa.x, pb.y - pa.y) }] : [];
  });
  return (amount) => {
    const at = new Map(places);
    for (const id of movers) {
      const [from, way] = [places.get(id), motion.get(id)];
      if (from && way) at.set(id, { x: from.x + amount * way.x, y: from.y + amount * way.y });
    }
    for (let round = 0; round < 30; round++) {
      const misfit = kept.map(({ a, b, length }) => length - between(at, a, b).length);
      if (misfit.every((value) => Math.abs(value) < EXACT)) return at;
      const rows = kept.map(({ a, b }) => {
        const row = new Float64Array(2 * movers.length);
        const { x, y } = between(at, a, b);
        const [ca, cb] = [column.get(a), column.get(b)];
        if (ca !== undefined) row.set([-x, -y], ca);
        if (cb !== undefined) row.set([x, y], cb);
        return row;
      });
      const step = leastStep(rows, misfit);
      if (!step) return undefined;
      for (const [id, index] of column) {
        const from = at.get(id) ?? { x: 0, y: 0 };
        at.set(id, { x: from.x + (step[index] ?? 0), y: from.y + (step[index + 1] ?? 0) });
      }
    }
    return undefined;
  };
}

/** Unit vector from a to b and their distance. */
function between(at: ReadonlyMap<ArborId, Point>, a: ArborId, b: ArborId): Point & { readonly length: number } {
  const [pa, pb] = [at.get(a) ?? { x: 0, y: 0 }, at.get(b) ?? { x: 0, y: 0 }];
  const length = Math.hypot(pb.x - pa.x, pb.y - pa.y);
  return { x: (pb.x - pa.x) / length, y: (pb.y - pa.y) / length, length };
}

/** The shortest step s with rows · s = wanted: rowsᵀ (rows rowsᵀ)⁻¹ wanted, by elimination with the largest pivot. */
function leastStep(rows: readonly Float64Array[], wanted: readonly number[]): Float64Array | undefined {
  const n = rows.length;
  const width = rows[0]?.length ?? 0;
  const dot = (a: Float64Array, b: Float64Array): number =>
    a.reduce((sum, value, index) => sum + value * (b[index] ?? 0), 0);
  const m = rows.map((row, index) => [...rows.map((other) => dot(row, other)), wanted[index] ?? 0]);
  for (let k = 0; k < n; k++) {
    let best = k;
    for (let i = k + 1; i < n; i++) if (Math.abs(m[i]?.[k] ?? 0) > Math.abs(m[best]?.[k] ?? 0)) best = i;
    const pivotRow = m[best];
    const pivot = pivotRow?.[k] ?? 0;
    // Distances that depend on each other leave no pivot: the motion has ended or the pair is stated twice.
    if (!pivotRow || Math.abs(pivot) < 1e-12) return undefined;
    m[best] = m[k] ?? pivotRow;
    m[k] = pivotRow;
    for (let i = 0; i < n; i++) {
      const row = m[i];
      if (!row || i === k) continue;
      const factor = (row[k] ?? 0) / pivot;
      if (factor !== 0) for (let j = k; j <= n; j++) row[j] = (row[j] ?? 0) - factor * (pivotRow[j] ?? 0);
    }
  }
  const step = new Float64Array(width);
  rows.forEach((row, index) => {
    const weight = (m[index]?.[n] ?? 0) / (m[index]?.[index] ?? 1);
    for (let j = 0; j < width; j++) step[j] = (step[j] ?? 0) + weight * (row[j] ?? 0);
  });
  return step;
}
