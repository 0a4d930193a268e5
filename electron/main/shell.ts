/** The one window with its desk: joins page, files, questions and menus. */
import { join } from 'node:path';
import { app, BrowserWindow, type WebContents } from 'electron';
import type { MessageName, MessageOf, Start } from '../bridge.ts';
import { RecentFiles } from '../files/recentFiles.ts';
import { Recovery } from '../files/recovery.ts';
import { serveRequests, tellPage } from './channels.ts';
import { Desk } from './desk.ts';
import { pagePreferences } from './hardening.ts';
import { showMenu } from './menu.ts';
import { PAGE } from './pageAddress.ts';
import { questionsOver } from './questions.ts';
import { KEEP_EVERY_MS, Safekeeping } from './safekeeping.ts';
import { TextRequests } from './textRequests.ts';
import { keepPlace, LEAST, lastPlace } from './windowPlace.ts';

/** What the program was started with. */
export interface ShellSettings {
  readonly preload: string;
  readonly startedAtMs: number;
  /** Files that the command line named; the first is opened. */
  readonly files: readonly string[];
}

/** The window and all that belongs to it while the program runs. */
export class Shell {
  readonly #settings: ShellSettings;
  readonly #recent = new RecentFiles(join(app.getPath('userData'), 'recent-files.json'));
  readonly #safekeeping: Safekeeping;
  readonly #texts = new TextRequests((ticket) => this.#tell('textWanted', { ticket }));
  readonly #desk: Desk;
  #window: BrowserWindow | undefined;
  /** The page has called `start` and listens. */
  #isListening = false;
  #mayClose = false;
  #waitingFile: string | undefined;
  #failure: string | undefined;

  constructor(settings: ShellSettings) {
    this.#settings = settings;
    this.#waitingFile = settings.files[0];
    const recovery = new Recovery(join(app.getPath('userData'), 'recovery'), settings.startedAtMs);
    this.#safekeeping = new Safekeeping(recovery);
    this.#desk = new Desk({
      questions: questionsOver(() => this.#theWindow()),
      recent: this.#recent,
      safekeeping: this.#safekeeping,
      presentText: () => this.#texts.present(),
      onSaved: (saved) => this.#tell('saved', saved),
      onFailed: (says) => this.#tell('failed', { says }),
      onRecent: () => this.#recentChanged(),
    });
  }

  /** Opens the window. Call when the app is ready. */
  async show(): Promise<void> {
    await this.#recent.read();
    this.#serve();
    const placeFile = join(app.getPath('userData'), 'window.json');
    const { maximized = false, ...place } = await lastPlace(placeFile);
    const window = new BrowserWindow({
      ...place,
      minWidth: LEAST.width,
      minHeight: LEAST.height,
      show: false,
      title: 'Depthwright',
      backgroundColor: '#f6f1e4',
      webPreferences: pagePreferences(this.#settings.preload),
    });
    this.#window = window;
    keepPlace(window, placeFile);
    window.on('close', (event) => this.#onClose(event));
    window.once('ready-to-show', () => (maximized ? window.maximize() : window.show()));
    window.webContents.on('render-process-gone', () => this.#reload());
    window.on('page-title-updated', (event) => event.preventDefault());
    setInterval(() => void this.#keep(), KEEP_EVERY_MS).unref();
    this.#refreshMenu();
    await window.loadURL(PAGE);
  }

  comeForward(): void {
    if (this.#window?.isMinimized()) this.#window.restore();
    this.#window?.focus();
  }

  /** Opens a file that the page did not ask for: a second start, the file manager, a menu. */
  async openFromOutside(path: string): Promise<void> {
    if (!this.#isListening) {
      this.#waitingFile = path;
      return;
    }
    const reply = await this.#desk.openPath(path);
    if (reply.kind === 'opened') this.#tell('opened', reply.document);
    if (reply.kind === 'failed') this.#tell('failed', { says: reply.says });
  }

  #serve(): void {
    const desk = this.#desk;
    serveRequests(
      {
        start: () => this.#start(),
        newDocument: () => desk.newDocument(),
        open: () => desk.open(),
        openRecent: ({ id }) => desk.openRecent(id),
        openDropped: ({ path }) => desk.openPath(path),
        save: (document) => desk.save(document),
        saveAs: (document) => desk.saveAs(document),
        exportFiles: ({ files }) => desk.exportFiles(files),
        tellState: async (state) => {
          const before = desk.state;
          await desk.tellState(state);
          if (!before) void this.#onFirstState();
          this.#refreshTitle();
          if (before?.possible.join() !== state.possible.join()) this.#refreshMenu();
          return undefined;
        },
        giveText: async (answer) => this.#texts.answered(answer) as undefined, // a call without an answer
      },
      () => this.#contents(),
    );
  }

  async #start(): Promise<Start> {
    const blank = this.#desk.documents.add().handle;
    const recent = this.#recent.list();
    const document = await this.#documentToStartWith();
    this.#isListening = true;
    return {
      ...(document && { document }),
      blank,
      recent,
      firstStart: recent.length === 0,
      version: app.getVersion(),
    };
  }

  async #documentToStartWith(): Promise<Start['document']> {
    const path = this.#waitingFile;
    this.#waitingFile = undefined;
    if (path === undefined) return undefined;
    const reply = await this.#desk.openPath(path);
    if (reply.kind === 'failed') this.#failure = reply.says;
    return reply.kind === 'opened' ? reply.document : undefined;
  }

  /** Once the page shows something: what could not be opened is told, and left work offered. */
  async #onFirstState(): Promise<void> {
    if (this.#failure) this.#tell('failed', { says: this.#failure });
    this.#failure = undefined;
    const document = await this.#desk.takeUpLeftWork();
    if (document) this.#tell('opened', document);
  }

  /** A crashed page starts again; what was kept is offered to it. */
  #reload(): void {
    this.#isListening = false;
    this.#desk.pageGone();
    this.#window?.webContents.reload();
  }

  #onClose(event: { preventDefault: () => void }): void {
    if (this.#mayClose || !this.#desk.state?.unsaved) return;
    event.preventDefault();
    void this.#desk.mayLeave().then((may) => {
      if (!may) return;
      this.#mayClose = true;
      this.#window?.close();
    });
  }

  async #keep(): Promise<void> {
    if (!this.#safekeeping.isNeeded) return;
    await this.#safekeeping.keep(await this.#texts.present(), this.#desk.documents, Date.now());
  }

  #refreshTitle(): void {
    const state = this.#desk.state;
    if (!state || !this.#window) return;
    this.#window.setTitle(`${state.unsaved ? '• ' : ''}${state.title || 'Untitled movement'} – Depthwright`);
    this.#window.setDocumentEdited(state.unsaved);
  }

  #refreshMenu(): void {
    const possible = new Set(this.#desk.state?.possible ?? []);
    showMenu(
      { possible, recent: this.#recent.list() },
      {
        command: (command) => this.#tell('command', command),
        openRecent: (id) => {
          const path = this.#recent.pathOf(id);
          if (path !== undefined) void this.openFromOutside(path);
        },
      },
    );
  }

  #recentChanged(): void {
    this.#tell('recent', this.#recent.list());
    this.#refreshMenu();
  }

  #tell<Name extends MessageName>(name: Name, message: MessageOf<Name>): void {
    tellPage(this.#contents(), name, message);
  }

  #contents(): WebContents | undefined {
    return this.#window?.webContents;
  }

  #theWindow(): BrowserWindow {
    if (!this.#window) throw new Error('A question was asked before there was a window.');
    return this.#window;
  }
}
