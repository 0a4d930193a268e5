/** What comes back from the metal: readings, changes between states, errors before cutting, fits. */
import { MADE_PARTS, type MadePart } from '../../made/madeParts.ts';
import type { Bench } from '../bench.svelte.ts';
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

export const madeCommands = {
  readings: opens('readings', 'Enter readings and drilled places, and see what they change', 'Shift+R'),
  changes: opens('changes', 'Compare with an earlier file or day'),
  errors: opens('errors', 'What errors in the lengths do, before anything is cut'),
  fits: opens('fits', 'Fits of shafts, pivots and bushes'),
} satisfies Record<string, Command>;
