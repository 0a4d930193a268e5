/** Every way to open a movement, and what happens to one that cannot be read. */
import { spawn } from 'node:child_process';
import { readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { expect } from '@playwright/test';
import { twoDepths } from '../electron/twoDepths.ts';
import {
  answer,
  argumentsFor,
  change,
  EXECUTABLE,
  end,
  expectTitle,
  messagesShown,
  start,
  test,
  titleOf,
} from './window.ts';

/** A second movement beside the first. */
async function otherFile(folder: string): Promise<string> {
  const path = join(folder, 'other.json');
  await writeFile(path, twoDepths({ title: 'Other movement' }));
  return path;
}

test('the first start shows a movement drawn on the bench, and nothing complains', async ({ places }) => {
  const started = await start(places.data);
  const complaints: string[] = [];
  started.page.on('console', (message) => message.type() === 'error' && complaints.push(message.text()));
  started.page.on('pageerror', (error) => complaints.push(error.message));
  await expectTitle(started, / – Depthwright$/);
  await expect(started.page.locator('canvas').first()).toBeVisible();
  expect(await titleOf(started)).not.toMatch(/^•|Untitled/);
  for (const face of ['Levels', 'Steps', 'Sheets', 'Bench']) {
    await started.app.evaluate(({ Menu }, id) => {
      Menu.getApplicationMenu()?.getMenuItemById(id.toLowerCase())?.click();
    }, face);
    await started.page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
  }
  expect(complaints).toEqual([]);
  await end(started);
});

test('a file on the command line', async ({ places }) => {
  const started = await start(places.data, places.file);
  await expectTitle(started, /^Two depths – Depthwright$/);
  await end(started);
});

test('a file that is not there is said, and the window still shows something', async ({ places }) => {
  const started = await start(places.data, join(places.folder, 'gone.depthwright'));
  await expect(started.page.getByText(/gone\.depthwright could not be read/)).toBeVisible();
  await end(started);
});

test('a second start hands its file to the first', async ({ places }) => {
  const started = await start(places.data, places.file);
  await expectTitle(started, /^Two depths/);
  await otherFile(places.folder);
  // By a name relative to the folder of the second start.
  const second = spawn(EXECUTABLE, [...argumentsFor(places.data), 'other.json'], {
    cwd: places.folder,
    stdio: 'ignore',
  });
  const code = await new Promise((done) => second.on('close', done));
  expect(code).toBe(0);
  await expectTitle(started, /^Other movement/);
  await end(started);
});

test('the file manager’s event', async ({ places }) => {
  const started = await start(places.data, places.file);
  await expectTitle(started, /^Two depths/);
  const path = await otherFile(places.folder);
  await started.app.evaluate(({ app }, file) => app.emit('open-file', { preventDefault: () => undefined }, file), path);
  await expectTitle(started, /^Other movement/);
  await end(started);
});

test('the dialog, by its key', async ({ places }) => {
  const started = await start(places.data, places.file);
  await expectTitle(started, /^Two depths/);
  await answer(started, { openPath: await otherFile(places.folder) });
  await started.page.keyboard.press('ControlOrMeta+o');
  await expectTitle(started, /^Other movement/);
  await end(started);
});

test('a file dropped onto the window', async ({ places }) => {
  const started = await start(places.data, places.file);
  await expectTitle(started, /^Two depths/);
  const path = await otherFile(places.folder);
  const { page } = started;
  // A drag of the system itself: what a script dispatches is not trusted, and is not listened to.
  const engine = await page.context().newCDPSession(page);
  const { width, height } = (await page.locator('canvas').first().boundingBox()) ?? { width: 200, height: 200 };
  const data = { items: [], files: [path], dragOperationsMask: 1 };
  for (const type of ['dragEnter', 'dragOver', 'drop'] as const) {
    await engine.send('Input.dispatchDragEvent', { type, x: width / 2, y: height / 2, data });
  }
  await expectTitle(started, /^Other movement/);
  // It is the file itself, not a copy: saving goes back into it.
  await change(started);
  await page.keyboard.press('ControlOrMeta+s');
  await expectTitle(started, /^Other movement/);
  expect(JSON.parse(await readFile(path, 'utf8')).arbors.length).toBeGreaterThan(3);
  await end(started);
});

test('the menu of recent files', async ({ places }) => {
  const path = await otherFile(places.folder);
  const first = await start(places.data, path);
  await expectTitle(first, /^Other movement/);
  await end(first);
  const started = await start(places.data, places.file);
  await expectTitle(started, /^Two depths/);
  const labels = await started.app.evaluate(({ Menu }) => {
    const items = Menu.getApplicationMenu()?.getMenuItemById('recent')?.submenu?.items ?? [];
    items.find((item) => item.label.startsWith('other.json'))?.click();
    return items.map((item) => item.label);
  });
  expect(labels).toHaveLength(2);
  await expectTitle(started, /^Other movement/);
  // The same in the window, under the title.
  await started.page.getByRole('button', { name: /movement menu$/ }).click();
  await started.page.getByRole('menuitem', { name: /^two depths/ }).click();
  await expectTitle(started, /^Two depths/);
  await end(started);
});

test('a file that is no movement leaves the open one as it is', async ({ places }) => {
  const bad = join(places.folder, 'bad.json');
  await writeFile(bad, twoDepths().slice(0, 300));
  const started = await start(places.data, places.file);
  await expectTitle(started, /^Two depths/);
  await change(started);
  await answer(started, { openPath: bad, button: 1 });
  await started.page.keyboard.press('ControlOrMeta+o');
  await expect(started.page.getByText(/line 1, column/).first()).toBeVisible();
  expect(await titleOf(started)).toMatch(/^• Two depths/);
  await end(started);
});

test('opening over unsaved work asks; saying no keeps it', async ({ places }) => {
  const started = await start(places.data, places.file);
  await expectTitle(started, /^Two depths/);
  await change(started);
  await answer(started, { openPath: await otherFile(places.folder) });
  await started.page.keyboard.press('ControlOrMeta+o');
  await expect.poll(() => messagesShown(started)).toHaveLength(1);
  expect(await titleOf(started)).toMatch(/^• Two depths/);
  await end(started);
});
