/** Types of servePage.mjs for the TypeScript that calls it. */

/** Serves the built page on this computer; 0, or a port that is taken, gives any free one. */
export function servePage(port?: number): Promise<{ readonly address: string; readonly stop: () => void }>;
