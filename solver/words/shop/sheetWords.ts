/** The sentences that printed sheets and files ask for. */
import type { SheetWords } from '../../files/index.ts';
import type { Movement } from '../../movement/schema.ts';
import { plantingSays } from '../planting/plantingWords.ts';
import { speakerOf } from '../speaker.ts';
import { CUTTING_CAUTIONS, cutterSays } from '../teeth/cuttingWords.ts';
import { dividingWaySays, nearWaySays } from '../teeth/dividingWords.ts';

/** What is said of a document in its sheets, for its unit, decimals and names. */
export function sheetWordsOf(movement: Movement): SheetWords {
  const speaker = speakerOf(movement);
  return {
    planting: (placed) => plantingSays(placed, speaker),
    cutter: ({ cutter }) => cutterSays(cutter, speaker),
    dividing: ({ dividing: [exact], nearest: [near] }) => {
      if (exact) return dividingWaySays(exact, speaker);
      return near ? `nearest: ${nearWaySays(near, speaker)}` : 'by angles';
    },
    cuttingCautions: CUTTING_CAUTIONS.join(' '),
  };
}
