/** All commands of the window, each defined once. */

import { slideCommands } from '../clearance/slideCommands.ts';
import { isCovered, openCommands } from '../frame/views.ts';
import { chooseHandle, chosenHandle, focusHandle } from '../gestures/outline/chosenOutline.ts';
import { portOf } from '../gestures/portOf.ts';
import type { Bench } from '../state/bench.ts';
import { changeCommands } from './changeCommands.ts';
import type { Command } from './command.ts';
import { copyCommands } from './copyCommands.ts';
import { faceCommands } from './faceCommands.ts';
import { fileCommands } from './fileCommands.ts';
import { madeCommands } from './madeCommands.ts';
import { outlineCommands } from './outlineCommands.ts';
import { setDownCommands } from './setDownCommands.ts';
import { viewCommands } from './viewCommands.ts';

/** Esc goes back one step: a gesture, a view over the bench, what is being set down, the rehearsal, a corner, what is chosen. */
const back: Command = {
  id: 'back',
  group: 'change',
  says: 'Back',
  describes: 'Give up what was begun; then choose nothing',
  keys: ['Escape'],
  possible: () => true,
  run: (bench) => {
    const { hand } = bench;
    const port = portOf(bench);
    if (hand.abandon()) return;
    if (isCovered(bench)) hand.leaveView();
    else if (hand.settingDown) hand.settingDown.down.putAway();
    else if (hand.leaveView()) return;
    else if (chosenHandle(port)) {
      chooseHandle(port, undefined);
      focusHandle(undefined);
    } else bench.looking.choose([]);
  },
};

export const commands = {
  ...fileCommands,
  // Before the rest of the changes: Delete means the chosen corner before it means the whole plate.
  ...outlineCommands,
  ...changeCommands,
  ...copyCommands,
  ...setDownCommands,
  ...faceCommands,
  ...viewCommands,
  ...madeCommands,
  ...openCommands,
  ...slideCommands,
  back,
} satisfies Record<string, Command>;

/** The same as a list, in the order in which they are shown. */
export const commandList: readonly Command[] = Object.values(commands);

/** The commands of a bench's menu: what is possible at the place that was pressed. */
export function possibleOf(bench: Bench, ids: readonly (keyof typeof commands)[]): Command[] {
  return ids.map((id) => commands[id]).filter((command) => command.possible(bench));
}
