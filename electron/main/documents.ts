/** The documents that the page holds handles of, with what the page never sees: their paths. */
import { randomUUID } from 'node:crypto';
import { basename } from 'node:path';
import type { DocumentHandle } from '../bridge.ts';

/** Endings of a movement's file: our own first, plain JSON as well. */
export const ENDINGS = ['depthwright', 'json'] as const;
export const UNTITLED = 'Untitled movement';

/** A document that the page holds, with its file. */
export interface ShellDocument {
  readonly handle: DocumentHandle;
  /** Where it is saved; absent for a movement without a file. */
  readonly path?: string;
  /** Digest of what the file held when it was read or last saved. */
  readonly digest?: string;
}

/** The open documents by their handles. */
export class Documents {
  readonly #documents = new Map<DocumentHandle, ShellDocument>();

  /** Adds a document: one with a file, or a blank. */
  add(file?: { readonly path: string; readonly digest?: string }): ShellDocument {
    const document = { handle: randomUUID(), ...file };
    this.#documents.set(document.handle, document);
    return document;
  }

  /** The document of a handle; a stranger's handle is a broken promise of the page. */
  of(handle: DocumentHandle): ShellDocument {
    const document = this.#documents.get(handle);
    if (!document) throw new Error('The page named a document that the shell never opened.');
    return document;
  }

  /** Notes where a document is saved now, and what its file holds. */
  saved(handle: DocumentHandle, path: string, digest: string): void {
    this.#documents.set(handle, { handle, path, digest });
  }
}

/** What a document is called in titles and dialogs. */
export function nameOf(document: ShellDocument): string {
  return document.path === undefined ? UNTITLED : basename(document.path);
}
