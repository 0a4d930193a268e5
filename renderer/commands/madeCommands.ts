/** What comes back from the metal: readings, changes between states, errors before cutting, fits. */
import { MADE_PARTS, type MadePart } from '../readings/madeParts.ts';
import { isMade, overlays, showSinceDrawing } from '../readings/overlay.svelte.ts';
import type { Bench } from '../state/bench.svelte.ts';
import type { Command } from './command.ts';

const opens = (part: MadePart, describes: string, key?: string): Command => ({
  id: `made-${part}`,
  group: 'movement',
  says: `${MADE_PARTS[part]}…`,
  describes,
  ...(key === undefined ? {} : { keys: [key] }),
  possible: (bench: Bench) => bench.madeShown !== part,
  run: (bench: Bench) => {
    bench.leaveView();
    bench.madeShown = part;
  },
});

/** Arrows on the bench from where the drawing put each place to where it stands, and off again. */
const moves: Command = {
  id: 'made-moves',
  group: 'movement',
  says: (bench) => (overlays.of(bench) ? 'Hide what moved' : 'Show what moved'),
  describes: 'Arrows from the places as drawn to those as made, enlarged',
  keys: ['Shift+M'],
  possible: (bench) => overlays.of(bench) !== undefined || isMade(bench.movement),
  run: (bench) => {
    if (overlays.of(bench)) {
      overlays.hide();
      return;
    }
    bench.leaveView();
    bench.show('bench');
    showSinceDrawing(bench);
  },
};

export const madeCommands = {
  readings: opens('readings', 'Enter readings and drilled places, and see what they change', 'Shift+R'),
  changes: opens('changes', 'Compare with an earlier file or day'),
  errors: opens('errors', 'What errors in the lengths do, before anything is cut'),
  moves,
  fits: opens('fits', 'Fits of shafts, pivots and bushes'),
} satisfies Record<string, Command>;
