/** How the movement is looked at: fit, zoom, look, unit, density, faces, the list of keys. */

import type { Bench } from '../state/bench.ts';
import { LOOKS } from '../state/looks.ts';
import type { Command } from './command.ts';

const always = (): boolean => true;
const onBench = (bench: Bench): boolean => bench.looking.face === 'bench';
/** One press of a zoom key, and how far an arrow key moves the sheet, CSS pixels. */
const ZOOM_STEP = 1.25;
const PAN_STEP = 40;

const pan = (id: string, key: string, says: string, dx: number, dy: number): Command => ({
  id,
  group: 'view',
  says,
  describes: `Move the sheet: ${says.toLowerCase()}`,
  keys: [key],
  // Arrows move what is chosen; the sheet moves when nothing is.
  possible: (bench) => onBench(bench) && bench.looking.chosen.length === 0 && !bench.hand.settingDown,
  run: (bench) => bench.looking.pan(dx, dy),
});

export const viewCommands = {
  fit: {
    id: 'fit',
    group: 'view',
    says: 'Fit',
    describes: 'Show the whole movement',
    keys: ['F'],
    possible: onBench,
    run: (bench) => bench.fit(),
  },
  fitChosen: {
    id: 'fitChosen',
    group: 'view',
    says: 'Zoom to it',
    describes: 'Show what is chosen, large',
    keys: ['Shift+F'],
    possible: (bench) => onBench(bench) && bench.looking.chosen.length > 0,
    run: (bench) => bench.fitChosen(),
  },
  zoomIn: {
    id: 'zoomIn',
    group: 'view',
    says: 'Closer',
    describes: 'Zoom in',
    keys: ['+', '='],
    possible: onBench,
    run: (bench) => bench.looking.zoom(ZOOM_STEP),
  },
  zoomOut: {
    id: 'zoomOut',
    group: 'view',
    says: 'Further',
    describes: 'Zoom out',
    keys: ['-'],
    possible: onBench,
    run: (bench) => bench.looking.zoom(1 / ZOOM_STEP),
  },
  sheetLeft: pan('sheetLeft', 'left', 'To the left', PAN_STEP, 0),
  sheetRight: pan('sheetRight', 'right', 'To the right', -PAN_STEP, 0),
  sheetUp: pan('sheetUp', 'up', 'Upward', 0, PAN_STEP),
  sheetDown: pan('sheetDown', 'down', 'Downward', 0, -PAN_STEP),
  lessContext: {
    id: 'lessContext',
    group: 'view',
    says: 'Fewer lines',
    describes: 'Toward numbers only',
    keys: ['['],
    possible: (bench) => bench.looking.density > 0,
    run: (bench) => bench.looking.draw(bench.looking.density - 0.2),
  },
  moreContext: {
    id: 'moreContext',
    group: 'view',
    says: 'More lines',
    describes: 'Toward full context',
    keys: [']'],
    possible: (bench) => bench.looking.density < 1,
    run: (bench) => bench.looking.draw(bench.looking.density + 0.2),
  },
  otherLook: {
    id: 'otherLook',
    group: 'view',
    says: (bench) => LOOKS[bench.looking.look === 'paper' ? 'layoutBlue' : 'paper'],
    describes: 'Change between paper and layout blue',
    keys: ['L'],
    possible: always,
    run: (bench) => bench.looking.wear(bench.looking.look === 'paper' ? 'layoutBlue' : 'paper'),
  },
  otherUnit: {
    id: 'otherUnit',
    group: 'view',
    says: (bench) => (bench.document.movement.display.unit === 'mm' ? 'mm' : 'inch'),
    describes: 'Show lengths in millimetres or inches',
    keys: ['U'],
    possible: always,
    run: (bench) => {
      const unit = bench.document.movement.display.unit === 'mm' ? 'inch' : 'mm';
      const display = { ...bench.document.movement.display, unit };
      bench.change(`show ${unit}`, [{ kind: 'describe', set: { display } }]);
    },
  },
  guide: {
    id: 'guide',
    group: 'movement',
    says: 'Guided build',
    describes: 'Build a train of four arbors, step by step',
    possible: (bench) => bench.looking.guide !== 'on',
    run: async (bench) => {
      await bench.document.session?.begin();
      // The maker may have kept what he had: then the guide goes on with that.
      bench.looking.show('bench');
      bench.looking.guideTo('on');
    },
  },
  keys: {
    id: 'keys',
    group: 'help',
    says: 'Keys',
    describes: 'Show this list of keys',
    keys: ['?', 'F1'],
    possible: always,
    run: (bench) => bench.looking.listKeys(true),
  },
} satisfies Record<string, Command>;
