/** Tests with a screen: `bench` in Chromium on the built page, `shell` in the real window. */
import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { defineConfig } from '@playwright/test';

const TOP = fileURLToPath(new URL('..', import.meta.url));

/** A port of its own for this run, so that two runs on one computer keep apart; workers inherit it. */
process.env['DEPTHWRIGHT_PORT'] ??= String(20_000 + (process.pid % 20_000));
const PORT = process.env['DEPTHWRIGHT_PORT'];

/** The system's Chromium where there is one; otherwise the one that the test runner installs for itself. */
function systemChromium(): { executablePath?: string } {
  for (const folder of (process.env['PATH'] ?? '').split(delimiter)) {
    for (const name of ['chromium', 'chromium-browser', 'google-chrome']) {
      const executablePath = join(folder, name);
      if (folder !== '' && existsSync(executablePath)) return { executablePath };
    }
  }
  return {};
}

/** WebGL drawn by the processor: the same picture on every machine. */
const SOFTWARE_GL = ['--use-gl=angle', '--use-angle=swiftshader', '--enable-unsafe-swiftshader'];
const ROOT = process.getuid?.() === 0 ? ['--no-sandbox'] : [];

export default defineConfig({
  testDir: join(TOP, 'tests'),
  outputDir: join(TOP, 'test-results'),
  forbidOnly: true,
  fullyParallel: true,
  workers: 2,
  timeout: 60_000,
  expect: { timeout: 10_000 },
  reporter: [
    ['list'],
    ['json', { outputFile: process.env['DEPTHWRIGHT_REPORT'] ?? join(TOP, 'test-results', 'screen.json') }],
  ],
  webServer: {
    command: `node build/serve.mjs ${PORT}`,
    cwd: TOP,
    url: `http://127.0.0.1:${PORT}/`,
    reuseExistingServer: false,
  },
  use: { baseURL: `http://127.0.0.1:${PORT}/`, trace: 'retain-on-failure' },
  projects: [
    {
      name: 'bench',
      testDir: join(TOP, 'tests', 'bench'),
      use: {
        browserName: 'chromium',
        viewport: { width: 1280, height: 840 },
        launchOptions: { ...systemChromium(), args: [...SOFTWARE_GL, ...ROOT] },
      },
    },
    { name: 'shell', testDir: join(TOP, 'tests', 'shell') },
  ],
});
