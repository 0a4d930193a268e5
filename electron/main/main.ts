/** The shell's entry: one program, one window, closed to everything but its own page. */
import { join } from 'node:path';
import { app, session } from 'electron';
import { closeSession, silenceEngine, stayOnPage } from './hardening.ts';
import { filesNamed } from './openingFiles.ts';
import { announceScheme, servePage } from './pageFiles.ts';
import { Shell } from './shell.ts';

/** Folder of the built files; this one lies in it too. */
const BUILT = __dirname;

/** Arguments without the program; a runtime started by hand names the application first. */
const ownArguments = (): string[] => process.argv.slice(process.defaultApp ? 2 : 1);

/** What a second start hands to the first. */
interface SecondStart {
  readonly files: readonly string[];
}

const isSecondStart = (value: unknown): value is SecondStart =>
  typeof value === 'object' && value !== null && 'files' in value && Array.isArray(value.files);

function run(files: readonly string[]): void {
  const shell = new Shell({ preload: join(BUILT, 'preload.cjs'), startedAtMs: Date.now(), files });
  app.on('second-instance', (_event, _argv, _folder, handed) => {
    shell.comeForward();
    const named: readonly unknown[] = isSecondStart(handed) ? handed.files : [];
    const file = named.find((name) => typeof name === 'string');
    if (file !== undefined) void shell.openFromOutside(file);
  });
  app.on('open-file', (event, path) => {
    event.preventDefault();
    void shell.openFromOutside(path);
  });
  app.on('web-contents-created', (_event, contents) => stayOnPage(contents));
  app.on('window-all-closed', () => app.quit());
  void app.whenReady().then(async () => {
    closeSession(session.defaultSession);
    servePage(join(BUILT, 'renderer'));
    await shell.show();
  });
}

announceScheme();
silenceEngine();
// Root on Linux can only run with the system's sandbox switched off by hand; the page's own isolation stays on.
if (!app.commandLine.hasSwitch('no-sandbox')) app.enableSandbox();
else console.warn('Depthwright runs without the sandbox of the system (--no-sandbox): open only files that you trust.');
const files = filesNamed(ownArguments(), process.cwd());
if (app.requestSingleInstanceLock({ files })) run(files);
else app.quit();
