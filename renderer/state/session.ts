/** What commands ask of the shell, or of the browser's part of it; `../shell/session.ts` answers. */
import type { ExportFile, KeptVersion, VersionText } from '../../electron/bridge.ts';
import type { Movement } from '../../solver/movement/schema.ts';

/** Opening, saving and handing over, each with the questions that belong to it. */
export interface Session {
  begin(): Promise<void>;
  open(): Promise<void>;
  /** Opens a file that was opened before, by the number that the shell gave it. */
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
