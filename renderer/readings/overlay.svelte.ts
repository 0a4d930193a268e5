/** Two states laid over each other on the bench: what moved between them, enlarged. Kept by the window, not by the document. */

import { movementAsOf } from '../../solver/made/index.ts';
import type { Movement } from '../../solver/movement/schema.ts';
import { plantMovement } from '../../solver/planting/index.ts';
import type { PlacedMovement } from '../../solver/planting/placed.ts';
import type { Bench } from '../state/bench.ts';

/** Two states that are compared on the bench. */
export interface Overlay {
  /** "Since the drawing", "2026-05-01 to 2026-05-03". */
  readonly says: string;
  readonly before: PlacedMovement;
  /** The later state; the bench as it stands, and follows, when absent. */
  readonly after?: PlacedMovement | undefined;
}

/** The overlay that is shown, if any; it goes with its document. */
class Overlays {
  private held = $state.raw<{ readonly overlay: Overlay; readonly document: number } | undefined>(undefined);
  /** How many times as far moves are shown; 0 so that they can be seen at the zoom there is. */
  times = $state(0);

  enlarge(times: number): void {
    this.times = times;
  }

  show(bench: Bench, overlay: Overlay): void {
    this.held = { overlay, document: bench.document.opened };
  }

  hide(): void {
    this.held = undefined;
  }

  /** What is shown over this bench; nothing once another document was opened. */
  of(bench: Bench): Overlay | undefined {
    return this.held?.document === bench.document.opened ? this.held.overlay : undefined;
  }
}

export const overlays = new Overlays();

/** Shows what all that was read and made has moved. */
export function showSinceDrawing(bench: Bench): void {
  overlays.times = 0;
  overlays.show(bench, {
    says: 'As drawn → as it stands now',
    before: plantMovement(movementAsOf(bench.document.movement, 'drawn')),
  });
}

/** Does anything in the movement stand otherwise than drawn, by what was read or made? */
export const isMade = ({ readings, made }: Movement): boolean => readings.length > 0 || made.length > 0;
