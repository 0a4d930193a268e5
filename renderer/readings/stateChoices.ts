/** The states of a movement that can be compared: as drawn, at the end of each day, as it stands now, and other files. */

import { daysOf, movementAsOf } from '../../solver/made/index.ts';
import type { Movement } from '../../solver/movement/schema.ts';

/** A movement from another file, by its file's name. */
export interface OtherFile {
  readonly name: string;
  readonly movement: Movement;
}

/** A state that can be chosen. */
export interface StateChoice {
  readonly key: string;
  readonly says: string;
}

export const DRAWN = 'drawn';
export const NOW = 'now';
const DAY = 'day ';
const FILE = 'file ';

/** Every state, the earliest first; other files before them, as they were opened. */
export function stateChoices(movement: Movement, files: readonly OtherFile[]): readonly StateChoice[] {
  return [
    ...files.map((file, index) => ({
      key: `${FILE}${index}`,
      says: `${file.name}, revision ${file.movement.revision}`,
    })),
    { key: DRAWN, says: 'as drawn' },
    ...daysOf(movement).map((day) => ({ key: `${DAY}${day}`, says: `at the end of ${day}` })),
    { key: NOW, says: 'as it stands now' },
  ];
}

/** The movement in one of those states; undefined where the key names none of them any more. */
export function stateChosen(movement: Movement, files: readonly OtherFile[], key: string): Movement | undefined {
  if (key === NOW) return movement;
  if (key === DRAWN) return movementAsOf(movement, 'drawn');
  if (key.startsWith(DAY)) return movementAsOf(movement, key.slice(DAY.length));
  return key.startsWith(FILE) ? files[Number(key.slice(FILE.length))]?.movement : undefined;
}

/** The file behind a key, if it is one. */
export const fileChosen = (files: readonly OtherFile[], key: string): OtherFile | undefined =>
  key.startsWith(FILE) ? files[Number(key.slice(FILE.length))] : undefined;

/** The key of a file in the list. */
export const fileKey = (index: number): string => `${FILE}${index}`;
