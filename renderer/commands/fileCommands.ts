/** New, open, save: what the shell does for the movement. */
import type { Command } from './command.ts';

const always = (): boolean => true;

export const fileCommands = {
  newMovement: {
    id: 'newMovement',
    group: 'movement',
    says: 'New movement',
    describes: 'Begin with an empty bench',
    keys: ['Mod+N'],
    possible: always,
    run: (bench) => bench.document.session?.begin(),
  },
  open: {
    id: 'open',
    group: 'movement',
    says: 'Open…',
    describes: 'Open a movement from a file',
    keys: ['Mod+O'],
    possible: always,
    run: (bench) => bench.document.session?.open(),
  },
  save: {
    id: 'save',
    group: 'movement',
    says: 'Save',
    describes: 'Save the movement to its file',
    keys: ['Mod+S'],
    possible: always,
    run: (bench) => bench.document.session?.save(),
  },
  saveAs: {
    id: 'saveAs',
    group: 'movement',
    says: 'Save as…',
    describes: 'Save the movement to another file',
    keys: ['Mod+Shift+S'],
    possible: always,
    run: (bench) => bench.document.session?.saveAs(),
  },
  exportSheets: {
    id: 'exportSheets',
    group: 'movement',
    says: 'Write the files…',
    describes: 'Write all sheets, drawings, drill programs and tables into a folder',
    keys: ['Mod+E'],
    possible: (bench) => bench.document.movement.arbors.length > 0,
    run: (bench) => bench.document.session?.exportSheets(),
  },
  handOver: {
    id: 'handOver',
    group: 'movement',
    says: 'Hand over, one zip…',
    describes: 'Write everything for one job into one zip file',
    possible: (bench) => bench.document.movement.arbors.length > 0,
    run: (bench) => bench.document.session?.handOver(),
  },
} satisfies Record<string, Command>;
