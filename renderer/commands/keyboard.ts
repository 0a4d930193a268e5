/** Keys: which command a key press means. Silent while a value is typed, except for the keys that say otherwise. */
import { isCovered } from '../frame/views.ts';
import type { Bench } from '../state/bench.ts';
import type { Command } from './command.ts';
import { commandList } from './commands.ts';
import { keyChordOf } from './keySigns.ts';

const isTyping = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement &&
  (target.isContentEditable ||
    /^(TEXTAREA|SELECT)$/.test(target.tagName) ||
    (target instanceof HTMLInputElement && target.type !== 'range'));

/** Keys that mean the same while a value is typed. */
const EVEN_WHILE_TYPING = new Set(['Mod+S', 'Mod+Shift+S', 'Mod+O', 'Mod+N', 'Mod+E', 'Mod+F']);

/** Undo of the document is meant in a number field, too, while nothing is typed there; the field keeps its own undo to itself. */
const UNDO = new Set(['Mod+Z', 'Mod+Shift+Z', 'Mod+Y']);
const isNumberField = (target: EventTarget | null): boolean =>
  target instanceof Element && target.matches('[data-number]');

/** The command of a key press; a chord may belong to several, and the first that is possible is meant. */
export function commandOf(bench: Bench, chord: string): Command | undefined {
  return commandList.find((command) => command.keys?.includes(chord) && command.possible(bench));
}

/** What still works while a view covers the bench: nothing that would change what cannot be seen. */
const OVER_A_VIEW = new Set(['undo', 'redo', 'back', 'otherLook', 'otherUnit', 'keys']);

/** Runs the command of a key press, if there is one. */
export function keyPressed(bench: Bench, event: KeyboardEvent): void {
  if (event.defaultPrevented) return;
  const chord = keyChordOf(event, bench.looking.platform);
  const leaves = chord === 'Escape' && bench.hand.open !== undefined;
  const undoes = UNDO.has(chord) && isNumberField(event.target);
  if (isTyping(event.target) && !EVEN_WHILE_TYPING.has(chord) && !leaves && !undoes) return;
  // A button in focus keeps Enter and Space for itself.
  const onButton = event.target instanceof HTMLElement && event.target.closest('button, a, [role="menuitem"]') !== null;
  if (onButton && (chord === 'Enter' || chord === 'Space')) return;
  if (document.querySelector('[role="menu"], [role="dialog"]') && chord !== 'Escape') return;
  const command = commandOf(bench, chord);
  if (!command || (isCovered(bench) && command.group !== 'movement' && !OVER_A_VIEW.has(command.id))) return;
  event.preventDefault();
  void command.run(bench);
}
