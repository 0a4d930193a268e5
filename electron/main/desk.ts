/**
 * The desk: opening, saving, exporting and leaving, with the questions that belong to each.
 *
 * It knows files and questions but no window, so it is tested without one. The invariant: the maker's present work is
 * given up only after he said so, and "saved" is said only after the file stands.
 */
import { basename, dirname } from 'node:path';
import { encodingChoices } from '../../solver/movement/index.ts';
import type {
  DocumentHandle,
  DocumentText,
  ExportReply,
  NewReply,
  OpenedDocument,
  OpenReply,
  PageState,
  SaveReply,
  VersionText,
} from '../bridge.ts';
import { sweepPieces } from '../files/atomicWrite.ts';
import {
  type Hindrance,
  type ReadOutcome,
  readDocumentFile,
  type SaveOutcome,
  saveDocumentFile,
} from '../files/documentFile.ts';
import { type FileToWrite, namesTrouble, presentNames, writeIntoFolder } from '../files/exportFolder.ts';
import { fileTrouble } from '../files/fileTrouble.ts';
import type { RecentFiles } from '../files/recentFiles.ts';
import type { Version, Versions } from '../files/versions.ts';
import { Documents, nameOf, type ShellDocument } from './documents.ts';
import type { OverAnswer, Questions } from './questions.ts';
import type { Safekeeping } from './safekeeping.ts';

/** What the desk asks and tells. */
export interface DeskParts {
  readonly questions: Questions;
  readonly recent: RecentFiles;
  readonly safekeeping: Safekeeping;
  readonly versions: Versions;
  /** The time, ms. */
  readonly now: () => number;
  /** Asks the page for the present text; undefined when it does not answer. */
  readonly presentText: () => Promise<DocumentText | undefined>;
  /** Called after a save that the page did not ask for itself. */
  readonly onSaved: (saved: { handle: string; name: string }) => void;
  /** Called when such a save failed. */
  readonly onFailed: (says: string) => void;
  /** Called whenever the list of recent files changed. */
  readonly onRecent: () => void;
}

/** A text on its way to a file; `known` is the digest of what the file should still hold. */
interface Saving {
  readonly path: string;
  readonly text: string;
  readonly known: string | undefined;
}

const NO_ANSWER: SaveReply = {
  kind: 'failed',
  says: 'The page did not give its movement, so nothing was saved. Try again; what was kept last is offered after a restart.',
};

/** Opens, saves and leaves documents, asking the maker where something could be lost. */
export class Desk {
  readonly documents = new Documents();
  readonly #parts: DeskParts;
  #state: PageState | undefined;

  constructor(parts: DeskParts) {
    this.#parts = parts;
  }

  /** What the page last told of itself. */
  get state(): PageState | undefined {
    return this.#state;
  }

  /** Takes the page's state; saved work needs no safekeeping. */
  async tellState(state: PageState): Promise<void> {
    this.documents.of(state.handle);
    this.#state = state;
    await this.#parts.safekeeping.note(state);
  }

  /** The page crashed: it has no state until it tells a new one. */
  pageGone(): void {
    this.#state = undefined;
    this.#parts.safekeeping.pageGone();
  }

  /** Work that was not saved when program or page last ended: the maker may take it up now, later or never. */
  async takeUpLeftWork(): Promise<OpenedDocument | undefined> {
    const { questions, safekeeping } = this.#parts;
    const left = await safekeeping.left();
    if (!left) return undefined;
    const answer = await questions.takeUp(left.work.name, left.work.keptAtMs);
    if (answer === 'throwAway') await safekeeping.throwAway(left);
    return answer === 'takeUp' ? safekeeping.takeUp(left, this.documents) : undefined;
  }

  /** Reads a file and opens it, after asking about unsaved changes. */
  async openPath(path: string): Promise<OpenReply> {
    const read = await this.#read(path);
    if (read.kind === 'cancelled') return read;
    if (read.kind === 'failed') {
      await this.#parts.recent.remove(path);
      this.#parts.onRecent();
      return read;
    }
    if (!(await this.mayLeave())) return { kind: 'cancelled' };
    const document = this.documents.add({ path, digest: read.digest });
    await this.#remember(path);
    await this.#parts.versions.keep(path, read.text, this.#parts.now());
    return {
      kind: 'opened',
      document: { handle: document.handle, name: nameOf(document), text: read.text, unsaved: false },
    };
  }

  async open(): Promise<OpenReply> {
    const path = await this.#parts.questions.fileToOpen();
    return path === undefined ? { kind: 'cancelled' } : this.openPath(path);
  }

  async openRecent(id: string): Promise<OpenReply> {
    const path = this.#parts.recent.pathOf(id);
    if (path === undefined) return { kind: 'failed', says: 'That file is no longer in the list of recent files.' };
    return this.openPath(path);
  }

  async newDocument(): Promise<NewReply> {
    if (!(await this.mayLeave())) return { kind: 'cancelled' };
    return { kind: 'blank', handle: this.documents.add().handle };
  }

  /** Saves to the document's own file, or asks for a place. */
  async save({ handle, text }: DocumentText): Promise<SaveReply> {
    const document = this.documents.of(handle);
    if (document.path === undefined) return this.saveAs({ handle, text });
    return this.#saveAsking(document, { path: document.path, text, known: document.digest });
  }

  /** Asks for a place and saves there. */
  async saveAs({ handle, text }: DocumentText): Promise<SaveReply> {
    const document = this.documents.of(handle);
    const path = await this.#parts.questions.fileToSave(document.path ?? this.#state?.title ?? nameOf(document));
    return path === undefined ? { kind: 'cancelled' } : this.#saveAsking(document, { path, text, known: undefined });
  }

  /** Asks for a folder and writes the files into it. */
  async exportFiles(files: readonly FileToWrite[]): Promise<ExportReply> {
    const names = files.map((file) => file.name);
    const trouble = namesTrouble(names);
    if (trouble) return { kind: 'failed', says: trouble };
    const folder = await this.#parts.questions.folderForExport();
    if (folder === undefined) return { kind: 'cancelled' };
    try {
      const present = await presentNames(folder, names);
      if (present.length > 0 && !(await this.#parts.questions.replaceFiles(present))) return { kind: 'cancelled' };
    } catch (error) {
      return { kind: 'failed', says: fileTrouble('looked into', folder, error) };
    }
    const outcome = await writeIntoFolder(folder, files);
    if (outcome.kind === 'failed') return outcome;
    return { kind: 'written', folder: basename(folder), names: [...outcome.names] };
  }

  /** Versions of the last days of a document's file. */
  async versions(handle: DocumentHandle): Promise<readonly Version[]> {
    const { path } = this.documents.of(handle);
    return path === undefined ? [] : this.#parts.versions.list(path);
  }

  /** The text of one version. */
  async versionText(handle: DocumentHandle, id: string): Promise<VersionText> {
    const { path } = this.documents.of(handle);
    if (path === undefined) return { kind: 'failed', says: 'A movement without a file has no versions. Save it once.' };
    return this.#parts.versions.text(path, id);
  }

  /** A version in place of the present text, unsaved; asks about unsaved changes first. */
  async goBackTo(handle: DocumentHandle, id: string): Promise<OpenReply> {
    const version = await this.versionText(handle, id);
    if (version.kind === 'failed') return version;
    if (!(await this.mayLeave())) return { kind: 'cancelled' };
    const document = this.documents.of(handle);
    return { kind: 'opened', document: { handle, name: nameOf(document), text: version.text, unsaved: true } };
  }

  /** Whether the present work may be given up: it is saved, or the maker saved it now, or lets it go. */
  async mayLeave(): Promise<boolean> {
    const state = this.#state;
    if (!state?.unsaved) return true;
    const document = this.documents.of(state.handle);
    const answer = await this.#parts.questions.saveChanges(state.title || nameOf(document));
    if (answer === 'cancel') return false;
    if (answer === 'letGo') {
      await this.#parts.safekeeping.letGo();
      return true;
    }
    const text = await this.#parts.presentText();
    const outcome = text ? await this.save(text) : NO_ANSWER;
    if (outcome.kind === 'failed') this.#parts.onFailed(outcome.says);
    if (outcome.kind !== 'saved') return false;
    this.#parts.onSaved({ handle: outcome.handle, name: outcome.name });
    return true;
  }

  /** Reads a file; one in an old encoding after asking for it. */
  async #read(
    path: string,
  ): Promise<Exclude<ReadOutcome, { kind: 'unknownEncoding' }> | { readonly kind: 'cancelled' }> {
    const read = await readDocumentFile(path);
    if (read.kind !== 'unknownEncoding') return read;
    const choices = encodingChoices(read.bytes);
    if (choices.length === 0) return { kind: 'failed', says: read.says };
    const encoding = await this.#parts.questions.encodingOf(basename(path), choices);
    if (encoding === undefined) return { kind: 'cancelled' };
    const again = await readDocumentFile(path, encoding);
    return again.kind === 'unknownEncoding' ? { kind: 'failed', says: again.says } : again;
  }

  /** Saves, asking about each thing that stands in the way, one after the other. */
  async #saveAsking(document: ShellDocument, { path, text, known }: Saving): Promise<SaveReply> {
    const allowed = new Set<Hindrance>();
    for (;;) {
      const digest = allowed.has('changedOnDisk') ? undefined : known;
      const outcome = await saveDocumentFile(path, text, digest, allowed);
      if (outcome.kind === 'failed') return outcome;
      if (outcome.kind === 'saved') {
        await this.#parts.versions.keep(path, text, this.#parts.now());
        return this.#saved(document, path, outcome.digest);
      }
      const answer = await this.#askOver(basename(path), outcome);
      if (answer === 'cancel') return { kind: 'cancelled' };
      if (answer === 'elsewhere') return this.saveAs({ handle: document.handle, text });
      allowed.add(outcome.kind);
    }
  }

  #askOver(name: string, outcome: Extract<SaveOutcome, { kind: Hindrance }>): Promise<OverAnswer> {
    const { questions } = this.#parts;
    if (outcome.kind === 'changedOnDisk') return questions.overChanged(name);
    if (outcome.kind === 'linkToNothing') return questions.overLinkToNothing(name, outcome.to);
    return questions.overReadOnly(name);
  }

  async #saved(document: ShellDocument, path: string, digest: string): Promise<SaveReply> {
    this.documents.saved(document.handle, path, digest);
    if (this.#state?.handle === document.handle) this.#state = { ...this.#state, unsaved: false };
    await this.#remember(path);
    await this.#parts.safekeeping.letGo();
    return { kind: 'saved', handle: document.handle, name: basename(path) };
  }

  async #remember(path: string): Promise<void> {
    await this.#parts.recent.add(path);
    this.#parts.onRecent();
    // What a killed run left beside this file, also of its kept version.
    await sweepPieces(dirname(path), (name) => name.startsWith(basename(path)));
  }
}
