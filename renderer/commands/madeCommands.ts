/** What comes back from the metal, shown on the bench; the views of it open by the table of views. */
import { isMade, overlays, showSinceDrawing } from '../readings/overlay.svelte.ts';
import type { Command } from './command.ts';

/** Arrows on the bench from where the drawing put each place to where it stands, and off again. */
const moves: Command = {
  id: 'made-moves',
  group: 'movement',
  says: (bench) => (overlays.of(bench) ? 'Hide what moved' : 'Show what moved'),
  describes: 'Arrows from the places as drawn to those as made, enlarged',
  keys: ['Shift+M'],
  possible: (bench) => overlays.of(bench) !== undefined || isMade(bench.document.movement),
  run: (bench) => {
    if (overlays.of(bench)) {
      overlays.hide();
      return;
    }
    bench.hand.leaveView();
    bench.looking.show('bench');
    showSinceDrawing(bench);
  },
};

export const madeCommands = { moves } satisfies Record<string, Command>;
