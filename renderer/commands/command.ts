/** A command is defined once: menus, keys and buttons ask the same `possible` and call the same `run`. */
import type { Bench } from '../state/bench.ts';

export type CommandGroup = 'movement' | 'change' | 'set down' | 'rules' | 'view' | 'help';

/** Something the maker can ask for, with its words, its keys and when it is possible. */
export interface Command {
  readonly id: string;
  readonly group: CommandGroup;
  /** The word on a button or in a menu. */
  readonly says: string | ((bench: Bench) => string);
  /** One short sentence for the list of keys. */
  readonly describes: string;
  /** "Mod+Z": Mod is Ctrl, or Cmd on a Mac. The first is shown. */
  readonly keys?: readonly string[];
  readonly possible: (bench: Bench) => boolean;
  readonly run: (bench: Bench) => void | Promise<void>;
}

/** The word of a command as it stands now. */
export function wordOf(command: Command, bench: Bench): string {
  return typeof command.says === 'function' ? command.says(bench) : command.says;
}
