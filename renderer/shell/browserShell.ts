/**
 * The shell's part when the page runs in a plain browser: files come by a file chooser or by dropping, and go as
 * downloads. It keeps the same promises as the bridge, as far as a browser can.
 */
import type {
  DocumentText,
  ExportReply,
  NewReply,
  OpenedDocument,
  OpenReply,
  SaveReply,
  ShellBridge,
  Start,
} from '../../electron/bridge.ts';
import { keepHere, keptHere } from './keptHere.ts';

/** Files longer than this are not movements, characters. */
const MAX_TEXT = 256 * 1024 * 1024;
let handles = 0;
const nextHandle = (): string => `page-${++handles}`;

function platformOfPage(): ShellBridge['platform'] {
  const { userAgent } = navigator;
  if (/Mac/.test(userAgent)) return 'mac';
  return /Windows/.test(userAgent) ? 'windows' : 'linux';
}

/** Is it the first visit? A browser that keeps nothing is not told so at every visit. */
function isFirstVisit(): boolean {
  const isKept = keptHere('visited') !== undefined;
  return keepHere('visited', 'yes') && !isKept;
}

function download(name: string, content: string | Uint8Array): void {
  // A copy, so that the bytes stand in a buffer of their own, as a Blob asks.
  const part = typeof content === 'string' ? content : new Uint8Array(content);
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([part]));
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
}

async function read(file: File): Promise<OpenReply> {
  if (file.size > MAX_TEXT) {
    return { kind: 'failed', says: `${file.name} has ${file.size} bytes; a movement has far fewer. Choose another.` };
  }
  try {
    const text = await file.text();
    return { kind: 'opened', document: { handle: nextHandle(), name: file.name, text, unsaved: false } };
  } catch (error) {
    return { kind: 'failed', says: `${file.name} could not be read: ${String(error)}. Choose it again.` };
  }
}

function choose(): Promise<File | undefined> {
  return new Promise((resolve) => {
    const input = document.createElement('input');
    input.type = 'file';
    input.accept = '.json,application/json';
    // It stands in the page until it is answered, so that it is not collected before.
    input.hidden = true;
    document.body.append(input);
    const answer = (file: File | undefined): void => {
      input.remove();
      resolve(file);
    };
    input.addEventListener('change', () => answer(input.files?.[0]));
    input.addEventListener('cancel', () => answer(undefined));
    input.click();
  });
}

/** The bridge of a plain browser. */
export function browserShell(): ShellBridge {
  let unsaved = false;
  const names = new Map<string, string>();
  const mayLose = (): boolean => !unsaved || window.confirm('There are unsaved changes. Go on without saving them?');
  const opened = (reply: OpenReply): OpenReply => {
    if (reply.kind === 'opened') names.set(reply.document.handle, reply.document.name);
    return reply;
  };
  const save = async ({ handle, text }: DocumentText): Promise<SaveReply> => {
    const name = names.get(handle) ?? 'movement.json';
    download(name, text);
    return { kind: 'saved', handle, name };
  };
  window.addEventListener('beforeunload', (event) => {
    if (unsaved) event.preventDefault();
  });
  return {
    platform: platformOfPage(),
    start: async (): Promise<Start> => ({ blank: nextHandle(), recent: [], firstStart: isFirstVisit(), version: '' }),
    newDocument: async (): Promise<NewReply> =>
      mayLose() ? { kind: 'blank', handle: nextHandle() } : { kind: 'cancelled' },
    open: async () => {
      if (!mayLose()) return { kind: 'cancelled' };
      const file = await choose();
      return file ? opened(await read(file)) : { kind: 'cancelled' };
    },
    openRecent: async () => ({ kind: 'cancelled' }),
    openDropped: async (file) => (mayLose() ? opened(await read(file)) : { kind: 'cancelled' }),
    save,
    saveAs: save,
    exportFiles: async (files): Promise<ExportReply> => {
      for (const { name, content } of files) download(name, content);
      return { kind: 'written', folder: 'the downloads', names: files.map(({ name }) => name) };
    },
    versions: async () => [],
    versionText: async () => ({ kind: 'failed', says: 'A browser keeps no versions.' }),
    goBackTo: async () => ({ kind: 'cancelled' }),
    tellState: (state) => {
      unsaved = state.unsaved;
      document.title = `${state.unsaved ? '• ' : ''}${state.title} · Depthwright`;
    },
    provideText: () => undefined,
    onOpened: () => () => undefined,
    onFailed: () => () => undefined,
    onSaved: () => () => undefined,
    onCommand: () => () => undefined,
    onRecent: () => () => undefined,
  };
}

export type { OpenedDocument };
