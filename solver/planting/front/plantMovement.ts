/** Plants a movement: the one function that everything downstream starts from. */
import type { Movement } from '../../movement/schema.ts';
import { HOLDS } from '../../tolerances.ts';
import { plantNetwork } from '../kernel/plant.ts';
import type { NetworkResult } from '../network.ts';
import type { PlacedMovement } from '../placed.ts';
import type { PlantingGround } from './ground.ts';
import { networkOf } from './networkOf.ts';
import { PlantedMovement } from './planted.ts';

/**
 * Gives every arbor, post and mark its place.
 *
 * @param warm an earlier planting of the same movement or a like one: it may start the iteration, never choose a branch
 * @returns places, rule outcomes and disagreements; most are computed when they are first read
 * @throws never for a movement that reads as valid: what cannot be planted is told as loose or contested
 */
export function plantMovement(movement: Movement, warm?: PlacedMovement): PlacedMovement {
  const ground = networkOf(movement);
  return new PlantedMovement(ground, plantNetwork(ground.network, startFrom(ground, warm)));
}

/** The same planting where every rule holds, those that check included; undefined where one does not. */
export function plantAsSketched(movement: Movement, warm: PlacedMovement): PlacedMovement | undefined {
  const ground = networkOf(movement);
  const result = plantNetwork(ground.network, startFrom(ground, warm));
  const holds = result.missBy.every((miss) => miss <= HOLDS);
  return holds ? new PlantedMovement(ground, result) : undefined;
}

/** An earlier result serves as a start where it has the same points in the same order. */
function startFrom(ground: PlantingGround, warm: PlacedMovement | undefined): NetworkResult | undefined {
  if (!(warm instanceof PlantedMovement)) return undefined;
  const earlier = warm.index.ground.pointIds;
  const isSame = earlier.length === ground.pointIds.length && earlier.every((id, k) => id === ground.pointIds[k]);
  return isSame ? warm.index.result : undefined;
}
