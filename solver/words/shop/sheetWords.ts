/** The sentences that printed sheets and files ask for. */
import { buildable, checkMovement } from '../../clearance/index.ts';
import type { SheetWords } from '../../files/index.ts';
import type { Movement } from '../../movement/schema.ts';
import { buildableList } from '../clearance/buildWords.ts';
import { findingSays } from '../clearance/findingWords.ts';
import { plantingSays } from '../planting/plantingWords.ts';
import { speakerOf } from '../speaker.ts';
import { CUTTING_CAUTIONS, cutterSays } from '../teeth/cuttingWords.ts';
import { dividingWaySays, nearWaySays } from '../teeth/dividingWords.ts';
import { revisionSays } from './revisionWords.ts';
import { stepsText } from './stepsText.ts';
import { checkPhrase, crossingSays, datumSays, locusSays, stepSentences } from './stepWords.ts';

/** What is said of a document in its sheets, for its unit, decimals and names. */
export function sheetWordsOf(movement: Movement): SheetWords {
  const speaker = speakerOf(movement);
  return {
    planting: (placed) => plantingSays(placed, speaker),
    buildable: (placed) => {
      const list = buildable(placed, checkMovement(placed, { depths: true }));
      return buildableList(list, (finding) => findingSays(finding, speaker));
    },
    steps: (placed, options) => stepsText(placed, options, speaker),
    datum: ({ datum }) => datumSays(datum, speaker),
    locus: (locus, { datum }) => locusSays(locus, datum, speaker),
    crossing: (crossing) => crossingSays(crossing, speaker),
    check: (check) => checkPhrase(check, speaker),
    notes: (step, { datum }) =>
      stepSentences(step, datum, speaker).flatMap(({ about, says }) =>
        about === 'accuracy' || about === 'otherWay' || about === 'warning' ? [says] : [],
      ),
    changes: (earlier) => revisionSays(earlier, speaker),
    cutter: ({ cutter }) => cutterSays(cutter, speaker),
    dividing: ({ dividing: [exact], nearest: [near] }) => {
      if (exact) return dividingWaySays(exact, speaker);
      return near ? `nearest: ${nearWaySays(near, speaker)}` : 'by angles';
    },
    cuttingCautions: CUTTING_CAUTIONS.join(' '),
  };
}
