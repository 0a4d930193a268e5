/** The workshop off the window's thread: one question, one answer, in the order asked. */
import { SheetFonts } from '../../solver/files/pages/index.ts';
import type { PlacedMovement } from '../../solver/planting/placed.ts';
import type { Steps } from '../../solver/steps.ts';
import { type Service, type ServingScope, serve } from '../desk/serve.ts';
import type { WorkshopWork } from './askWorkshop.ts';
import { type AnswerTo, type Question, type QuestionName, Workshop } from './questions.ts';

let workshop: Workshop | undefined;

// biome-ignore lint/correctness/useYield: it is over in one step
function* answerSteps<Name extends QuestionName>(
  question: Question<Name>,
  placed: () => PlacedMovement,
): Steps<never, AnswerTo<Name>> {
  if (!workshop) throw new Error('the lettering was not sent before the first question');
  // The workshop answers the question that it is asked: TypeScript does not narrow a mapped union by its generic name.
  return workshop.answer(placed(), question as Question) as AnswerTo<Name>;
}

const service: Service<WorkshopWork> = {
  // biome-ignore lint/correctness/useYield: it is over in one step
  *lettering(fonts) {
    workshop = new Workshop(new SheetFonts(fonts));
    return undefined;
  },
  sheets: answerSteps<'sheets'>,
  page: answerSteps<'page'>,
  files: answerSteps<'files'>,
  handover: answerSteps<'handover'>,
  consequences: answerSteps<'consequences'>,
  offPlaces: answerSteps<'offPlaces'>,
};

serve<WorkshopWork>(self as unknown as ServingScope, service); // this file only runs as a worker
