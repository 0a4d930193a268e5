/**
 * The bridge: the one typed contract between the bench page and the shell.
 *
 * Read in this order: `ShellBridge` (what the page sees as `window.depthwright`), then `requests` (page asks, shell
 * replies) and `messages` (shell tells the page). Every channel is `name -> parser`; both sides derive their types
 * from here, the shell parses whatever the page sends before acting, and the preload parses what comes back.
 *
 * Who keeps what: the shell keeps paths, the page keeps the movement. The page never names a path; it holds a
 * document handle. Replies are result values with a `kind`, because an error thrown across arrives as a bare text.
 *
 * Asking is the shell's work: before it opens another movement or closes the window it asks about unsaved changes,
 * and before it saves over a file that changed on disk it asks too; after a crash it asks whether to take up the work
 * that was kept, and opens it. The page only tells its state and gives its text.
 */
import * as z from 'zod/mini';

/** Longest movement text that crosses the bridge, characters: 20,000 arbors with all fields stay well below it. */
const MAX_TEXT = 256 * 1024 * 1024;
const text = z.string().check(z.maxLength(MAX_TEXT));
const shortText = z.string().check(z.maxLength(500));
const sentence = z.string().check(z.maxLength(10_000));

/** Stands for an open document; made by the shell, worthless elsewhere. */
export const documentHandle = z.string().check(z.minLength(1), z.maxLength(64));
export type DocumentHandle = z.output<typeof documentHandle>;

const openedDocument = z.strictObject({
  handle: documentHandle,
  /** For the title: the file's name without folders, or "Untitled movement". */
  name: shortText,
  text,
  /** True for recovered work, and for a document that has no file yet. */
  unsaved: z.boolean(),
});
/** A document as it was read; the page reads `text` with `readMovement` and adopts the handle only if that works. */
export type OpenedDocument = z.output<typeof openedDocument>;

const recentFile = z.strictObject({ id: shortText, name: shortText, folder: shortText });
/** A file opened or saved before; `folder` is for telling two of the same name apart. */
export type RecentFile = z.output<typeof recentFile>;

const startReply = z.strictObject({
  /** What to show: a file from the command line or the file manager. Absent: the page shows the demo. */
  document: z.optional(openedDocument),
  /** Handle for a movement that has no file yet (the demo, an empty one). */
  blank: documentHandle,
  recent: z.array(recentFile),
  firstStart: z.boolean(),
  version: shortText,
});
export type Start = z.output<typeof startReply>;

const openReply = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('opened'), document: openedDocument }),
  z.strictObject({ kind: z.literal('cancelled') }),
  z.strictObject({ kind: z.literal('failed'), says: sentence }),
]);
export type OpenReply = z.output<typeof openReply>;

const newReply = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('blank'), handle: documentHandle }),
  z.strictObject({ kind: z.literal('cancelled') }),
]);
export type NewReply = z.output<typeof newReply>;

const documentText = z.strictObject({ handle: documentHandle, text });
/** The movement as `writeMovement` gives it, under the handle that it belongs to. */
export type DocumentText = z.output<typeof documentText>;

const saveReply = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('saved'), handle: documentHandle, name: shortText }),
  z.strictObject({ kind: z.literal('cancelled') }),
  z.strictObject({ kind: z.literal('failed'), says: sentence }),
]);
export type SaveReply = z.output<typeof saveReply>;

const exportFile = z.strictObject({
  /** A bare file name with its ending, such as "front plate.dxf"; folders are refused. */
  name: shortText,
  content: z.union([text, z.instanceof(Uint8Array)]),
});
export type ExportFile = z.output<typeof exportFile>;

const exportReply = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('written'), folder: shortText, names: z.array(shortText) }),
  z.strictObject({ kind: z.literal('cancelled') }),
  z.strictObject({ kind: z.literal('failed'), says: sentence }),
]);
export type ExportReply = z.output<typeof exportReply>;

/** What the menus can ask of the page. Keys belong to the page: it handles them all itself and prevents the default. */
export const shellCommands = [
  'new',
  'open',
  'save',
  'saveAs',
  'export',
  'undo',
  'redo',
  'delete',
  'find',
  'fit',
  'zoomIn',
  'zoomOut',
  'paper',
  'layoutBlue',
  'bench',
  'levels',
  'steps',
  'sheets',
  'keys',
] as const;
const shellCommand = z.enum(shellCommands);
export type ShellCommand = z.output<typeof shellCommand>;

const pageState = z.strictObject({
  handle: documentHandle,
  /** The movement's title, for the window's title. */
  title: shortText,
  unsaved: z.boolean(),
  /** Counts the changes of the document, so that the shell asks for its text only when there is a new one. */
  change: z.int(),
  /** Commands that are possible now; the menus grey out the others. */
  possible: z.array(shellCommand),
});
export type PageState = z.output<typeof pageState>;

const version = z.strictObject({ id: shortText, keptAtMs: z.number(), bytes: z.number() });
/** A text that the document's file held, as it was opened or saved here. */
export type KeptVersion = z.output<typeof version>;
const versionName = z.strictObject({ handle: documentHandle, id: shortText });
const versionText = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('read'), text }),
  z.strictObject({ kind: z.literal('failed'), says: sentence }),
]);
export type VersionText = z.output<typeof versionText>;

const nothing = z.undefined();

/** Page asks, shell replies. */
export const requests = {
  start: { request: nothing, reply: startReply },
  newDocument: { request: nothing, reply: newReply },
  open: { request: nothing, reply: openReply },
  openRecent: { request: z.strictObject({ id: shortText }), reply: openReply },
  /** Sent by the preload alone, which asks the browser for the path of a dropped file; the page cannot call it. */
  openDropped: { request: z.strictObject({ path: z.string().check(z.maxLength(4096)) }), reply: openReply },
  save: { request: documentText, reply: saveReply },
  saveAs: { request: documentText, reply: saveReply },
  exportFiles: {
    request: z.strictObject({ files: z.array(exportFile).check(z.minLength(1), z.maxLength(1000)) }),
    reply: exportReply,
  },
  /** Versions of the last days of the document's file, newest first; none for a movement without a file. */
  versions: { request: z.strictObject({ handle: documentHandle }), reply: z.array(version) },
  versionText: { request: versionName, reply: versionText },
  /** Opens a version in place of the present text, after asking about unsaved changes; its file changes on saving. */
  goBackTo: { request: versionName, reply: openReply },
  tellState: { request: pageState, reply: nothing },
  /** The page's answer to the message `textWanted`. */
  giveText: { request: z.strictObject({ ticket: z.int(), text: z.optional(documentText) }), reply: nothing },
} as const;

/** Shell tells the page. */
export const messages = {
  /** A movement was opened by a second start, the file manager or the menu of recent files, or taken up after a crash. */
  opened: openedDocument,
  /** Opening from outside the page failed. */
  failed: z.strictObject({ says: sentence }),
  /** The shell saved the document (the maker said "Save" when asked). */
  saved: z.strictObject({ handle: documentHandle, name: shortText }),
  command: shellCommand,
  recent: z.array(recentFile),
  textWanted: z.strictObject({ ticket: z.int() }),
} as const;

export type RequestName = keyof typeof requests;
export type RequestOf<Name extends RequestName> = z.output<(typeof requests)[Name]['request']>;
export type ReplyOf<Name extends RequestName> = z.output<(typeof requests)[Name]['reply']>;
export type MessageName = keyof typeof messages;
export type MessageOf<Name extends MessageName> = z.output<(typeof messages)[Name]>;

/** Takes a listener off again. */
export type Unsubscribe = () => void;

/**
 * What the page sees as `window.depthwright` inside the shell. In a plain browser it is absent and the page puts its
 * own implementation of the same interface there. Nothing here rejects in normal use: outcomes are values.
 */
export interface ShellBridge {
  readonly platform: 'mac' | 'windows' | 'linux';
  /** Call once, when the page can show a movement: until then messages wait. */
  start(): Promise<Start>;
  /** Asks about unsaved changes, then gives a handle for an empty movement or a demo. */
  newDocument(): Promise<NewReply>;
  /** Asks about unsaved changes, shows the dialog, reads the file. */
  open(): Promise<OpenReply>;
  openRecent(id: string): Promise<OpenReply>;
  /**
   * The file that was just dropped onto the window. A browser reads what it is handed; the shell takes the path from the
   * drop itself, never from the page.
   */
  openDropped(file: File): Promise<OpenReply>;
  /** Saves to the document's file; asks for a place when it has none yet. `saved` comes only after the rename. */
  save(document: DocumentText): Promise<SaveReply>;
  saveAs(document: DocumentText): Promise<SaveReply>;
  /** Asks for a folder and writes the files into it; asks before replacing any. */
  exportFiles(files: readonly ExportFile[]): Promise<ExportReply>;
  /** Versions of the last days; a browser keeps none. */
  versions(handle: DocumentHandle): Promise<readonly KeptVersion[]>;
  versionText(handle: DocumentHandle, id: string): Promise<VersionText>;
  goBackTo(handle: DocumentHandle, id: string): Promise<OpenReply>;
  /** Call whenever any of it changed (title, unsaved mark, possible commands). */
  tellState(state: PageState): void;
  /** Gives the present text when the shell wants it: for recovery on a timer, and for "Save" when closing. */
  provideText(provider: () => DocumentText | undefined): void;
  onOpened(listener: (document: OpenedDocument) => void): Unsubscribe;
  onFailed(listener: (failure: MessageOf<'failed'>) => void): Unsubscribe;
  onSaved(listener: (saved: MessageOf<'saved'>) => void): Unsubscribe;
  onCommand(listener: (command: ShellCommand) => void): Unsubscribe;
  onRecent(listener: (recent: readonly RecentFile[]) => void): Unsubscribe;
}

declare global {
  interface Window {
    /** Present inside the shell. */
    readonly depthwright?: ShellBridge;
  }
}
