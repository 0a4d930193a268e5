/** Chords as commands write them, and as they are shown. */
import type { ShellBridge } from '../../electron/bridge.ts';

type Platform = ShellBridge['platform'];

const CHORD_NAMES: Readonly<Record<string, string>> = {
  ArrowUp: 'up',
  ArrowDown: 'down',
  ArrowLeft: 'left',
  ArrowRight: 'right',
  ' ': 'Space',
};

/** How a key is shown where its name is not what stands on it. */
const SHOWN: Readonly<Record<string, string>> = {
  up: '↑',
  down: '↓',
  left: '←',
  right: '→',
  ArrowUp: '↑',
  ArrowDown: '↓',
  ArrowLeft: '←',
  ArrowRight: '→',
  PageUp: 'Page up',
  PageDown: 'Page down',
  Escape: 'Esc',
};

/** "Mod+Shift+Z" of a key press, in the order in which commands write it. */
export function keyChordOf(
  event: Pick<KeyboardEvent, 'key' | 'ctrlKey' | 'metaKey' | 'shiftKey' | 'altKey'>,
  platform: Platform,
): string {
  const mod = platform === 'mac' ? event.metaKey : event.ctrlKey;
  const key = event.key.length === 1 ? event.key.toUpperCase() : event.key;
  // Signs such as + and ? are reached with Shift on many keyboards: Shift is part of the sign then.
  const isSign = event.key.length === 1 && !/[a-z0-9]/i.test(event.key);
  const shift = event.shiftKey && !isSign;
  return [mod ? 'Mod' : '', event.altKey ? 'Alt' : '', shift ? 'Shift' : '', CHORD_NAMES[key] ?? key]
    .filter(Boolean)
    .join('+');
}

/** The first key of a command as the platform writes it: "Ctrl Shift Z", "Shift ←". */
export function keysSay(keys: readonly string[], platform: Platform): string {
  const [first = ''] = keys;
  if (first === '+') return '+';
  return first
    .split('+')
    .map((part) => (part === 'Mod' ? (platform === 'mac' ? 'Cmd' : 'Ctrl') : (SHOWN[part] ?? part)))
    .join(' ');
}
