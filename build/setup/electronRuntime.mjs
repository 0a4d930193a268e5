/** The official Electron runtime for `npm start`: fetched once by its own package, given up on in one line. */
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { runPackage, TOP } from './run.mjs';

const HOME = join(TOP, 'node_modules', 'electron');
/** Longest wait for the download, ms: 120 MB over a slow line. A machine without the network fails at once. */
const PATIENCE_MS = 300_000;
/** A machine that could not fetch it is asked again after this time, ms. */
const ASK_AGAIN_MS = 24 * 3600 * 1000;
const FAILED = join(HOME, '.could-not-fetch');

/** Path of the runtime that is there, or undefined. The variable that Electron itself knows goes first. */
function present() {
  const record = join(HOME, 'path.txt');
  const name = existsSync(record) ? readFileSync(record, 'utf8') : 'electron';
  const folder = process.env.ELECTRON_OVERRIDE_DIST_PATH ?? join(HOME, 'dist');
  const path = join(folder, name);
  return existsSync(path) ? path : undefined;
}

function failedLately() {
  return existsSync(FAILED) && Date.now() - Number(readFileSync(FAILED, 'utf8')) < ASK_AGAIN_MS;
}

/** The runtime's path, fetching it if needed; undefined where it cannot be had. */
export async function ensureElectron() {
  const found = present();
  if (found || process.env.ELECTRON_OVERRIDE_DIST_PATH || failedLately()) return found;
  console.log('Fetching the Electron runtime (once) ...');
  const { code } = await runPackage('electron/install.js', [], { timeoutMs: PATIENCE_MS });
  if (code !== 0) writeFileSync(FAILED, String(Date.now()));
  return code === 0 ? present() : undefined;
}

/** Whether there is a screen to open a window on. */
export function hasDisplay() {
  return process.platform !== 'linux' || Boolean(process.env.DISPLAY || process.env.WAYLAND_DISPLAY);
}

/** A setting of the kernel, or undefined where this kernel has none of that name. */
function kernelSetting(name) {
  const file = `/proc/sys/kernel/${name}`;
  return existsSync(file) ? readFileSync(file, 'utf8').trim() : undefined;
}

/**
 * Switches for starting by hand. On Linux the runtime's own sandbox cannot work for root, nor where the kernel keeps
 * user namespaces from programs that are not installed; it is switched off there, and the page's isolation stays on.
 */
export function startSwitches() {
  if (process.platform !== 'linux') return [];
  const cannot =
    process.getuid?.() === 0 ||
    kernelSetting('apparmor_restrict_unprivileged_userns') === '1' ||
    kernelSetting('unprivileged_userns_clone') === '0';
  return cannot ? ['--no-sandbox'] : [];
}
