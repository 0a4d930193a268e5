/**
 * The page's end of the bridge, and the only file that knows `ipcRenderer`: it gives the page `window.depthwright` and
 * nothing else. Replies and messages are parsed before the page sees them.
 */
import { contextBridge, ipcRenderer, webUtils } from 'electron';
import {
  type MessageName,
  type MessageOf,
  messages,
  type ReplyOf,
  type RequestName,
  type RequestOf,
  requests,
  type ShellBridge,
  type Unsubscribe,
} from '../bridge.ts';

async function ask<Name extends RequestName>(name: Name, request: RequestOf<Name>): Promise<ReplyOf<Name>> {
  const reply: unknown = await ipcRenderer.invoke(name, request);
  // The parser of a name gives that name's type; TypeScript sees the union of all parsers.
  return requests[name].reply.parse(reply) as ReplyOf<Name>;
}

function listen<Name extends MessageName>(name: Name, listener: (message: MessageOf<Name>) => void): Unsubscribe {
  const onMessage = (_event: unknown, message: unknown): void => {
    // As above: the parser of this name gives this name's type.
    listener(messages[name].parse(message) as MessageOf<Name>);
  };
  ipcRenderer.on(name, onMessage);
  return () => ipcRenderer.removeListener(name, onMessage);
}

/** For calls without an answer: trouble is told in the page's console, where a developer looks. */
function tell<Name extends RequestName>(name: Name, request: RequestOf<Name>): void {
  ask(name, request).catch((error: unknown) => console.error(error));
}

/**
 * Path of the file that the maker dropped last. Only a drop of his own hand is noted (`isTrusted`), in this world, which
 * the page cannot reach: whatever object the page hands over, it cannot name a path with it.
 */
let dropped = '';

/** Path of a file of a real drop; runtimes before 29 keep it on the file itself. */
function pathOf(file: File): string {
  const known: typeof webUtils | undefined = webUtils;
  if (known) return known.getPathForFile(file);
  return 'path' in file && typeof file.path === 'string' ? file.path : '';
}

window.addEventListener(
  'drop',
  (event) => {
    const [file] = event.dataTransfer?.files ?? [];
    if (event.isTrusted && file) dropped = pathOf(file);
  },
  { capture: true },
);

const PLATFORMS: Readonly<Record<string, ShellBridge['platform']>> = { darwin: 'mac', win32: 'windows' };

let provider: Parameters<ShellBridge['provideText']>[0] | undefined;
listen('textWanted', ({ ticket }) => {
  const text = provider?.();
  tell('giveText', text ? { ticket, text } : { ticket });
});

const bridge: ShellBridge = {
  platform: PLATFORMS[process.platform] ?? 'linux',
  start: () => ask('start', undefined),
  newDocument: () => ask('newDocument', undefined),
  open: () => ask('open', undefined),
  openRecent: (id) => ask('openRecent', { id }),
  openDropped: async () => {
    const path = dropped;
    dropped = '';
    if (path) return ask('openDropped', { path });
    return { kind: 'failed', says: 'What was dropped is not a file on this computer.' };
  },
  save: (document) => ask('save', document),
  saveAs: (document) => ask('saveAs', document),
  exportFiles: (files) => ask('exportFiles', { files: [...files] }),
  versions: (handle) => ask('versions', { handle }),
  versionText: (handle, id) => ask('versionText', { handle, id }),
  goBackTo: (handle, id) => ask('goBackTo', { handle, id }),
  tellState: (state) => {
    // Before the page holds a document there is no state to tell.
    if (state.handle !== '') tell('tellState', state);
  },
  provideText: (give) => {
    provider = give;
  },
  onOpened: (listener) => listen('opened', listener),
  onFailed: (listener) => listen('failed', listener),
  onSaved: (listener) => listen('saved', listener),
  onCommand: (listener) => listen('command', listener),
  onRecent: (listener) => listen('recent', listener),
};

contextBridge.exposeInMainWorld('depthwright', bridge);
