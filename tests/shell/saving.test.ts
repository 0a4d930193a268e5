/** Saving, exporting, closing and recovering in the real window. */
import { spawn } from 'node:child_process';
import { mkdir, readdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { expect } from '@playwright/test';
import { twoDepths } from '../electron/twoDepths.ts';
import {
  answer,
  change,
  end,
  expectTitle,
  messagesShown,
  type Started,
  start,
  startAnswering,
  TOP,
  test,
  titleOf,
} from './window.ts';

const SAVE = 'ControlOrMeta+s';

/** Number of arbors in a saved file. */
const arborsIn = async (path: string): Promise<number> => JSON.parse(await readFile(path, 'utf8')).arbors.length;

/** Records of unsaved work that stand whole; what is still being written is none. */
const recordsIn = async (data: string): Promise<string[]> =>
  (await readdir(join(data, 'recovery')).catch(() => [])).filter((name) => name.endsWith('.json'));

/** Asks the window to close, as its button does. */
const close = ({ app }: Started) =>
  app
    .evaluate(({ BrowserWindow }) => setTimeout(() => BrowserWindow.getAllWindows()[0]?.close(), 0))
    .then(() => undefined);

test('a change is marked, saved in place, and the version before stands beside', async ({ places }) => {
  const before = await readFile(places.file, 'utf8');
  const started = await start(places.data, places.file);
  await expectTitle(started, /^Two depths/);
  await change(started);
  await started.page.keyboard.press(SAVE);
  await expectTitle(started, /^Two depths/);
  expect(await arborsIn(places.file)).toBe(4);
  expect(await readFile(`${places.file}.previous`, 'utf8')).toBe(before);
  expect((await readdir(places.folder)).filter((name) => name.includes('two depths')).sort()).toEqual([
    'two depths.depthwright',
    'two depths.depthwright.previous',
  ]);
  await end(started);
});

test('a movement without a file asks for a place, and gets our ending', async ({ places }) => {
  const started = await start(places.data);
  await expectTitle(started, / – Depthwright$/);
  await change(started);
  await answer(started, { savePath: join(places.folder, 'mine') });
  await started.page.keyboard.press(SAVE);
  await expectTitle(started, /^[^•]/);
  expect(await arborsIn(join(places.folder, 'mine.depthwright'))).toBeGreaterThan(0);
  await end(started);
});

test('arrows of what moved stay when the movement is saved under another name', async ({ places }) => {
  const started = await start(places.data, join(TOP, 'demo-data', 'going-train.json'));
  await expectTitle(started, /^Going train/);
  await started.page.locator('canvas').first().focus();
  await started.page.keyboard.press('Shift+M');
  const moved = started.page.getByRole('region', { name: 'What moved' });
  await expect(moved).toContainText('As drawn');
  const path = join(places.folder, 'my train.depthwright');
  await answer(started, { savePath: path });
  await started.page.keyboard.press('ControlOrMeta+Shift+s');
  await expect.poll(() => readFile(path, 'utf8').catch(() => '')).toContain('Going train');
  await expect(started.page.getByText('Saved as my train.depthwright.')).toBeVisible();
  await expect(moved).toContainText('As drawn');
  await end(started);
});

test('a file changed on disk meanwhile is not overwritten unasked', async ({ places }) => {
  const started = await start(places.data, places.file);
  await expectTitle(started, /^Two depths/);
  await change(started);
  await writeFile(places.file, twoDepths({ title: 'Changed by another' }));
  await answer(started, {});
  await started.page.keyboard.press(SAVE);
  await expect.poll(() => messagesShown(started)).toEqual(['two depths.depthwright has changed on disk.']);
  expect(await readFile(places.file, 'utf8')).toContain('Changed by another');
  expect(await titleOf(started)).toMatch(/^•/);
  await end(started);
});

test('closing with unsaved work asks: cancel stays, save saves and closes', async ({ places }) => {
  const started = await start(places.data, places.file);
  await expectTitle(started, /^Two depths/);
  await change(started);
  await answer(started, { button: 2 });
  await close(started);
  await expect.poll(() => messagesShown(started)).toEqual(['Save the changes to Two depths?']);
  expect(await titleOf(started)).toMatch(/^• Two depths/);
  await answer(started, { button: 0 });
  const ended = started.app.waitForEvent('close');
  await close(started);
  await ended;
  expect(await arborsIn(places.file)).toBe(4);
});

test('closing without saving leaves the file, and offers nothing at the next start', async ({ places }) => {
  const before = await readFile(places.file, 'utf8');
  const started = await start(places.data, places.file);
  await expectTitle(started, /^Two depths/);
  await change(started);
  await answer(started, { button: 1 });
  const ended = started.app.waitForEvent('close');
  await close(started);
  await ended;
  expect(await readFile(places.file, 'utf8')).toBe(before);
  expect(await readdir(join(places.data, 'recovery')).catch(() => [])).toEqual([]);
});

test('saved work closes without a question', async ({ places }) => {
  const started = await start(places.data, places.file);
  await expectTitle(started, /^Two depths/);
  const ended = started.app.waitForEvent('close');
  await close(started);
  await ended;
});

test('unsaved work survives a crash and is offered', async ({ places }) => {
  const started = await start(places.data, places.file);
  await expectTitle(started, /^Two depths/);
  await change(started);
  const kept = () => recordsIn(places.data);
  await expect.poll(kept, { timeout: 20_000 }).toHaveLength(1);
  const ended = started.app.waitForEvent('close');
  started.app.process().kill('SIGKILL');
  await ended;
  expect(await arborsIn(places.file)).toBe(3);
  const again = await startAnswering(places.data, { button: 0 });
  await expectTitle(again, /^• Two depths/);
  expect(await messagesShown(again)).toEqual(['There is unsaved work on two depths.depthwright.']);
  await again.page.keyboard.press(SAVE);
  await expectTitle(again, /^Two depths/);
  expect(await arborsIn(places.file)).toBe(4);
  expect(await kept()).toEqual([]);
  await end(again);
});

test('a kill costs at most a second of work', async ({ places }) => {
  const started = await start(places.data, places.file);
  await expectTitle(started, /^Two depths/);
  await change(started);
  await started.page.waitForTimeout(1000); // the law: what is a second old is kept
  const ended = started.app.waitForEvent('close');
  started.app.process().kill('SIGKILL');
  await ended;
  const again = await startAnswering(places.data, { button: 0 });
  await expectTitle(again, /^• Two depths/);
  await again.page.keyboard.press(SAVE);
  await expectTitle(again, /^Two depths/);
  expect(await arborsIn(places.file)).toBe(4);
  await end(again);
});

test('records that cannot be kept are told, and opening, saving and closing go on', async ({ places }) => {
  // A file where the folder of recovery should be, and a list of recent files cut off in the middle.
  await mkdir(places.data, { recursive: true });
  await writeFile(join(places.data, 'recovery'), 'not a folder');
  await writeFile(join(places.data, 'recent-files.json'), '{"paths":["/');
  const started = await start(places.data, places.file);
  await expectTitle(started, /^Two depths/);
  await expect(started.page.getByText('The list of recent files was damaged')).toBeVisible();
  await change(started);
  await expect(started.page.getByText('save often')).toBeVisible({ timeout: 5000 });
  await started.page.keyboard.press(SAVE);
  await expectTitle(started, /^Two depths/);
  expect(await arborsIn(places.file)).toBe(4);
  const ended = started.app.waitForEvent('close');
  await close(started);
  await ended;
});

test('a page that crashes starts again and goes on with its work', async ({ places }) => {
  const started = await start(places.data, places.file);
  await expectTitle(started, /^Two depths/);
  await change(started);
  await expect.poll(() => recordsIn(places.data), { timeout: 20_000 }).toHaveLength(1);
  await answer(started, { button: 0 });
  await started.app.evaluate(({ BrowserWindow }) => {
    BrowserWindow.getAllWindows()[0]?.webContents.forcefullyCrashRenderer();
  });
  await expect.poll(() => messagesShown(started), { timeout: 20_000 }).toHaveLength(1);
  await expectTitle(started, /^• Two depths/);
  await end(started);
});

/** Runs the built command line; gives its exit code. */
function depthwright(...args: string[]): Promise<number | null> {
  return new Promise((done, fail) => {
    const program = spawn(process.execPath, [join(TOP, 'build', 'out', 'depthwright.cjs'), ...args]);
    program.on('error', fail);
    program.on('close', done);
  });
}

test('export writes the workshop files: the same bytes as the command line makes of the saved file', async ({
  places,
}) => {
  const started = await start(places.data, places.file);
  await expectTitle(started, /^Two depths/);
  // An arbor that hangs on no rule: what the bench shows and what the file holds must agree on it too.
  await change(started);
  await started.page.keyboard.press(SAVE);
  await expectTitle(started, /^Two depths/);
  const [fromWindow, fromFile] = [join(places.folder, 'from window'), join(places.folder, 'from file')];
  await mkdir(fromWindow);
  await answer(started, { openPath: fromWindow });
  await started.page.keyboard.press('ControlOrMeta+e');
  await expect.poll(() => readdir(fromWindow)).toContain('readings.pdf');
  await end(started);
  expect(await depthwright('sheets', places.file, '--out', fromFile, '--pdf', '--pages')).toBe(1); // 1: an arbor is loose
  const names = (await readdir(fromFile)).sort();
  expect((await readdir(fromWindow)).sort()).toEqual(names);
  for (const ending of ['.dxf', '.svg', '.ngc', '.csv', '.txt', '.pdf']) {
    expect(
      names.some((name) => name.endsWith(ending)),
      ending,
    ).toBe(true);
  }
  for (const name of names) {
    const [window, file] = await Promise.all([readFile(join(fromWindow, name)), readFile(join(fromFile, name))]);
    expect(window.equals(file), name).toBe(true);
  }
});

test('the window comes back where it was', async ({ places }) => {
  const started = await start(places.data);
  await expectTitle(started, / – Depthwright$/);
  await started.app.evaluate(({ BrowserWindow }) => {
    BrowserWindow.getAllWindows()[0]?.setBounds({ x: 60, y: 40, width: 1000, height: 700 });
  });
  const ended = started.app.waitForEvent('close');
  await close(started);
  await ended;
  const again = await start(places.data);
  await expectTitle(again, / – Depthwright$/);
  const bounds = await again.app.evaluate(({ BrowserWindow }) => BrowserWindow.getAllWindows()[0]?.getNormalBounds());
  expect(bounds).toMatchObject({ width: 1000, height: 700 });
  await end(again);
});

test('menus grey out what is not possible', async ({ places }) => {
  const started = await start(places.data, places.file);
  await expectTitle(started, /^Two depths/);
  const undo = () => started.app.evaluate(({ Menu }) => Menu.getApplicationMenu()?.getMenuItemById('undo')?.enabled);
  expect(await undo()).toBe(false);
  await change(started);
  await expect.poll(undo).toBe(true);
  await started.app.evaluate(({ Menu }) => Menu.getApplicationMenu()?.getMenuItemById('undo')?.click());
  await expect.poll(undo).toBe(false);
  await end(started);
});

test('a version of the last days is compared in words and gone back to', async ({ places }) => {
  const before = await readFile(places.file, 'utf8');
  const started = await start(places.data, places.file);
  await expectTitle(started, /^Two depths/);
  await change(started);
  await started.page.keyboard.press(SAVE);
  await expectTitle(started, /^Two depths/);
  await started.page.keyboard.press('Shift+R');
  await started.page.getByRole('button', { name: 'Changes', exact: true }).click();
  const list = started.page.getByRole('list', { name: 'Versions of the last days' });
  await expect(list.getByRole('listitem')).toHaveCount(2);
  const opened = list.getByRole('listitem').last();
  await opened.getByRole('button', { name: 'Compare' }).click();
  await expect(started.page.getByRole('heading', { name: '2 changes', exact: true })).toBeVisible();
  await opened.getByRole('button', { name: 'Go back to it' }).click();
  await expectTitle(started, /^• Two depths/);
  await started.page.keyboard.press(SAVE);
  await expectTitle(started, /^Two depths/);
  expect(JSON.parse(await readFile(places.file, 'utf8')).arbors).toEqual(JSON.parse(before).arbors);
  await end(started);
});
