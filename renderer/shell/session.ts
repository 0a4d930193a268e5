/**
 * The bench and the shell together: what is opened, saved and asked. In a plain browser the page plays the shell's
 * part itself (`browserShell.ts`); the rest of the window does not know the difference.
 */

import type {
  ExportFile,
  KeptVersion,
  OpenedDocument,
  OpenReply,
  SaveReply,
  ShellBridge,
  ShellCommand,
  VersionText,
} from '../../electron/bridge.ts';
import { emptyMovement, readMovement, writeMovement } from '../../solver/movement/index.ts';
import type { Movement } from '../../solver/movement/schema.ts';
import { counted } from '../../solver/words/index.ts';
import type { Command } from '../commands/command.ts';
import { commands } from '../commands/commands.ts';
import { handoverFile, workshopFiles } from '../readings/workshopFiles.ts';
import type { Bench } from '../state/bench.ts';
import type { WindowFace } from '../state/looking.svelte.ts';
import { browserShell } from './browserShell.ts';
import { demoText, FIRST_DEMO } from './demos.ts';

/** What the commands ask of the session. */
export interface ShellSession {
  begin(): Promise<void>;
  open(): Promise<void>;
  /** Opens a file of `bench.document.recent`. */
  openRecent(id: string): Promise<void>;
  drop(file: File): Promise<void>;
  openDemo(name: string): Promise<void>;
  save(): Promise<void>;
  saveAs(): Promise<void>;
  /** Writes every workshop file into a folder. */
  exportSheets(): Promise<void>;
  /** Writes everything for one job as one zip file; an earlier revision adds the list of changes. */
  handOver(earlier?: Movement): Promise<void>;
  /** Writes files that a view has made into a folder. */
  exportFiles(files: readonly ExportFile[]): Promise<void>;
  /** Versions of the last days of the document's file, newest first. */
  versions(): Promise<readonly KeptVersion[]>;
  versionText(id: string): Promise<VersionText>;
  /** Opens a version in place of what is open, after asking about unsaved changes. */
  goBackTo(id: string): Promise<void>;
  /** Tells the shell the state of the page; called whenever any of it changed. */
  tellState(): void;
  end(): void;
}

/** Which of our commands the shell's menus mean. */
const SHELL_COMMANDS: Readonly<Partial<Record<ShellCommand, Command>>> = {
  new: commands.newMovement,
  open: commands.open,
  save: commands.save,
  saveAs: commands.saveAs,
  export: commands.exportSheets,
  undo: commands.undo,
  redo: commands.redo,
  delete: commands.remove,
  find: commands.find,
  fit: commands.fit,
  zoomIn: commands.zoomIn,
  zoomOut: commands.zoomOut,
  keys: commands.keys,
};
const SHELL_FACES: Readonly<Partial<Record<ShellCommand, WindowFace>>> = {
  bench: 'bench',
  levels: 'levels',
  steps: 'steps',
  sheets: 'sheets',
};

/** Reads an opened document; a file that cannot be read leaves the open one untouched. */
export function adoptDocument(bench: Bench, document: OpenedDocument): boolean {
  const reading = readMovement(document.text);
  if (reading.kind === 'problems') {
    const [first, ...more] = reading.problems;
    const others = more.length > 0 ? ` And ${more.length} more.` : '';
    bench.looking.tell('refused', `${document.name} cannot be opened: ${first?.says ?? 'it is no movement'}${others}`);
    return false;
  }
  bench.adopt(reading.movement, document);
  const [doubt, ...doubts] = reading.doubts ?? [];
  if (doubt) {
    const others = doubts.length > 0 ? ` And ${doubts.length} more.` : '';
    bench.looking.tell('refused', `${document.name}: ${doubt.says}${others}`);
  }
  if (reading.migratedFrom !== undefined) {
    bench.looking.tell(
      'done',
      `${document.name} was written by version ${reading.migratedFrom}; saving writes it anew.`,
    );
  }
  return true;
}

/** Joins the bench to the shell, or to the browser's part, and shows what is to be shown first. */
export function startSession(bench: Bench): ShellSession {
  const shell: ShellBridge = window.depthwright ?? browserShell();
  bench.looking.runsOn(shell.platform);
  const text = () => ({ handle: bench.document.handle, text: writeMovement(bench.document.movement) });
  const opened = (reply: OpenReply): void => {
    if (reply.kind === 'opened') adoptDocument(bench, reply.document);
    else if (reply.kind === 'failed') bench.looking.tell('refused', reply.says);
  };
  const saved = (reply: SaveReply): void => {
    if (reply.kind === 'saved') bench.wasSaved(reply);
    else if (reply.kind === 'failed') bench.looking.tell('refused', reply.says);
  };
  const stops = [
    shell.onOpened((document) => adoptDocument(bench, document)),
    shell.onFailed(({ says }) => bench.looking.tell('refused', says)),
    shell.onSaved((document) => bench.wasSaved(document)),
    shell.onCommand((name) => runShellCommand(bench, name)),
    shell.onRecent((recent) => bench.document.openedBefore(recent)),
  ];
  let told: Movement | undefined;
  let change = 0;
  shell.provideText(() => (bench.document.handle ? text() : undefined));
  const session: ShellSession = {
    async begin() {
      const reply = await shell.newDocument();
      if (reply.kind === 'blank') bench.adopt(emptyMovement(), { handle: reply.handle, unsaved: false });
    },
    open: async () => opened(await shell.open()),
    openRecent: async (id) => opened(await shell.openRecent(id)),
    drop: async (file) => opened(await shell.openDropped(file)),
    async openDemo(name) {
      const reply = await shell.newDocument();
      if (reply.kind === 'blank') await showDemo(bench, name, reply.handle);
    },
    save: async () => saved(await shell.save(text())),
    saveAs: async () => saved(await shell.saveAs(text())),
    async exportSheets() {
      const files = await workshopFiles(bench);
      if (files) await session.exportFiles(files);
    },
    async handOver(earlier) {
      const file = await handoverFile(bench, earlier);
      if (file) await session.exportFiles([file]);
    },
    async exportFiles(files) {
      const reply = await shell.exportFiles(files);
      const { looking } = bench;
      if (reply.kind === 'failed') looking.tell('refused', reply.says);
      if (reply.kind !== 'written') return;
      looking.tell('done', `${counted(reply.names.length, 'file')} written to ${reply.folder}`);
    },
    versions: () => shell.versions(bench.document.handle),
    versionText: (id) => shell.versionText(bench.document.handle, id),
    goBackTo: async (id) => opened(await shell.goBackTo(bench.document.handle, id)),
    tellState() {
      const { handle, movement, unsaved } = bench.document;
      if (movement !== told) change++;
      told = movement;
      shell.tellState({ handle, title: movement.title, unsaved, change, possible: possibleNow(bench) });
    },
    end: () => {
      for (const stop of stops) stop();
    },
  };
  bench.document.join(session);
  void begin(bench, shell);
  return session;
}

async function begin(bench: Bench, shell: ShellBridge): Promise<void> {
  const start = await shell.start();
  bench.document.openedBefore(start.recent);
  if (start.document && adoptDocument(bench, start.document)) return;
  const text = await demoText(FIRST_DEMO);
  // Whoever was quicker than the demo has opened a file of his own.
  if (bench.document.handle !== '') return;
  adoptDemo(bench, FIRST_DEMO, text, start.blank);
  if (start.firstStart) bench.looking.guideTo('offered');
}

async function showDemo(bench: Bench, name: string, handle: string): Promise<void> {
  adoptDemo(bench, name, await demoText(name), handle);
}

function adoptDemo(bench: Bench, name: string, text: string | undefined, handle: string): void {
  if (text === undefined) bench.adopt(emptyMovement(), { handle, unsaved: false });
  else adoptDocument(bench, { handle, name, text, unsaved: false });
}

function runShellCommand(bench: Bench, name: ShellCommand): void {
  const face = SHELL_FACES[name];
  if (face) bench.looking.show(face);
  if (name === 'paper' || name === 'layoutBlue') bench.looking.wear(name);
  const command = SHELL_COMMANDS[name];
  if (command?.possible(bench)) void command.run(bench);
}

function possibleNow(bench: Bench): ShellCommand[] {
  const entries = Object.entries(SHELL_COMMANDS) as [ShellCommand, Command][]; // entries of a record with these keys
  const ours = entries.filter(([, command]) => command.possible(bench)).map(([name]) => name);
  return [...ours, 'paper', 'layoutBlue', 'bench', 'levels', 'steps', 'sheets'];
}
