/** Searching places for all that is loose. A public face of clearance. */
export {
  type FindPlantingOptions,
  type FindPlantingProgress,
  type FoundPlantings,
  findPlanting,
  findPlantingSteps,
  type NoPlanting,
  type PlantingAnswer,
} from './findPlanting.ts';
