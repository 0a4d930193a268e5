/** Asks the workshop's thread; the window stays free meanwhile. One worker for the window, started at the first question. */

import regularAddress from 'dejavu-fonts-ttf/ttf/DejaVuSans.ttf?url';
import boldAddress from 'dejavu-fonts-ttf/ttf/DejaVuSans-Bold.ttf?url';
import type { FontBytes } from '../../solver/files/pages/index.ts';
import type { Movement } from '../../solver/movement/schema.ts';
import type { AnswerTo, Question, QuestionName } from './questions.ts';
import type { Asked, Told } from './workshopWorker.ts';

/** The answer to a question, or why there is none. */
export type Reply<Name extends QuestionName> =
  | { readonly kind: 'answer'; readonly answer: AnswerTo<Name> }
  | { readonly kind: 'failed'; readonly says: string };

/** A question that has no answer yet. */
interface Waiting {
  readonly settle: (told: Told | { readonly kind: 'failed'; readonly says: string }) => void;
}

let worker: Worker | undefined;
let fontsSent = false;
let sent: Movement | undefined;
let number = 0;
let tickets = 0;
const waiting = new Map<number, Waiting>();

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

function started(): Worker {
  if (worker) return worker;
  worker = new Worker(new URL('./workshopWorker.ts', import.meta.url), { type: 'module' });
  worker.onmessage = ({ data }: MessageEvent<Told>) => {
    waiting.get(data.ticket)?.settle(data);
    waiting.delete(data.ticket);
  };
  worker.onerror = (event) => {
    worker?.terminate();
    worker = undefined;
    fontsSent = false;
    sent = undefined;
    for (const { settle } of waiting.values()) settle({ kind: 'failed', says: `The work broke off: ${event.message}` });
    waiting.clear();
  };
  return worker;
}

/** Asks one question about a movement. Never rejects: what went wrong is told in words. */
export async function askWorkshop<Name extends QuestionName>(
  movement: Movement,
  question: Question<Name>,
): Promise<Reply<Name>> {
  let lettering: FontBytes;
  try {
    lettering = await readFonts();
  } catch (error) {
    fonts = undefined;
    return { kind: 'failed', says: error instanceof Error ? error.message : String(error) };
  }
  const at = started();
  const isNew = sent !== movement;
  if (isNew) number++;
  const asked: Asked = {
    ticket: ++tickets,
    number,
    ...(isNew ? { movement } : {}),
    ...(fontsSent ? {} : { fonts: lettering }),
    // One of the named questions: TypeScript does not narrow a mapped union by its generic name.
    question: question as Question,
  };
  sent = movement;
  fontsSent = true;
  return new Promise((resolve) => {
    waiting.set(asked.ticket, {
      settle: (told) =>
        // The worker answers the question that the ticket stands for.
        resolve(told.kind === 'answer' ? { kind: 'answer', answer: told.answer as AnswerTo<Name> } : told),
    });
    at.postMessage(asked);
  });
}
