/** Small linkages to drag, and how far a point stands from a place. */
import { applyEdit, type Edit } from '../../solver/movement/index.ts';
import type { Movement } from '../../solver/movement/schema.ts';
import type { PlacedMovement } from '../../solver/planting/placed.ts';
import { arbor, buildMovement, held, placeOf, type RuleInput } from './buildMovement.ts';

/** The movement after an edit that must apply. */
export function applied(movement: Movement, edit: Edit): Movement {
  const result = applyEdit(movement, edit);
  if (result.kind === 'refused') throw new Error(JSON.stringify(result.why));
  return result.movement;
}

/** How far a point stands from a place, mm. */
export const off = (placed: PlacedMovement, id: string, x: number, y: number): number =>
  Math.hypot(placeOf(placed, id).x - x, placeOf(placed, id).y - y);

/** Links about A, which is held. */
export const linkage = (rules: readonly RuleInput[]): Movement =>
  buildMovement({
    arbors: [arbor('A', 0, 0), arbor('P', 30, 1), arbor('Q', 50, 16), arbor('R', 40, 40)],
    rules: [held('a', 'A', 0, 0), ...rules],
  });
