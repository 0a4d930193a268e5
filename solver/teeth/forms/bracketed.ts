/** Roots and extremes of functions of one variable, inside a bracket. */

/**
 * A root of `f` between `low` and `high`, where f changes sign; to the last digits that f allows.
 * The interval is cut by secants, and halved whenever they stall (the "Illinois" false position, Dowell & Jarratt 1971).
 */
export function rootBetween(f: (x: number) => number, low: number, high: number, within = 1e-15): number {
  let [a, b] = [low, high];
  let [fa, fb] = [f(a), f(b)];
  if (fa === 0) return a;
  if (fb === 0) return b;
  let side = 0;
  for (let i = 0; i < 200; i++) {
    const slack = within * Math.max(Math.abs(a), Math.abs(b));
    if (Math.abs(b - a) <= slack) break;
    let x = i % 12 === 11 ? (a + b) / 2 : (a * fb - b * fa) / (fb - fa);
    if (!(x > Math.min(a, b) && x < Math.max(a, b))) x = (a + b) / 2;
    if (x === a || x === b) break;
    const fx = f(x);
    if (fx === 0) return x;
    if (fx > 0 === fb > 0) {
      [b, fb] = [x, fx];
      if (side === 1) fa /= 2;
      side = 1;
    } else {
      [a, fa] = [x, fx];
      if (side === -1) fb /= 2;
      side = -1;
    }
  }
  return Math.abs(fa) < Math.abs(fb) ? a : b;
}

const GOLDEN = (3 - Math.sqrt(5)) / 2;

/** Where `f` is largest between `low` and `high` (one hill), to `within`, by golden section. */
export function highestBetween(f: (x: number) => number, low: number, high: number, within: number): number {
  let [a, b] = [low, high];
  let x1 = a + GOLDEN * (b - a);
  let x2 = b - GOLDEN * (b - a);
  let [f1, f2] = [f(x1), f(x2)];
  for (let i = 0; i < 120 && b - a > within; i++) {
    if (f1 > f2) {
      b = x2;
      [x2, f2] = [x1, f1];
      x1 = a + GOLDEN * (b - a);
      f1 = f(x1);
    } else {
      a = x1;
      [x1, f1] = [x2, f2];
      x2 = b - GOLDEN * (b - a);
      f2 = f(x2);
    }
  }
  return f1 > f2 ? x1 : x2;
}
