/** Corners of plates, walls and openings, by keys. */
import { addCornerAt, chosenHandle, focusHandle, removeChosenCorner } from '../gestures/outline/chosenOutline.ts';
import { portOf } from '../gestures/portOf.ts';
import type { Bench } from '../state/bench.ts';
import type { Command } from './command.ts';

/** Kind of what is chosen of an outline on the bench. */
const kindOnBench = (bench: Bench) => (bench.looking.face === 'bench' ? chosenHandle(portOf(bench))?.kind : undefined);

/** The keys go on from the corner that is chosen now, once it is drawn. */
function focusChosen(bench: Bench): void {
  requestAnimationFrame(() => focusHandle(chosenHandle(portOf(bench))));
}

export const outlineCommands = {
  addCorner: {
    id: 'addCorner',
    group: 'change',
    says: 'Add a corner',
    describes: 'Add a corner to the chosen side of an outline',
    keys: ['E', 'Insert'],
    possible: (bench) => ['corner', 'side'].includes(kindOnBench(bench) ?? ''),
    run: (bench) => {
      const port = portOf(bench);
      addCornerAt(port, chosenHandle(port));
      focusChosen(bench);
    },
  },
  removeCorner: {
    id: 'removeCorner',
    group: 'change',
    says: 'Remove the corner',
    describes: 'Remove the chosen corner of an outline',
    keys: ['Delete', 'Backspace'],
    possible: (bench) => kindOnBench(bench) === 'corner',
    run: (bench) => {
      removeChosenCorner(portOf(bench));
      focusChosen(bench);
    },
  },
} satisfies Record<string, Command>;
