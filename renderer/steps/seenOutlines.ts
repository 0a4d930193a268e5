/** Outlines of a plate and its openings as seen on a face. */

import { type PlateView, seenOutline } from '../../solver/marking/index.ts';
import type { Movement, Outline } from '../../solver/movement/schema.ts';

/** The plate first, then its openings; of a movement without plates, nothing. */
export function seenOutlines(movement: Movement, view: PlateView): readonly Outline[] {
  const { plate } = view;
  if (!plate) return [];
  const openings = movement.openings.filter((opening) => opening.plate === plate.id).map((opening) => opening.outline);
  return [plate.outline, ...openings].map((outline) => seenOutline(view, outline));
}
