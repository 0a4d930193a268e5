/**
 * The pictures of the README, taken from the real program with its real window: `npm run pictures`.
 * Needs the test runtime (npm test fetches it) and a display; without one, run it under xvfb-run.
 */
import { mkdir, mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { _electron, type Page } from '@playwright/test';

const TOP = fileURLToPath(new URL('..', import.meta.url));
const INTO = join(TOP, 'demo-data', 'pictures');
const RUNTIME = process.env['ELECTRON_OVERRIDE_DIST_PATH'] ?? join(TOP, 'build', 'runtime', 'electron');

interface Picture {
  readonly name: string;
  /** A movement file, from the top of the checkout. */
  readonly file: string;
  readonly look: 'Paper' | 'Layout blue';
  readonly prepare?: (page: Page) => Promise<void>;
}

const face = (name: string) => (page: Page) => page.getByRole('button', { name, exact: true }).click();
const choose = (name: string) => (page: Page) =>
  page.getByRole('complementary').or(page.locator('body')).getByText(name, { exact: true }).first().click();
const after =
  (...steps: ((page: Page) => Promise<void>)[]) =>
  async (page: Page) => {
    for (const step of steps) {
      await step(page);
      await page.waitForTimeout(600);
    }
  };
const DEMO = { moons: 'moons-of-jupiter', tide: 'tide-dial', train: 'going-train' } as const;
const demo = (name: keyof typeof DEMO): string => join('demo-data', `${DEMO[name]}.json`);

const BOTH: readonly Omit<Picture, 'look'>[] = [
  { name: 'bench', file: demo('moons'), prepare: after(choose("Two o'clock arbor")) },
  { name: 'levels', file: demo('train'), prepare: face('Levels') },
  {
    name: 'steps',
    file: demo('tide'),
    prepare: after(face('Steps'), async (page) => {
      for (let step = 0; step < 7; step++) await page.keyboard.press('ArrowRight');
    }),
  },
  {
    name: 'sheets',
    file: demo('tide'),
    prepare: after(face('Sheets'), (page) => page.getByText(/^Page 1 of/).waitFor()),
  },
];

const PICTURES: readonly Picture[] = [
  ...BOTH.map((picture): Picture => ({ ...picture, name: `${picture.name}-paper`, look: 'Paper' })),
  ...BOTH.map((picture): Picture => ({ ...picture, name: `${picture.name}-blue`, look: 'Layout blue' })),
  { name: 'disagreement', file: join('tests', 'fixtures', 'arcsDoNotReach.json'), look: 'Paper' },
  {
    name: 'depth',
    file: demo('train'),
    look: 'Paper',
    prepare: after(choose('Third arbor'), (page) => page.getByRole('button', { name: 'How it runs' }).first().click()),
  },
];

async function take(picture: Picture): Promise<void> {
  const data = await mkdtemp(join(tmpdir(), 'depthwright-pictures-'));
  const root = process.getuid?.() === 0 ? ['--no-sandbox'] : [];
  const args = [...root, `--user-data-dir=${data}`, TOP, join(TOP, picture.file)];
  const app = await _electron.launch({ executablePath: join(RUNTIME, 'electron'), args });
  const page = await app.firstWindow();
  await app.evaluate(({ BrowserWindow }) => BrowserWindow.getAllWindows()[0]?.setContentSize(1440, 900));
  await page.locator('canvas').first().waitFor();
  await page.waitForTimeout(2500);
  const other = page.getByRole('button', { name: picture.look, exact: true });
  if (await other.isVisible()) await other.click();
  await page.keyboard.press('f');
  await picture.prepare?.(page);
  await page.mouse.move(5, 5);
  await page.waitForTimeout(1200);
  await page.screenshot({ path: join(INTO, `${picture.name}.png`) });
  await app.evaluate(({ app: program }) => program.exit(0)).catch(() => undefined); // the program is gone before it answers
  await rm(data, { recursive: true, force: true, maxRetries: 5 });
}

await mkdir(INTO, { recursive: true });
const wanted = process.argv[2];
for (const picture of PICTURES) {
  if (wanted !== undefined && !picture.name.includes(wanted)) continue;
  await take(picture);
  console.log(`${picture.name}.png`);
}
