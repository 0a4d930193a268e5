/** Which files a start of the program names: the arguments of the command line, of this run or of a second one. */
import { statSync } from 'node:fs';
import { resolve } from 'node:path';

/** Whether an argument names a folder: the application's own folder when the runtime is started by hand. */
function isFolder(path: string): boolean {
  return statSync(path, { throwIfNoEntry: false })?.isDirectory() ?? false;
}

/**
 * Files among the arguments, as whole paths. Switches are left out (after `--` everything is a file); a file that does
 * not exist is kept, so that opening it says so.
 *
 * @param args arguments without the program itself
 * @param folder what relative names are relative to
 */
export function filesNamed(args: readonly string[], folder: string): string[] {
  const end = args.indexOf('--');
  const before = (end < 0 ? args : args.slice(0, end)).filter((arg) => arg !== '' && !arg.startsWith('-'));
  const after = end < 0 ? [] : args.slice(end + 1);
  return [...before, ...after].map((arg) => resolve(folder, arg)).filter((path) => !isFolder(path));
}
