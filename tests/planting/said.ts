/** What is said of a planting and of what disagrees in it, with plain signs. */
import type { Disagreement } from '../../solver/planting/index.ts';
import type { PlacedMovement } from '../../solver/planting/placed.ts';
import { speakerOf } from '../../solver/words/index.ts';
import { disagreementSays, plantingSays } from '../../solver/words/planting/index.ts';

/** The sentence of the strip. */
export function stateSaid(placed: PlacedMovement): string {
  return plantingSays(placed, speakerOf(placed.movement, { minus: '-' }));
}

/** The sentences of one disagreement of a movement. */
export function disagreementSaid({ movement }: Pick<PlacedMovement, 'movement'>, told: Disagreement): string {
  return disagreementSays(told, speakerOf(movement, { minus: '-' }));
}
