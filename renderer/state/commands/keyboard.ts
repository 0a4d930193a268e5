/** Keys: which command a key press means. Silent while a value is typed, except for the keys that say otherwise. */
import type { ShellBridge } from '../../../electron/bridge.ts';
import type { Bench } from '../bench.svelte.ts';
import type { Command } from './command.ts';
import { commandList } from './commands.ts';

type Platform = ShellBridge['platform'];

const SIGNS: Readonly<Record<string, string>> = {
  ArrowUp: 'up',
  ArrowDown: 'down',
  ArrowLeft: 'left',
  ArrowRight: 'right',
  ' ': 'Space',
};

/** "Mod+Shift+Z" of a key press, in the order in which commands write it. */
export function chordOf(
  event: Pick<KeyboardEvent, 'key' | 'ctrlKey' | 'metaKey' | 'shiftKey' | 'altKey'>,
  platform: Platform,
): string {
  const mod = platform === 'mac' ? event.metaKey : event.ctrlKey;
  const key = event.key.length === 1 ? event.key.toUpperCase() : event.key;
  // Signs such as + and ? are reached with Shift on many keyboards: Shift is part of the sign then.
  const isSign = event.key.length === 1 && !/[a-z0-9]/i.test(event.key);
  const shift = event.shiftKey && !isSign;
  return [mod ? 'Mod' : '', event.altKey ? 'Alt' : '', shift ? 'Shift' : '', SIGNS[key] ?? key]
    .filter(Boolean)
    .join('+');
}

/** The first key of a command as the platform writes it. */
export function keysSay(keys: readonly string[], platform: Platform): string {
  return (
    (keys[0] ?? '')
      .replace('Mod', platform === 'mac' ? 'Cmd' : 'Ctrl')
      .replaceAll('+', ' ')
      .trim() || '+'
  );
}

const isTyping = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement &&
  (target.isContentEditable ||
    /^(TEXTAREA|SELECT)$/.test(target.tagName) ||
    (target instanceof HTMLInputElement && target.type !== 'range'));

/** Keys that mean the same while a value is typed. */
const EVEN_WHILE_TYPING = new Set(['Mod+S', 'Mod+Shift+S', 'Mod+O', 'Mod+N', 'Mod+E', 'Mod+F']);

/** The command of a key press; a chord may belong to several, and the first that is possible is meant. */
export function commandOf(bench: Bench, chord: string): Command | undefined {
  return commandList.find((command) => command.keys?.includes(chord) && command.possible(bench));
}

/** What still works while a view covers the bench: nothing that would change what cannot be seen. */
const OVER_A_VIEW = new Set(['undo', 'redo', 'back', 'otherLook', 'otherUnit', 'keys']);

/** Runs the command of a key press, if there is one. */
export function keyPressed(bench: Bench, event: KeyboardEvent): void {
  if (event.defaultPrevented) return;
  const chord = chordOf(event, bench.platform);
  const leaves = chord === 'Escape' && (bench.viewShown || bench.rehearsing);
  if (isTyping(event.target) && !EVEN_WHILE_TYPING.has(chord) && !leaves) return;
  // A button in focus keeps Enter and Space for itself.
  const onButton = event.target instanceof HTMLElement && event.target.closest('button, a, [role="menuitem"]') !== null;
  if (onButton && (chord === 'Enter' || chord === 'Space')) return;
  if (document.querySelector('[role="menu"], [role="dialog"]') && chord !== 'Escape') return;
  const command = commandOf(bench, chord);
  if (!command || (bench.viewShown && command.group !== 'movement' && !OVER_A_VIEW.has(command.id))) return;
  event.preventDefault();
  void command.run(bench);
}
