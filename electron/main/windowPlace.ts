/** Where the window stood: kept between runs, and moved onto a screen that is there. */
import { renameSync, writeFileSync } from 'node:fs';
import { type BrowserWindow, type Rectangle, screen } from 'electron';
import * as z from 'zod/mini';
import { readKept } from '../files/keptJson.ts';
import type { RecordTroubles } from '../files/recordTroubles.ts';

const place = z.object({
  x: z.int(),
  y: z.int(),
  width: z.int(),
  height: z.int(),
  maximized: z.boolean(),
});
export type WindowPlace = z.output<typeof place>;

/** Size at the first start, and the least size, px. */
const USUAL = { width: 1280, height: 840 } as const;
export const LEAST = { width: 800, height: 560 } as const;
/** How much of the title bar must be on a screen for the window to be reachable, px. */
const REACHABLE = 80;

/** Whether enough of a window's top edge lies on one of the screens to take hold of it. */
export function isReachable(window: Rectangle, screens: readonly Rectangle[]): boolean {
  return screens.some((area) => {
    const shared = Math.min(window.x + window.width, area.x + area.width) - Math.max(window.x, area.x);
    return shared >= REACHABLE && window.y >= area.y && window.y <= area.y + area.height - REACHABLE / 2;
  });
}

/** The place of the last run, if it is still on a screen; otherwise the usual size wherever the system likes. */
export async function lastPlace(file: string, troubles: RecordTroubles): Promise<Partial<WindowPlace>> {
  const kept = troubles.valueOf('place', file, await readKept(file, place));
  if (!kept) return USUAL;
  const areas = screen.getAllDisplays().map((display) => display.workArea);
  const size = { width: Math.max(kept.width, LEAST.width), height: Math.max(kept.height, LEAST.height) };
  return isReachable(kept, areas) ? { ...kept, ...size } : { ...USUAL, maximized: kept.maximized };
}

/** Notes the window's place when it closes; losing it is no loss, so trouble is only told on the terminal. */
export function keepPlace(window: BrowserWindow, file: string): void {
  window.on('close', () => {
    try {
      // The program is about to end: no time for more than a write beside and a rename.
      writeFileSync(`${file}.new`, JSON.stringify({ ...window.getNormalBounds(), maximized: window.isMaximized() }));
      renameSync(`${file}.new`, file);
    } catch (error) {
      console.error(`The window's place was not kept: ${String(error)}`);
    }
  });
}
