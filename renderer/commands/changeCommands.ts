/** Changes of the movement that need no pointer: undo, redo, delete, the other crossing, nudging with the arrows. */
import { nudgeChosen } from '../gestures/nudge.ts';
import { portOf } from '../gestures/portOf.ts';
import { chooseOtherCrossing, otherCrossingOf } from '../offers/crossings.ts';
import type { Bench } from '../state/bench.ts';
import type { Command } from './command.ts';

const onBenchWithSome = (bench: Bench): boolean =>
  bench.looking.face === 'bench' && bench.looking.chosen.length > 0 && !bench.hand.settingDown;

/** One press of an arrow key moves by so much, mm; with Shift ten times as far. */
const NUDGE = 0.1;

const nudge = (id: string, key: string, says: string, dx: number, dy: number): Command => ({
  id,
  group: 'change',
  says,
  describes: `Move what is chosen ${says.toLowerCase()}`,
  keys: [key],
  possible: onBenchWithSome,
  run: (bench) => nudgeChosen(portOf(bench), dx, dy),
});

export const changeCommands = {
  undo: {
    id: 'undo',
    group: 'change',
    says: 'undo',
    describes: 'Undo the last change',
    keys: ['Mod+Z'],
    possible: (bench) => bench.document.undoSays !== undefined,
    run: (bench) => bench.undo(),
  },
  redo: {
    id: 'redo',
    group: 'change',
    says: 'redo',
    describes: 'Do again what was undone',
    keys: ['Mod+Shift+Z', 'Mod+Y'],
    possible: (bench) => bench.document.redoSays !== undefined,
    run: (bench) => bench.redo(),
  },
  remove: {
    id: 'remove',
    group: 'change',
    says: 'Delete',
    describes: 'Delete what is chosen, with its rules',
    keys: ['Delete', 'Backspace'],
    possible: (bench) => bench.looking.chosen.length > 0 && !bench.hand.settingDown,
    run: (bench) => {
      const names = bench.looking.chosen.map(bench.nameOf).join(', ');
      bench.change(`delete ${names}`, [{ kind: 'remove', ids: bench.looking.chosen }], { chosen: [] });
    },
  },
  chooseAll: {
    id: 'chooseAll',
    group: 'change',
    says: 'Choose all',
    describes: 'Choose every arbor, post and mark',
    keys: ['Mod+A'],
    possible: (bench) => bench.derived.placed.places.size > 0,
    run: (bench) => bench.looking.choose([...bench.derived.placed.places.keys()]),
  },
  otherCrossing: {
    id: 'otherCrossing',
    group: 'rules',
    says: 'Other crossing',
    describes: 'Put the arbor at the other crossing of its two arcs',
    keys: ['X'],
    possible: (bench) => otherCrossingOf(bench) !== undefined,
    run: chooseOtherCrossing,
  },
  nudgeLeft: nudge('nudgeLeft', 'left', 'To the left', -NUDGE, 0),
  nudgeRight: nudge('nudgeRight', 'right', 'To the right', NUDGE, 0),
  nudgeUp: nudge('nudgeUp', 'up', 'Upward', 0, NUDGE),
  nudgeDown: nudge('nudgeDown', 'down', 'Downward', 0, -NUDGE),
  nudgeFarLeft: nudge('nudgeFarLeft', 'Shift+left', 'Ten times as far to the left', -10 * NUDGE, 0),
  nudgeFarRight: nudge('nudgeFarRight', 'Shift+right', 'Ten times as far to the right', 10 * NUDGE, 0),
  nudgeFarUp: nudge('nudgeFarUp', 'Shift+up', 'Ten times as far upward', 0, 10 * NUDGE),
  nudgeFarDown: nudge('nudgeFarDown', 'Shift+down', 'Ten times as far downward', 0, -10 * NUDGE),
} satisfies Record<string, Command>;
