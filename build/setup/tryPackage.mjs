/** Installs the Debian package, takes a movement through the installed program, and removes it again. */
import { spawn } from 'node:child_process';
import { copyFileSync, existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { enginePage } from './enginePage.mjs';
import { run, TOP } from './run.mjs';

const INSTALLED = '/opt/depthwright/depthwright';
const PORT = 9417;
/** Longest wait for the window and for each thing in it, ms. */
const PATIENCE_MS = 60_000;

async function must(program, args) {
  const { code, words } = await run(program, args);
  if (code !== 0) throw new Error(`${program} ${args.join(' ')} failed:\n${words}`);
}

async function until(what, look) {
  const end = Date.now() + PATIENCE_MS;
  for (;;) {
    const found = await (async () => look())().catch(() => undefined);
    if (found) return found;
    if (Date.now() > end) throw new Error(`The installed program never came to this: ${what}.`);
    await new Promise((done) => setTimeout(done, 200));
  }
}

/** Opens a demo, draws an arbor beside it by the keyboard, saves, and looks into the file. */
async function takeThrough(folder) {
  const file = join(folder, 'going train.depthwright');
  copyFileSync(join(TOP, 'demo-data', 'going-train.json'), file);
  const before = JSON.parse(readFileSync(file, 'utf8')).arbors.length;
  const root = process.getuid?.() === 0 ? ['--no-sandbox'] : [];
  const switches = [...root, `--remote-debugging-port=${PORT}`, `--user-data-dir=${join(folder, 'data')}`];
  const screen = ['-a', '-s', '-screen 0 1440x900x24', INSTALLED, ...switches, file];
  const program = spawn('xvfb-run', screen, { stdio: 'ignore', detached: true });
  try {
    const page = await until('its window', () => enginePage(PORT));
    await until('its movement', async () => /Going train/.test(await page.value('document.body.innerText')));
    const canvas = "document.querySelector('canvas')";
    await page.value(`${canvas}.focus()`);
    const box = await page.value(
      `(({ x, y, width, height }) => ({ x, y, width, height }))(${canvas}.getBoundingClientRect())`,
    );
    await page.press('a');
    await page.click(box.x + box.width / 2, box.y + box.height / 4);
    await page.press('s', { control: true });
    await until('a saved arbor', () => JSON.parse(readFileSync(file, 'utf8')).arbors.length === before + 1);
    page.close();
  } finally {
    // The whole group: the screen, the program and its helpers.
    process.kill(-program.pid);
  }
}

/** Installs, tries, removes. Needs root, as installing does. Throws with a plain sentence. */
export async function tryPackage(deb) {
  if (!deb) throw new Error('There is no Debian package to try on this system.');
  if (process.getuid?.() !== 0) throw new Error('Trying the package installs it, which needs root.');
  const folder = mkdtempSync(join(tmpdir(), 'depthwright-try-'));
  try {
    await must('dpkg', ['--install', deb]);
    if (!existsSync(INSTALLED)) throw new Error(`The package did not bring ${INSTALLED}.`);
    await takeThrough(folder);
  } finally {
    await run('dpkg', ['--purge', 'depthwright']);
    rmSync(folder, { recursive: true, force: true });
  }
  if (existsSync('/opt/depthwright')) throw new Error('Removing the package left /opt/depthwright behind.');
  console.log('Tried: installed, a movement opened, changed and saved in the window, removed without a trace.');
}
