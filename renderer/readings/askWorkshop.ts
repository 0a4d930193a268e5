/** Asks the workshop's thread; the window stays free meanwhile. One worker for the window, started at the first question. */

import regularAddress from 'dejavu-fonts-ttf/ttf/DejaVuSans.ttf?url';
import boldAddress from 'dejavu-fonts-ttf/ttf/DejaVuSans-Bold.ttf?url';
import type { FontBytes } from '../../solver/files/pages/index.ts';
import type { Movement } from '../../solver/movement/schema.ts';
import type { Listener } from '../desk/contract.ts';
import { WorkDesk } from '../desk/desk.ts';
import type { AnswerTo, Question, QuestionName } from './questions.ts';

/** The answer to a question, or why there is none. */
export type Reply<Name extends QuestionName> =
  | { readonly kind: 'answer'; readonly answer: AnswerTo<Name> }
  | { readonly kind: 'failed'; readonly says: string };

/** Each question, and the lettering that sheets are written in, which is sent before the first. */
export type WorkshopWork = {
  [Name in QuestionName]: { asks: Question<Name>; progress: never; answer: AnswerTo<Name> };
} & { lettering: { asks: FontBytes; progress: never; answer: undefined } };

const desk = new WorkDesk<WorkshopWork>(
  () => new Worker(new URL('./workshopWorker.ts', import.meta.url), { type: 'module' }),
  'Ask for it again.',
);

async function bytesOf(address: string): Promise<Uint8Array> {
  const reply = await fetch(address);
  if (!reply.ok) throw new Error(`the lettering could not be read (${reply.status})`);
  return new Uint8Array(await reply.arrayBuffer());
}

let fonts: Promise<FontBytes> | undefined;

function readFonts(): Promise<FontBytes> {
  fonts ??= Promise.all([bytesOf(regularAddress), bytesOf(boldAddress)]).then(([regular, bold]) => ({ regular, bold }));
  return fonts;
}

/** Has the worker its lettering? After a failure it may be another worker. */
let isLettered = false;

function sendLettering(lettering: FontBytes): void {
  if (isLettered) return;
  isLettered = true;
  desk.ask('lettering', lettering, { answer: () => undefined, failed: () => (isLettered = false) });
}

/** Asks one question about a movement. Never rejects: what went wrong is told in words. */
export async function askWorkshop<Name extends QuestionName>(
  movement: Movement,
  question: Question<Name>,
): Promise<Reply<Name>> {
  try {
    sendLettering(await readFonts());
  } catch (error) {
    fonts = undefined;
    return { kind: 'failed', says: error instanceof Error ? error.message : String(error) };
  }
  return new Promise((resolve) => {
    const listener: Listener<{ asks: unknown; progress: never; answer: AnswerTo<Name> }> = {
      answer: (answer) => resolve({ kind: 'answer', answer }),
      failed: (says) => {
        isLettered = false;
        resolve({ kind: 'failed', says });
      },
    };
    // One of the named questions: TypeScript does not narrow a mapped union by its generic name.
    desk.ask<QuestionName>((question as Question).name, question as Question, listener as never, movement);
  });
}
