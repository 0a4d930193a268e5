/** The list of keys: every command that has one, what fields and faces listen for, and what the pointer does. */
import type { ShellBridge } from '../../electron/bridge.ts';
import type { Command, CommandGroup } from './command.ts';
import { keysSay } from './keySigns.ts';
import { localKeys } from './localKeys.ts';

/** One command with its keys. */
export interface KeyLine {
  readonly key: string;
  /** Each way to press it: "Ctrl Z". */
  readonly keys: readonly string[];
  readonly says: string;
}

/** Commands that stand together. */
export interface KeySection {
  readonly heading: string;
  readonly lines: readonly KeyLine[];
}

/** All groups, in the order in which they are shown; a group that is missing here does not compile. */
const GROUPS: Readonly<Record<CommandGroup, string>> = {
  'set down': 'Set down',
  change: 'Change',
  rules: 'Rules',
  view: 'Look',
  movement: 'Movement',
  help: 'Help',
};

const BY_POINTER: readonly (readonly [string, string])[] = [
  ['Drag something loose', 'Move it; its rules hold'],
  ['Drag one of several chosen', 'Move all that are loose'],
  ['Alt while dragging', 'Suspend snapping and rounding'],
  ['Drag a corner or a side', 'Reshape a chosen plate, wall or opening'],
  ['Press a side twice', 'Add a corner there'],
  ['Press a wheel twice', 'Choose its arbor'],
  ['Right or long press', 'Menu of what lies there'],
  ['Drag the sheet', 'Move the sheet'],
  ['Shift drag', 'Choose several'],
  ['Wheel, pinch', 'Zoom'],
  ['Two fingers on a trackpad', 'Move the sheet'],
];

/** The whole list, as it is shown. */
export function keyList(commands: readonly Command[], platform: ShellBridge['platform']): readonly KeySection[] {
  const said = (keys: readonly string[]): string[] => keys.map((key) => keysSay([key], platform));
  const groups = Object.entries(GROUPS).map(([group, heading]) => ({
    heading,
    lines: commands
      .filter((command) => command.group === group && command.keys)
      .map(({ id, keys, describes }) => ({ key: id, keys: said(keys ?? []), says: describes })),
  }));
  const outlines: KeySection = {
    heading: 'On a chosen plate, wall or opening',
    lines: [
      { key: 'tab', keys: said(['Tab', 'Shift+Tab']), says: 'The next corner or side, and the one before' },
      { key: 'arrows', keys: said(['ArrowLeft', 'ArrowRight', 'ArrowUp', 'ArrowDown']), says: 'Move it' },
    ],
  };
  const local = localKeys.map(({ where, file, keys }) => ({
    heading: where,
    lines: keys.map((each, index) => ({ key: `${file} ${index}`, keys: said(each.keys), says: each.says })),
  }));
  const pointer = {
    heading: 'With the pointer',
    lines: BY_POINTER.map(([keys, says]) => ({ key: keys, keys: [keys], says })),
  };
  return [...groups, outlines, ...local, pointer];
}
