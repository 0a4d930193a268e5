/** All commands of the window, each defined once. */

import { clearanceCommands } from '../clearance/clearanceCommands.ts';
import type { Bench } from '../state/bench.svelte.ts';
import { focusHandle } from '../state/outlineWork.svelte.ts';
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
    if (bench.abandonGesture()) return;
    if (bench.viewShown) bench.leaveView();
    else if (bench.settingDown) bench.settingDown.putAway(bench);
    else if (bench.leaveView()) return;
    else if (bench.outlines.handle) {
      bench.outlines.choose(undefined);
      focusHandle(undefined);
    } else bench.choose([]);
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
  ...clearanceCommands,
  back,
} satisfies Record<string, Command>;

/** The same as a list, in the order in which they are shown. */
export const commandList: readonly Command[] = Object.values(commands);

/** The commands of a bench's menu: what is possible at the place that was pressed. */
export function possibleOf(bench: Bench, ids: readonly (keyof typeof commands)[]): Command[] {
  return ids.map((id) => commands[id]).filter((command) => command.possible(bench));
}
