/** Corners of plates, walls and openings, by keys. */
import { focusHandle } from '../state/outlineWork.svelte.ts';
import type { Command } from './command.ts';

export const outlineCommands = {
  addCorner: {
    id: 'addCorner',
    group: 'change',
    says: 'Add a corner',
    describes: 'Add a corner to the chosen side of an outline',
    keys: ['E', 'Insert'],
    possible: ({ outlines, face }) => face === 'bench' && ['corner', 'side'].includes(outlines.handle?.kind ?? ''),
    run: ({ outlines }) => {
      outlines.addCorner();
      requestAnimationFrame(() => focusHandle(outlines.handle));
    },
  },
  removeCorner: {
    id: 'removeCorner',
    group: 'change',
    says: 'Remove the corner',
    describes: 'Remove the chosen corner of an outline',
    keys: ['Delete', 'Backspace'],
    possible: ({ outlines, face }) => face === 'bench' && outlines.handle?.kind === 'corner',
    run: ({ outlines }) => {
      outlines.removeCorner();
      requestAnimationFrame(() => focusHandle(outlines.handle));
    },
  },
} satisfies Record<string, Command>;
