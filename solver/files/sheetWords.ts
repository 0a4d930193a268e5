/** The sentences that files carry and that others make: this room tells what it needs, and is handed them. */
import type { Movement } from '../movement/schema.ts';
import type { PlacedMovement } from '../planting/placed.ts';
import type { CuttingData } from '../teeth/cutting/index.ts';

/** What is said of a document on its sheets and pages. */
export interface SheetWords {
  /** The state of the planting in whole sentences. */
  readonly planting: (placed: PlacedMovement) => string;
  /** The cutter for a wheel, with size and range. */
  readonly cutter: (data: CuttingData) => string;
  /** The first way to divide for a wheel, exact or nearest. */
  readonly dividing: (data: CuttingData) => string;
  /** Cautions that stand with every table of cutting. */
  readonly cuttingCautions: string;
}

/** Gives a document's words; the same document has the same ones. */
export type SheetSpeech = (movement: Movement) => SheetWords;
