/**
 * What the tests need besides npm packages: a browser, a screen to draw on, and the outside checkers.
 * On Debian and its kin, as root, missing ones are installed by apt; elsewhere they are listed.
 */
import { existsSync } from 'node:fs';
import { run, succeeds, whereIs } from './run.mjs';

const PYTHON = ['/usr/bin/python3', 'python3'];
const hasPython = (module) => () => PYTHON.some((python) => succeeds(python, ['-c', `import ${module}`]));
const hasProgram =
  (...names) =>
  () =>
    names.some(whereIs);
const hasLibrary = (name) => () =>
  process.platform !== 'linux' || succeeds('sh', ['-c', `ldconfig -p 2>/dev/null | grep -q ${name}`]);

/** Each: what it is for, how to tell that it is there, and Debian's names for it (one of them is enough). */
const TOOLS = [
  {
    what: 'Chromium (bench tests)',
    has: hasProgram('chromium', 'chromium-browser', 'google-chrome'),
    apt: ['chromium'],
  },
  { what: 'Xvfb (a screen for the window)', has: hasScreen, apt: ['xvfb'] },
  { what: 'GTK 3 (Electron)', has: hasLibrary('libgtk-3.so.0'), apt: ['libgtk-3-0t64', 'libgtk-3-0'] },
  { what: 'NSS (Electron)', has: hasLibrary('libnss3.so'), apt: ['libnss3'] },
  { what: 'ALSA (Electron)', has: hasLibrary('libasound.so.2'), apt: ['libasound2t64', 'libasound2'] },
  { what: 'GBM (Electron)', has: hasLibrary('libgbm.so.1'), apt: ['libgbm1'] },
  { what: 'Python 3 with ezdxf (reads DXF back)', has: hasPython('ezdxf'), apt: ['python3-ezdxf'] },
  { what: 'Python 3 with scipy (plants by another solver)', has: hasPython('scipy'), apt: ['python3-scipy'] },
  { what: 'Python 3 with mpmath (many digits)', has: hasPython('mpmath'), apt: ['python3-mpmath'] },
  { what: 'rsvg-convert (draws SVG)', has: hasProgram('rsvg-convert'), apt: ['librsvg2-bin'] },
  { what: 'pdftotext (reads PDF back)', has: hasProgram('pdftotext'), apt: ['poppler-utils'] },
];

function hasScreen() {
  return process.platform !== 'linux' || whereIs('Xvfb') !== undefined;
}

async function installByApt(missing) {
  console.log(`Installing by apt: ${missing.map((tool) => tool.apt[0]).join(', ')} ...`);
  const quiet = { env: { DEBIAN_FRONTEND: 'noninteractive' } };
  await run('apt-get', ['update', '-q'], quiet);
  const names = missing.map((tool) => tool.apt.find((name) => succeeds('apt-cache', ['show', name])) ?? tool.apt[0]);
  const { code, words } = await run('apt-get', ['install', '-y', '-q', '--no-install-recommends', ...names], quiet);
  if (code !== 0) console.log(words.split('\n').slice(-15).join('\n'));
}

const isRootOnDebian = () => process.getuid?.() === 0 && existsSync('/etc/debian_version') && whereIs('apt-get');

/** Installs what is missing where it can; returns the tools that are still missing. */
export async function ensureSystemTools() {
  const missing = TOOLS.filter((tool) => !tool.has());
  if (missing.length === 0) return [];
  if (isRootOnDebian()) {
    await installByApt(missing);
    return missing.filter((tool) => !tool.has());
  }
  return missing;
}
