/** The four faces of the movement, each by its letter: a digit belongs to the values that are typed. */
import { FACES, type WindowFace } from '../state/looking.svelte.ts';
import type { Command } from './command.ts';

const DESCRIBES: Readonly<Record<WindowFace, string>> = {
  bench: 'The bench: the plan of the train',
  levels: 'Levels: section and tilted view of the stack',
  steps: 'Marking-out steps, one at a time',
  sheets: 'Sheets and files for the workshop',
};

const shows = (face: WindowFace, key: string): Command => ({
  id: `face-${face}`,
  group: 'view',
  says: FACES[face],
  describes: DESCRIBES[face],
  keys: [key],
  possible: (bench) => bench.looking.face !== face,
  run: (bench) => {
    bench.hand.settingDown?.down.putAway();
    bench.looking.show(face);
  },
});

export const faceCommands = {
  faceBench: shows('bench', 'T'),
  faceLevels: shows('levels', 'V'),
  faceSteps: shows('steps', 'S'),
  faceSheets: shows('sheets', 'H'),
} satisfies Record<string, Command>;
