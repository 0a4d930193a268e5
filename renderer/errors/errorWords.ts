/** Numbers of the trials as they are read: shares in parts of a hundred, and where a depth lies in its window. */
import type { ErrorsFound } from '../../solver/made/errors/index.ts';

/** A share of the trials, 0 … 1: "–", "0.3 %", "all". */
export function shareSays(share: number): string {
  if (share === 0) return '–';
  if (share === 1) return 'all';
  if (share < 0.0005) return 'under 0.1 %';
  if (share > 0.9995) return 'over 99.9 %';
  return `${(100 * share).toFixed(share > 0.995 ? 2 : 1)} %`;
}

/** Where a distance and its ± lie between the two ends of the window of its teeth, in parts of the window's width. */
export function windowParts(
  depth: ErrorsFound['depths'][number],
): { readonly at: number; readonly from: number; readonly to: number } | undefined {
  const { window, planned, triedPlusMinus } = depth;
  if (!window || window.lostAt === window.deepest) return undefined;
  const part = (distance: number): number =>
    Math.min(1, Math.max(0, (distance - window.deepest) / (window.lostAt - window.deepest)));
  const ends = [part(planned - triedPlusMinus), part(planned + triedPlusMinus)];
  return { at: part(planned), from: Math.min(...ends), to: Math.max(...ends) };
}
