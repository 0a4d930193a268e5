/** Starts the real program with its real window, and answers the system's dialogs in the maker's place. */
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { _electron, test as base, type ElectronApplication, expect, type Page } from '@playwright/test';
import { twoDepths } from '../electron/twoDepths.ts';

export const TOP = fileURLToPath(new URL('../..', import.meta.url));
const RUNTIME = process.env['ELECTRON_OVERRIDE_DIST_PATH'] ?? join(TOP, 'build', 'runtime', 'electron');
export const EXECUTABLE = join(RUNTIME, 'electron');
/** The runtime lies in a plain folder, where Linux does not give it a sandbox of its own; the page's stays on. */
const SWITCHES = process.platform === 'linux' ? ['--no-sandbox'] : [];

/** The program's arguments for its own data folder, as in every start of one test. */
export const argumentsFor = (data: string): string[] => [...SWITCHES, `--user-data-dir=${data}`, TOP];

export interface Started {
  readonly app: ElectronApplication;
  readonly page: Page;
}

/** Starts the program; `files` are the files on its command line. */
export function start(data: string, ...files: string[]): Promise<Started> {
  return startAnswering(data, undefined, ...files);
}

/** Starts the program with answers to the questions that it asks at its start. */
export async function startAnswering(data: string, answers?: Answers, ...files: string[]): Promise<Started> {
  const app = await _electron.launch({ executablePath: EXECUTABLE, args: [...argumentsFor(data), ...files] });
  if (answers) await answer({ app }, answers);
  return { app, page: await app.firstWindow() };
}

/** The window's title, which tells what is open and whether it is saved. */
export const titleOf = ({ app }: Started): Promise<string> =>
  app.evaluate(({ BrowserWindow }) => BrowserWindow.getAllWindows()[0]?.getTitle() ?? 'no window');

/** Waits until the title is the stated one. */
export const expectTitle = (started: Started, title: string | RegExp): Promise<void> =>
  expect.poll(() => titleOf(started), { timeout: 15_000 }).toMatch(title);

/** Answers of the system's dialogs. Each is given whenever that dialog is shown. */
export interface Answers {
  readonly openPath?: string;
  readonly savePath?: string;
  /** Index of the pressed button. */
  readonly button?: number;
}

/** Puts answers in place of the system's dialogs, and notes the messages that were shown. */
export async function answer({ app }: Pick<Started, 'app'>, answers: Answers): Promise<void> {
  await app.evaluate(({ dialog }, { openPath, savePath, button }) => {
    const shown: string[] = [];
    Object.assign(globalThis, { shownMessages: shown });
    const open = { canceled: openPath === undefined, filePaths: openPath === undefined ? [] : [openPath] };
    const save = { canceled: savePath === undefined, filePath: savePath ?? '' };
    Object.assign(dialog, {
      showOpenDialog: () => Promise.resolve(open),
      showSaveDialog: () => Promise.resolve(save),
      showMessageBox: (_window: unknown, options: { message: string; buttons: string[] }) => {
        shown.push(options.message);
        return Promise.resolve({ response: button ?? options.buttons.length - 1 });
      },
    });
  }, answers);
}

/** Messages shown since the answers were put in place. */
export const messagesShown = ({ app }: Started): Promise<string[]> =>
  app.evaluate(() => (globalThis as { shownMessages?: string[] }).shownMessages ?? []);

/** Ends the program at once, without questions. */
export async function end({ app }: Started): Promise<void> {
  const ended = app.waitForEvent('close');
  await app.evaluate(({ app: program }) => program.exit(0)).catch(() => undefined); // the program is gone before it answers
  await ended;
}

interface Places {
  /** The program's own data. */
  readonly data: string;
  /** A folder for the maker's files. */
  readonly folder: string;
  /** A movement on disk, "Two depths". */
  readonly file: string;
}

/** Each test has its own folders; they go when it ends. */
export const test = base.extend<{ places: Places }>({
  // biome-ignore lint/correctness/noEmptyPattern: the runner reads the fixtures wanted from this pattern
  places: async ({}, use) => {
    const root = await mkdtemp(join(tmpdir(), 'depthwright-shell-'));
    const file = join(root, 'two depths.depthwright');
    await writeFile(file, twoDepths());
    await use({ data: join(root, 'data'), folder: root, file });
    await rm(root, { recursive: true, force: true, maxRetries: 5 });
  },
});

/** Makes a change that leaves the movement unsaved: sets an arbor down on a free place of the bench. */
export async function change(started: Started): Promise<void> {
  const box = await started.page.locator('canvas').first().boundingBox();
  if (!box) throw new Error('There is no bench to work on.');
  await started.page.keyboard.press('a');
  await started.page.mouse.move(box.x + 90, box.y + 60);
  await started.page.mouse.move(box.x + 80, box.y + 50);
  await started.page.mouse.down();
  await started.page.mouse.up();
  await expectTitle(started, /^•/);
  await started.page.keyboard.press('Escape');
}
