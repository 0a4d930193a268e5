/** The lettering of printed sheets as bytes: beside the bundled command line, or in the package it comes from. */
import { readFileSync, realpathSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { type FontBytes, SheetFonts } from '../../solver/files/pages/index.ts';

const PACKAGE = 'dejavu-fonts-ttf/ttf';

/** One face: next to the program that was started, or from the package. */
function bytesOf(name: string): Uint8Array {
  // Package managers start programs through a link.
  const started = process.argv[1] === undefined ? undefined : realpathSync(process.argv[1]);
  const beside = started === undefined ? undefined : join(dirname(started), 'lettering', name);
  if (beside !== undefined) {
    try {
      return readFileSync(beside);
    } catch {
      // Run from the sources: the package has it.
    }
  }
  return readFileSync(createRequire(started ?? join(process.cwd(), 'any.js')).resolve(`${PACKAGE}/${name}`));
}

/** Both faces, ready for layout. */
export function sheetFonts(): SheetFonts {
  const bytes: FontBytes = { regular: bytesOf('DejaVuSans.ttf'), bold: bytesOf('DejaVuSans-Bold.ttf') };
  return new SheetFonts(bytes);
}
