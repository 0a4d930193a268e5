/** What went wrong with a file, in a sentence that says what was tried, on what, and what would help. */
import { basename } from 'node:path';

const REASONS: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file or folder',
  EACCES: 'access is denied; check the permissions of the file and its folder',
  EPERM: 'the system does not permit it; check the permissions, or whether another program holds it',
  EROFS: 'the disk is read-only; save to another place',
  ENOSPC: 'the disk is full; make room or save to another place',
  EDQUOT: 'your share of the disk is full; make room or save to another place',
  EISDIR: 'it is a folder, and a file is needed',
  ENOTDIR: 'part of its path is a file, not a folder',
  EBUSY: 'another program holds it; close that program and try again',
  EMFILE: 'too many files are open; close some programs and try again',
  ENAMETOOLONG: 'its name is too long; choose a shorter one',
  EIO: 'the disk reported an error; save to another disk',
};

/** The system's code of an error ("ENOSPC"), or an empty string. */
export function codeOf(error: unknown): string {
  return error instanceof Error && 'code' in error && typeof error.code === 'string' ? error.code : '';
}

/**
 * One sentence about a failed file call.
 *
 * @param verb what was tried: "read", "saved", "written"
 */
export function fileTrouble(verb: string, path: string, error: unknown): string {
  const code = codeOf(error);
  const reason = REASONS[code] ?? (error instanceof Error ? error.message : String(error));
  return `${basename(path)} could not be ${verb}: ${reason}${code && REASONS[code] ? ` (${code})` : ''}.`;
}
