/** The sentences that files carry and that others make: this room tells what it needs, and is handed them. */
import type { CrossingTold, MarkingLocus, MarkingOptions, MarkingPlan, MarkingStep } from '../marking/index.ts';
import type { Movement } from '../movement/schema.ts';
import type { PlacedMovement } from '../planting/placed.ts';
import type { CuttingData } from '../teeth/cutting/index.ts';

/** What is said of a document on its sheets and pages. */
export interface SheetWords {
  /** The state of the planting in whole sentences. */
  readonly planting: (placed: PlacedMovement) => string;
  /** Whether it is buildable as drawn, and what is against it, a sentence each. */
  readonly buildable: (placed: PlacedMovement) => readonly string[];
  /** The marking-out steps of a plate's face as a text of their own. */
  readonly steps: (placed: PlacedMovement, options: MarkingOptions) => string;
  /** What everything on a face is measured from. */
  readonly datum: (plan: MarkingPlan) => string;
  /** One setting or line of a step, as a phrase. */
  readonly locus: (locus: MarkingLocus, plan: MarkingPlan) => string;
  /** Which crossing is meant, as a phrase. */
  readonly crossing: (crossing: CrossingTold) => string;
  /** A distance that checks a step, as a phrase. */
  readonly check: (check: NonNullable<MarkingStep['check']>) => string;
  /** How exact the step is, what else would strike it, and what is to be heeded; whole sentences. */
  readonly notes: (step: MarkingStep, plan: MarkingPlan) => readonly string[];
  /** What changed since an earlier revision, a sentence each. */
  readonly changes: (earlier: Movement) => readonly string[];
  /** The cutter for a wheel, with size and range. */
  readonly cutter: (data: CuttingData) => string;
  /** The first way to divide for a wheel, exact or nearest. */
  readonly dividing: (data: CuttingData) => string;
  /** Cautions that stand with every table of cutting. */
  readonly cuttingCautions: string;
}

/** Gives a document's words; the same document has the same ones. */
export type SheetSpeech = (movement: Movement) => SheetWords;
