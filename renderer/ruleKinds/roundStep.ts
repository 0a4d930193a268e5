/** Round lengths to settle on. */

/** A round number of millimetres that is several reaches wide. */
export function roundStep(reach: number): number {
  return [0.1, 0.5, 1, 2, 5, 10, 50, 100].find((step) => step >= 2 * reach) ?? 1000;
}
