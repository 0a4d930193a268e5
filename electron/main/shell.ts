/** The one window with its desk: joins page, files, questions and menus. */
import { join } from 'node:path';
import { app, BrowserWindow, type WebContents } from 'electron';
import type { MessageName, MessageOf, Start } from '../bridge.ts';
import { sweepPieces } from '../files/atomicWrite.ts';
import { RecentFiles } from '../files/recentFiles.ts';
import { RecordTroubles } from '../files/recordTroubles.ts';
import { Recovery } from '../files/recovery.ts';
import { Versions } from '../files/versions.ts';
import { serveRequests, tellPage } from './channels.ts';
import { Desk } from './desk.ts';
import { pagePreferences } from './hardening.ts';
import { showMenu } from './menu.ts';
import { PAGE } from './pageAddress.ts';
import { questionsOver } from './questions.ts';
import { KEEP_WITHIN_MS, Safekeeping } from './safekeeping.ts';
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
  readonly #troubles = new RecordTroubles((says) => this.#tellWhenHeard(says));
  readonly #recent = new RecentFiles(join(app.getPath('userData'), 'recent-files.json'), this.#troubles);
  readonly #safekeeping: Safekeeping;
  readonly #texts = new TextRequests((ticket) => this.#tell('textWanted', { ticket }));
  readonly #desk: Desk;
  #window: BrowserWindow | undefined;
  /** The page has called `start` and listens. */
  #isListening = false;
  #mayClose = false;
  #waitingFile: string | undefined;
  /** What was found wrong before the page listened. */
  #unheard: string[] = [];
  #isHeard = false;
  #isKeeping = false;

  constructor(settings: ShellSettings) {
    this.#settings = settings;
    this.#waitingFile = settings.files[0];
    const recovery = new Recovery(join(app.getPath('userData'), 'recovery'), settings.startedAtMs, this.#troubles);
    this.#safekeeping = new Safekeeping(recovery);
    this.#desk = new Desk({
      questions: questionsOver(() => this.#theWindow()),
      recent: this.#recent,
      safekeeping: this.#safekeeping,
      versions: new Versions(join(app.getPath('userData'), 'versions'), this.#troubles),
      now: Date.now,
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
    const { maximized = false, ...place } = await lastPlace(placeFile, this.#troubles);
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
    setInterval(() => void this.#keep(), KEEP_WITHIN_MS).unref();
    void this.#sweep();
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
        versions: async ({ handle }) => [...(await desk.versions(handle))],
        versionText: ({ handle, id }) => desk.versionText(handle, id),
        goBackTo: ({ handle, id }) => desk.goBackTo(handle, id),
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
    if (reply.kind === 'failed') this.#unheard.push(reply.says);
    return reply.kind === 'opened' ? reply.document : undefined;
  }

  /** Once the page shows something: what could not be opened is told, and left work offered. */
  async #onFirstState(): Promise<void> {
    const document = await this.#desk.takeUpLeftWork();
    if (document) this.#tell('opened', document);
    this.#isHeard = true;
    const unheard = this.#unheard.splice(0);
    if (unheard.length > 0) this.#tell('failed', { says: unheard.join(' ') });
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

  /** Keeps what is not kept yet; one keeping at a time. */
  async #keep(): Promise<void> {
    if (this.#isKeeping || !this.#safekeeping.isNeeded) return;
    this.#isKeeping = true;
    await this.#safekeeping
      .keep(() => this.#texts.present(), this.#desk.documents, Date.now())
      .finally(() => {
        this.#isKeeping = false;
      });
  }

  /** Takes away what killed runs left half written: of our own records, and beside the files that were opened before. */
  async #sweep(): Promise<void> {
    const own = app.getPath('userData');
    await sweepPieces(own);
    await sweepPieces(join(own, 'recovery'));
    const names = new Set(this.#recent.list().map(({ name }) => name));
    const isOfRecent = (name: string): boolean => [...names].some((recent) => name.startsWith(recent));
    for (const folder of this.#recent.folders()) await sweepPieces(folder, isOfRecent);
  }

  /** Tells the page, or keeps the words until it shows something. */
  #tellWhenHeard(says: string): void {
    if (this.#isHeard) this.#tell('failed', { says });
    else this.#unheard.push(says);
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
