/** Every text file for the workshop, in the movement's own words. */
import { type Sheet, sheetsOf } from '../../solver/files/index.ts';
import type { PlacedMovement } from '../../solver/planting/placed.ts';
import { sheetWordsOf } from '../../solver/words/shop/index.ts';

/** As `sheetsOf`, with the words that window and command line hand it. */
export function allSheets(placed: PlacedMovement): readonly Sheet[] {
  return sheetsOf(placed, sheetWordsOf(placed.movement));
}
