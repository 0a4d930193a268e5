/** The sentences that files are handed, as window and command line hand them. */
import type { SheetWords } from '../../solver/files/index.ts';
import { speakerOf } from '../../solver/words/index.ts';
import { plantingSays } from '../../solver/words/planting/index.ts';

export const words: SheetWords = { planting: (placed) => plantingSays(placed, speakerOf(placed.movement)) };
