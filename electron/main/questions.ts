/** The questions that the shell asks the maker, in dialogs of the system. */

import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { app, type BrowserWindow, dialog } from 'electron';
import type { encodingChoices, OldEncoding } from '../../solver/movement/index.ts';
import { counted } from '../../solver/words/index.ts';
import { ENDINGS } from './documents.ts';

type EncodingChoice = ReturnType<typeof encodingChoices>[number];

/** What to do about a file that should not be saved over unasked. */
export type OverAnswer = 'replace' | 'elsewhere' | 'cancel';

/** Where dialogs begin; `last` is the folder used before. */
export interface Questions {
  fileToOpen(): Promise<string | undefined>;
  fileToSave(name: string): Promise<string | undefined>;
  folderForExport(): Promise<string | undefined>;
  saveChanges(name: string): Promise<'save' | 'letGo' | 'cancel'>;
  overChanged(name: string): Promise<OverAnswer>;
  overReadOnly(name: string): Promise<OverAnswer>;
  /** @param to what the link names, which is not there */
  overLinkToNothing(name: string, to: string): Promise<OverAnswer>;
  encodingOf(name: string, choices: readonly EncodingChoice[]): Promise<OldEncoding | undefined>;
  replaceFiles(names: readonly string[]): Promise<boolean>;
  takeUp(name: string, keptAtMs: number): Promise<'takeUp' | 'throwAway' | 'later'>;
}

const FILTERS = [
  { name: 'Movements', extensions: [...ENDINGS] },
  { name: 'All files', extensions: ['*'] },
];

/** A list of names that stays readable: the first eight, then how many more. */
export function shortList(names: readonly string[]): string {
  const shown = names.slice(0, 8).join('\n');
  return names.length > 8 ? `${shown}\nand ${names.length - 8} more` : shown;
}

/** One box of words and buttons; gives the index of the button, Esc meaning the last. */
async function ask(window: BrowserWindow, message: string, detail: string, buttons: string[]): Promise<number> {
  const last = buttons.length - 1;
  const options = { type: 'warning' as const, message, detail, buttons, defaultId: 0, cancelId: last, noLink: true };
  return (await dialog.showMessageBox(window, options)).response;
}

/** Asks about a file that should not be saved over unasked. */
async function askOver(window: BrowserWindow, message: string, detail: string): Promise<OverAnswer> {
  const answers = ['elsewhere', 'replace', 'cancel'] as const;
  return answers[await ask(window, message, detail, ['Save as another file', 'Replace it', 'Cancel'])] ?? 'cancel';
}

/** The path with our ending where the maker gave none. */
function withEnding(path: string): string {
  return /\.[^./\\]+$/.test(path) ? path : `${path}.${ENDINGS[0]}`;
}

/** The questions as dialogs over `window`. */
export function questionsOver(window: () => BrowserWindow): Questions {
  return {
    async fileToOpen() {
      const { canceled, filePaths } = await dialog.showOpenDialog(window(), {
        title: 'Open a movement',
        properties: ['openFile'],
        filters: FILTERS,
      });
      return canceled ? undefined : filePaths[0];
    },
    async fileToSave(name) {
      const { canceled, filePath } = await dialog.showSaveDialog(window(), {
        title: 'Save the movement',
        defaultPath: join(app.getPath('documents'), withEnding(name)),
        filters: FILTERS,
        properties: ['createDirectory', 'showOverwriteConfirmation'],
      });
      if (canceled || !filePath) return undefined;
      const path = withEnding(filePath);
      // The dialog asked about the name as typed; with our ending it may be another file that exists.
      if (path !== filePath && existsSync(path) && !(await this.replaceFiles([path]))) return undefined;
      return path;
    },
    async folderForExport() {
      const { canceled, filePaths } = await dialog.showOpenDialog(window(), {
        title: 'Choose a folder for the exported files',
        buttonLabel: 'Export here',
        properties: ['openDirectory', 'createDirectory'],
      });
      return canceled ? undefined : filePaths[0];
    },
    async saveChanges(name) {
      const detail = 'Changes that are not saved are lost.';
      const answers = ['save', 'letGo', 'cancel'] as const;
      const answer = await ask(window(), `Save the changes to ${name}?`, detail, ['Save', "Don't save", 'Cancel']);
      return answers[answer] ?? 'cancel';
    },
    overChanged: (name) =>
      askOver(
        window(),
        `${name} has changed on disk.`,
        'Another program, or another person, changed the file after it was opened here.',
      ),
    overReadOnly: (name) =>
      askOver(window(), `${name} is marked as read-only.`, 'Whoever marked it so does not want it changed.'),
    overLinkToNothing: (name, to) =>
      askOver(
        window(),
        `${name} is a link to a file that is not there.`,
        `It leads to ${to}. Replacing puts a file where the link is.`,
      ),
    async encodingOf(name, choices) {
      const message = `In which encoding was ${name} written?`;
      const samples = choices.map(({ called, sample }) => `${called}:  ${sample}`).join('\n');
      const detail = `It is no Unicode text. Choose the line whose letters are right:\n\n${samples}`;
      const answer = await ask(window(), message, detail, [...choices.map(({ called }) => called), 'Cancel']);
      return choices[answer]?.encoding;
    },
    async replaceFiles(names) {
      const message =
        names.length === 1 ? 'This file exists already.' : `${counted(names.length, 'file')} exist already.`;
      return (await ask(window(), message, shortList(names), ['Replace', 'Cancel'])) === 0;
    },
    async takeUp(name, keptAtMs) {
      const message = `There is unsaved work on ${name}.`;
      const detail = `It was kept on ${new Date(keptAtMs).toLocaleString()}, before the program ended unexpectedly.`;
      const answers = ['takeUp', 'throwAway', 'later'] as const;
      return (
        answers[await ask(window(), message, detail, ['Take it up', 'Throw it away', 'Ask again later'])] ?? 'later'
      );
    },
  };
}
