/** Moves of some hundredths drawn so that they can be seen: by how much they are enlarged, and where their tips come. */
import type { PointMove } from '../../solver/made/index.ts';

export const ENLARGED = [1, 10, 100, 1000] as const;

/** Factor (1, 2 or 5 times a power of ten, never below 1) that shows a move of so many mm about `wanted` pixels long. */
export function fittingTimes(amount: number, scale: number, wanted: number): number {
  if (!(amount > 0) || !(scale > 0)) return 1;
  const most = wanted / (amount * scale);
  const ten = 10 ** Math.floor(Math.log10(most));
  return Math.max(1, [5, 2, 1].map((each) => each * ten).find((each) => each <= most * (1 + 1e-9)) ?? ten);
}

/** Tip of an enlarged move, mm. */
export function enlargedTip({ from, to }: PointMove, times: number): { readonly x: number; readonly y: number } {
  return { x: from.x + (to.x - from.x) * times, y: from.y + (to.y - from.y) * times };
}
