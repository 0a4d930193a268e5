/** The workshop off the window's thread: one question, one answer, in the order asked. */

import { type FontBytes, SheetFonts } from '../../solver/files/pages/index.ts';
import type { Movement } from '../../solver/movement/schema.ts';
import { plantMovement } from '../../solver/planting/index.ts';
import type { PlacedMovement } from '../../solver/planting/placed.ts';
import { type AnswerTo, type Question, type QuestionName, Workshop } from './questions.ts';

/** A question on its way to the worker. */
export interface Asked {
  readonly ticket: number;
  /** Told once; later questions about the same movement name its number only. */
  readonly number: number;
  readonly movement?: Movement | undefined;
  readonly fonts?: FontBytes | undefined;
  readonly question: Question;
}

/** What the worker sends back. */
export type Told =
  | { readonly kind: 'answer'; readonly ticket: number; readonly answer: AnswerTo<QuestionName> }
  | { readonly kind: 'failed'; readonly ticket: number; readonly says: string };

const scope = self as unknown as DedicatedWorkerGlobalScope; // this file only runs as a worker
let workshop: Workshop | undefined;
let planted: { readonly number: number; readonly placed: PlacedMovement } | undefined;

function answer({ number, movement, fonts, question }: Asked): AnswerTo<QuestionName> {
  if (fonts) workshop = new Workshop(new SheetFonts(fonts));
  if (movement) planted = { number, placed: plantMovement(movement) };
  if (!workshop || planted?.number !== number) throw new Error(`movement ${number} was not sent with its question`);
  return workshop.answer(planted.placed, question);
}

scope.onmessage = ({ data }: MessageEvent<Asked>) => {
  const { ticket } = data;
  let told: Told;
  try {
    told = { kind: 'answer', ticket, answer: answer(data) };
  } catch (error) {
    told = { kind: 'failed', ticket, says: error instanceof Error ? error.message : String(error) };
  }
  scope.postMessage(told);
};
