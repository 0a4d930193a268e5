/**
 * What is kept in this browser, on this computer: what belongs to the maker and his shop and not to the movement. A
 * browser may keep nothing; then the window works the same and forgets.
 */

/** All that is kept, with the names it is kept by. */
const NAMES = {
  visited: 'depthwright-visited',
  maker: 'depthwright.maker',
  printing: 'depthwright.printing',
  tools: 'depthwright.tools',
  dividingKit: 'depthwright.dividing',
} as const;
export type KeptName = keyof typeof NAMES;

/** What was kept last; undefined where nothing was, or where this browser keeps nothing. */
export function keptHere(name: KeptName): string | undefined {
  try {
    return localStorage.getItem(NAMES[name]) ?? undefined;
  } catch {
    // Storage is switched off: the same as nothing kept.
    return undefined;
  }
}

/** The same, where a value was kept; undefined also where what stands there is none. */
export function keptValue(name: KeptName): unknown {
  try {
    return JSON.parse(keptHere(name) ?? 'null') ?? undefined;
  } catch (error) {
    if (error instanceof SyntaxError) return undefined;
    throw error;
  }
}

/** Keeps a text, or a value as JSON; false where this browser keeps nothing. */
export function keepHere(name: KeptName, what: string | object): boolean {
  try {
    localStorage.setItem(NAMES[name], typeof what === 'string' ? what : JSON.stringify(what));
    return true;
  } catch {
    // Switched off or full: told to whoever asks.
    return false;
  }
}
