/** The sentences that files carry and that others make: this room tells what it needs, and is handed them. */
import type { PlacedMovement } from '../planting/placed.ts';

/** Who speaks on sheets and pages. */
export interface SheetWords {
  /** The state of the planting in whole sentences. */
  readonly planting: (placed: PlacedMovement) => string;
}
