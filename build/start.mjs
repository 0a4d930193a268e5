/**
 * `npm start`: installs what is missing, builds what has changed, opens the window.
 *
 * Where Electron cannot be had, or there is no display, it says so in one line, runs the main job on the demo on the
 * terminal, writes the workshop files to out/, and serves the bench to a browser on this computer.
 */
import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { ensureBundles } from './setup/bundles.mjs';
import { ensureElectron, hasDisplay, startSwitches } from './setup/electronRuntime.mjs';
import { ensurePackages } from './setup/packages.mjs';
import { run, TOP } from './setup/run.mjs';
import { servePage } from './setup/servePage.mjs';

const DEMO = join('demo-data', 'tide-dial.json');
const COMMAND_LINE = join('build', 'out', 'depthwright.cjs');
/** Port of the bench in a browser, when it is free: letters D and W counted from A as 4 and 23. */
const PORT = 4230;

/** Runs one command of the main job on the demo. Findings (exit code 1) are an answer, not a failure. */
async function job(command, ...more) {
  console.log(`\n$ depthwright ${command} ${[DEMO, ...more].join(' ')}`);
  const { code } = await run(process.execPath, [COMMAND_LINE, command, DEMO, ...more], { show: true });
  if (code !== 0 && code !== 1) throw new Error(`depthwright ${command} ended with code ${code}.`);
}

async function withoutWindow(why) {
  console.log(`${why} Running the main job on the demo here instead; the bench is served to a browser.`);
  await job('plant');
  await job('check');
  await job('steps');
  await job('sheets', '--out', 'out');
  const { address } = await servePage(PORT);
  console.log(`\nThe bench is at ${address} (on this computer only; stop with Ctrl+C).`);
}

function openWindow(electron) {
  const args = [...startSwitches(), TOP, ...process.argv.slice(2)];
  const window = spawn(electron, args, { stdio: 'inherit' });
  window.on('close', (code) => process.exit(code ?? 1));
}

try {
  await ensurePackages();
  const failures = await ensureBundles();
  if (failures.length > 0) throw new Error(failures.join('\n'));
  const electron = hasDisplay() ? await ensureElectron() : undefined;
  if (electron) openWindow(electron);
  else await withoutWindow(hasDisplay() ? 'Electron could not be had.' : 'There is no display for a window.');
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
}
