/** File names of sheets: plain ASCII, safe on every file system, never taken twice. */

import { type PlateView, platesOf, plateViewOf } from '../marking/index.ts';
import type { Movement } from '../movement/schema.ts';

/** Stems of the plates' files, in the order of `platesOf`. */
export function fileStemsOf(movement: Movement): readonly string[] {
  const taken = new Set<string>();
  return platesOf(movement).map((id) => {
    const { plate, plateLabel } = plateViewOf(movement, id);
    return uniqueStem(plate?.name ?? plateLabel, taken);
  });
}

function uniqueStem(label: string, taken: Set<string>): string {
  const stem = plainName(label) || 'plate';
  let name = stem;
  for (let count = 2; taken.has(name); count++) name = `${stem}-${count}`;
  taken.add(name);
  return name;
}

/** Names that one of the three systems keeps for devices, whatever ending follows (Microsoft, Naming Files, Paths). */
const DEVICES = /^(con|prn|aux|nul|com\d|lpt\d|conin|conout|clock)$/i;
/** A name that no system keeps for itself. */
const kept = (name: string): string => (DEVICES.test(name) ? `${name} file` : name);

/** Letters and digits of any script, blanks, dots, dashes; `fallback` where a label has none. No system refuses it. */
export function fileName(label: string, fallback: string): string {
  const name = label
    .replace(/[^\p{L}\p{M}\p{N} ._-]+/gu, ' ')
    .replace(/\s+/g, ' ')
    .slice(0, 80)
    .replace(/^[ .]+|[ .]+$/g, '');
  return kept(name || fallback);
}

/** Small letters, digits and dashes of a label; empty when it has none. No system refuses it. */
export function plainName(label: string): string {
  const name = label
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 40);
  return kept(name).replace(' ', '-');
}

/** The part of a file's name that tells the face, and that it is drawn mirrored: "marked-face", "other-face-mirrored". */
export function faceStem({ isMarked, mirrored }: PlateView): string {
  return `${isMarked ? 'marked' : 'other'}-face${mirrored ? '-mirrored' : ''}`;
}
