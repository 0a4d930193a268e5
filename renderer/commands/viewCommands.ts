/** How the movement is looked at: fit, zoom, look, unit, density, faces, the list of keys. */

import type { Bench } from '../state/bench.svelte.ts';
import { LOOKS } from '../state/looks.ts';
import { panBy, zoomAt } from '../state/view.ts';
import type { Command } from './command.ts';

const always = (): boolean => true;
const onBench = (bench: Bench): boolean => bench.face === 'bench';
/** One press of a zoom key, and how far an arrow key moves the sheet, CSS pixels. */
const ZOOM_STEP = 1.25;
const PAN_STEP = 40;

function zoomBy(bench: Bench, factor: number): void {
  const { width, height } = bench.view;
  bench.view = zoomAt(bench.view, { x: width / 2, y: height / 2 }, factor);
}

const pan = (id: string, key: string, says: string, dx: number, dy: number): Command => ({
  id,
  group: 'view',
  says,
  describes: `Move the sheet: ${says.toLowerCase()}`,
  keys: [key],
  // Arrows move what is chosen; the sheet moves when nothing is.
  possible: (bench) => onBench(bench) && bench.chosen.length === 0 && !bench.settingDown,
  run: (bench) => {
    bench.view = panBy(bench.view, dx, dy);
  },
});

/** The one wheel that is chosen, or the first on the arbor that is. */
const chosenWheel = ({ chosen, movement }: Bench) =>
  chosen.length === 1
    ? movement.wheels.find(({ id, arbor }) => id === chosen[0] || arbor === chosen[0])?.id
    : undefined;

export const viewCommands = {
  fit: {
    id: 'fit',
    group: 'view',
    says: 'Fit',
    describes: 'Show the whole movement',
    keys: ['F', '0'],
    possible: onBench,
    run: (bench) => bench.fit(),
  },
  fitChosen: {
    id: 'fitChosen',
    group: 'view',
    says: 'Zoom to it',
    describes: 'Show what is chosen, large',
    keys: ['Shift+F'],
    possible: (bench) => onBench(bench) && bench.chosen.length > 0,
    run: (bench) => bench.fitChosen(),
  },
  zoomIn: {
    id: 'zoomIn',
    group: 'view',
    says: 'Closer',
    describes: 'Zoom in',
    keys: ['+', '='],
    possible: onBench,
    run: (bench) => zoomBy(bench, ZOOM_STEP),
  },
  zoomOut: {
    id: 'zoomOut',
    group: 'view',
    says: 'Further',
    describes: 'Zoom out',
    keys: ['-'],
    possible: onBench,
    run: (bench) => zoomBy(bench, 1 / ZOOM_STEP),
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
    possible: (bench) => bench.density > 0,
    run: (bench) => {
      bench.density = Math.max(0, bench.density - 0.2);
    },
  },
  moreContext: {
    id: 'moreContext',
    group: 'view',
    says: 'More lines',
    describes: 'Toward full context',
    keys: [']'],
    possible: (bench) => bench.density < 1,
    run: (bench) => {
      bench.density = Math.min(1, bench.density + 0.2);
    },
  },
  otherLook: {
    id: 'otherLook',
    group: 'view',
    says: (bench) => LOOKS[bench.look === 'paper' ? 'layoutBlue' : 'paper'],
    describes: 'Change between paper and layout blue',
    keys: ['L'],
    possible: always,
    run: (bench) => {
      bench.look = bench.look === 'paper' ? 'layoutBlue' : 'paper';
    },
  },
  otherUnit: {
    id: 'otherUnit',
    group: 'view',
    says: (bench) => (bench.movement.display.unit === 'mm' ? 'mm' : 'inch'),
    describes: 'Show lengths in millimetres or inches',
    keys: ['U'],
    possible: always,
    run: (bench) => {
      const unit = bench.movement.display.unit === 'mm' ? 'inch' : 'mm';
      const display = { ...bench.movement.display, unit };
      bench.change(`show ${unit}`, [{ kind: 'describe', set: { display } }]);
    },
  },
  rehearse: {
    id: 'rehearse',
    group: 'view',
    says: 'Rehearsal',
    describes: 'Turn the train and read the dials',
    keys: ['R'],
    possible: (bench) => !bench.rehearsing && bench.movement.wheels.length > 0,
    run: (bench) => {
      bench.face = 'bench';
      bench.rehearsing = true;
    },
  },
  counts: {
    id: 'counts',
    group: 'movement',
    says: 'Find counts…',
    describes: 'Find tooth counts for a wanted period',
    keys: ['N'],
    possible: (bench) => !bench.countsShown,
    run: (bench) => {
      bench.leaveView();
      bench.countsShown = true;
    },
  },
  cutting: {
    id: 'cutting',
    group: 'view',
    says: 'How it is cut',
    describes: 'Cutting and dividing of the chosen wheel',
    keys: ['K'],
    possible: (bench) => chosenWheel(bench) !== undefined,
    run: (bench) => {
      bench.cuttingShown = chosenWheel(bench);
    },
  },
  power: {
    id: 'power',
    group: 'movement',
    says: 'Weight, spring, pendulum…',
    describes: 'What drives the movement, and what it beats',
    keys: ['Shift+W'],
    possible: (bench) => !bench.powerShown,
    run: (bench) => {
      bench.leaveView();
      bench.powerShown = true;
    },
  },
  guide: {
    id: 'guide',
    group: 'movement',
    says: 'Guided build',
    describes: 'Build a train of four arbors, step by step',
    possible: (bench) => bench.guide !== 'on',
    run: async (bench) => {
      await bench.session?.begin();
      // The maker may have kept what he had: then the guide goes on with that.
      bench.face = 'bench';
      bench.guide = 'on';
    },
  },
  keys: {
    id: 'keys',
    group: 'help',
    says: 'Keys',
    describes: 'Show this list of keys',
    keys: ['?', 'F1'],
    possible: always,
    run: (bench) => {
      bench.keysShown = true;
    },
  },
} satisfies Record<string, Command>;
