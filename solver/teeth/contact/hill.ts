/** The top of one hill of a function, found with few questions. */

/** Place and height of the top; written over at each climb. */
export interface HillTop {
  at: number;
  height: number;
}

/**
 * Climbs from `x0` (height `f0`, the best known) between `a` and `b`: parabolas through the three best places, golden
 * sections where those do not help (Brent 1973, ch. 5). Leaves the top in `top`.
 */
export function climbHill(
  f: (x: number) => number,
  a: number,
  x0: number,
  f0: number,
  b: number,
  tolerance: number,
  top: HillTop,
): void {
  let [lo, hi] = [a, b];
  let [x, w, v] = [x0, x0, x0];
  let [fx, fw, fv] = [f0, f0, f0];
  let [d, e] = [0, 0];
  for (let i = 0; i < 60; i++) {
    const middle = (lo + hi) / 2;
    if (Math.abs(x - middle) <= 2 * tolerance - (hi - lo) / 2) break;
    let golden = true;
    if (Math.abs(e) > tolerance) {
      const r = (x - w) * (fv - fx);
      let q = (x - v) * (fw - fx);
      let p = (x - v) * q - (x - w) * r;
      q = 2 * (q - r);
      if (q > 0) p = -p;
      q = Math.abs(q);
      const before = e;
      e = d;
      if (Math.abs(p) < Math.abs(0.5 * q * before) && p > q * (lo - x) && p < q * (hi - x)) {
        d = p / q;
        golden = false;
      }
    }
    if (golden) {
      e = x < middle ? hi - x : lo - x;
      d = 0.381966011250105 * e;
    }
    const u = Math.abs(d) >= tolerance ? x + d : x + (d > 0 ? tolerance : -tolerance);
    const fu = f(u);
    if (fu >= fx) {
      if (u < x) hi = x;
      else lo = x;
      v = w;
      fv = fw;
      w = x;
      fw = fx;
      x = u;
      fx = fu;
      continue;
    }
    if (u < x) lo = u;
    else hi = u;
    if (fu >= fw || w === x) {
      v = w;
      fv = fw;
      w = u;
      fw = fu;
    } else if (fu >= fv || v === x || v === w) {
      v = u;
      fv = fu;
    }
  }
  top.at = x;
  top.height = fx;
}
