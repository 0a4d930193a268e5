/** Setting down: one command for each thing that can be set down, and the one that keeps it. */

import { portOf } from '../gestures/portOf.ts';
import { DOWN_KINDS } from '../gestures/setDownDrafts.ts';
import { SetDownGesture } from '../gestures/settingDown.ts';
import type { Bench } from '../state/bench.ts';
import type { DownKind } from '../state/underWay.ts';
import type { Command } from './command.ts';

/** One letter each; none is taken by another command. */
const KEYS: Readonly<Record<DownKind, string>> = {
  wheel: 'W',
  arbor: 'A',
  pipe: 'I',
  post: 'P',
  mark: 'M',
  plate: 'B',
  wall: 'C',
  opening: 'O',
};

/** Begins to set down one kind of thing. */
export function beginSettingDown(bench: Bench, kind: DownKind): void {
  bench.hand.settingDown?.down.putAway();
  bench.looking.show('bench');
  new SetDownGesture(portOf(bench), kind);
  bench.looking.tell('done', 'Point at the place and press, or type the numbers on the right. Esc puts it away.');
}

const setDown = (kind: DownKind): Command => ({
  id: `setDown ${kind}`,
  group: 'set down',
  says: DOWN_KINDS[kind],
  describes: `Set down: ${DOWN_KINDS[kind].toLowerCase()}`,
  keys: [KEYS[kind]],
  possible: () => true,
  run: (bench) => beginSettingDown(bench, kind),
});

export const setDownCommands = {
  setDownWheel: setDown('wheel'),
  setDownArbor: setDown('arbor'),
  setDownPipe: setDown('pipe'),
  setDownPost: setDown('post'),
  setDownMark: setDown('mark'),
  setDownPlate: setDown('plate'),
  setDownWall: setDown('wall'),
  setDownOpening: setDown('opening'),
  keepSetDown: {
    id: 'keepSetDown',
    group: 'set down',
    says: 'Set it down',
    describes: 'Set down what is shown, where it is shown',
    keys: ['Enter'],
    possible: (bench) => bench.hand.settingDown !== undefined,
    run: (bench) => {
      bench.hand.settingDown?.down.keep();
    },
  },
} satisfies Record<string, Command>;
