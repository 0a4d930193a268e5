/** The centre line of a movement: the line that its plates are laid out about. */
import { z } from 'zod';
import type { Known } from './known.ts';
import { angleDeg, place } from './quantities.ts';

/** A line through a place; `angle` is its direction, degrees anticlockwise from +x, and 90 is upright. */
export const centreLine = z.looseObject({ through: place.default([0, 0]), angle: angleDeg.default(90) });

type CentreLine = Known<z.output<typeof centreLine>>;

/** The centre line as rules are taken from it: upright through the origin where the document has none. */
export function centreLineOf({ centreLine: stated }: { readonly centreLine?: CentreLine }): {
  readonly through: { readonly x: number; readonly y: number };
  /** Unit vector up the line. */
  readonly along: { readonly x: number; readonly y: number };
} {
  const { through, angle }: CentreLine = stated ?? { through: [0, 0], angle: 90 };
  return { through: { x: through[0], y: through[1] }, along: unitAt(angle) };
}

/** Unit vector of an angle in degrees; quarter turns without rounding, so that upright is upright. */
function unitAt(angle: number): { readonly x: number; readonly y: number } {
  const quarters = angle / 90;
  if (Number.isInteger(quarters)) {
    const [x, y] = QUARTERS[((quarters % 4) + 4) % 4] ?? [0, 1];
    return { x, y };
  }
  const radians = (angle * Math.PI) / 180;
  return { x: Math.cos(radians), y: Math.sin(radians) };
}

const QUARTERS = [
  [1, 0],
  [0, 1],
  [-1, 0],
  [0, -1],
] as const;
