/**
 * What the window asks of the workshop's own thread, and the answers: sheets, pages, files, what a change of the metal does.
 * Pure: the worker calls it, and so do the tests.
 */

import { handoverOf, type Sheet, sheetsOf, zipOf } from '../../solver/files/index.ts';
import {
  type Calibration,
  type PaperName,
  type PrintedSheet,
  pageSvg,
  printedFilesOf,
  printedSheetsOf,
  type SheetFonts,
  type SheetSettings,
} from '../../solver/files/pages/index.ts';
import { type Consequences, consequencesOf, type OffPlace, offPlaces } from '../../solver/made/index.ts';
import type { Movement } from '../../solver/movement/schema.ts';
import { plantMovement } from '../../solver/planting/index.ts';
import type { PlacedMovement } from '../../solver/planting/placed.ts';
import { sheetWordsOf } from '../../solver/words/shop/index.ts';

/** How the sheets are printed. */
export interface SheetChoice {
  readonly paper: PaperName;
  /** How far neighbouring tiles share the drawing, mm. */
  readonly overlap: number;
  /** What the two bars measured on the maker's own print, mm. */
  readonly calibration?: Calibration | undefined;
}

/** A sheet that can be had, before its pages are made. */
export interface ListedSheet {
  readonly name: string;
  readonly title: string;
  readonly pages: number;
}

/** A file to be written. */
export interface MadeFile {
  readonly name: string;
  /** Bytes stand in a buffer of their own, as the shell asks. */
  readonly content: string | Uint8Array<ArrayBuffer>;
}

/** Each question with its answer. */
export interface SheetQuestions {
  sheets: { asks: { choice: SheetChoice }; answers: { files: readonly Sheet[]; printed: readonly ListedSheet[] } };
  page: { asks: { choice: SheetChoice; sheet: string; page: number }; answers: string };
  files: { asks: { choice: SheetChoice }; answers: readonly MadeFile[] };
  handover: { asks: { choice: SheetChoice; earlier?: Movement | undefined }; answers: Uint8Array<ArrayBuffer> };
  /** What came of a change, from the movement before it. */
  consequences: { asks: { before: Movement }; answers: Consequences };
  /** Drilled holes off their places, with cures. */
  offPlaces: { asks: object; answers: readonly OffPlace[] };
}
export type QuestionName = keyof SheetQuestions;
/** A question by its name, with what it asks. */
export type Question<Name extends QuestionName = QuestionName> = {
  [N in Name]: { readonly name: N } & SheetQuestions[N]['asks'];
}[Name];
export type AnswerTo<Name extends QuestionName> = SheetQuestions[Name]['answers'];

function settingsOf({ paper, overlap, calibration }: SheetChoice, fonts: SheetFonts): SheetSettings {
  return { fonts, words: sheetWordsOf, paper, overlap, calibration };
}

/** Lays out sheets, remembering the last ones: their pages are asked for one by one. */
export class Workshop {
  private known:
    | { readonly placed: PlacedMovement; readonly key: string; readonly printed: readonly PrintedSheet[] }
    | undefined;

  constructor(private readonly fonts: SheetFonts) {}

  /** Answers one question about a planted movement. */
  answer(placed: PlacedMovement, question: Question): AnswerTo<QuestionName> {
    switch (question.name) {
      case 'sheets': {
        const printed = this.printed(placed, question.choice);
        const list = printed.map(({ name, title, pages }) => ({ name, title, pages: pages.length }));
        return { files: sheetsOf(placed, sheetWordsOf(placed.movement)), printed: list };
      }
      case 'page': {
        const page = this.printed(placed, question.choice).find(({ name }) => name === question.sheet)?.pages[
          question.page
        ];
        return page ? pageSvg(page, (mark) => this.fonts.width(mark.text, mark.size, mark.weight)) : '';
      }
      case 'files': {
        const texts = sheetsOf(placed, sheetWordsOf(placed.movement)).map(
          ({ name, text }): MadeFile => ({ name, content: text }),
        );
        const printed = printedFilesOf(placed, settingsOf(question.choice, this.fonts));
        return [...texts, ...printed.map(({ name, bytes }): MadeFile => ({ name, content: new Uint8Array(bytes) }))];
      }
      case 'handover': {
        const { earlier, choice } = question;
        return new Uint8Array(zipOf(handoverOf(placed, { settings: settingsOf(choice, this.fonts), earlier })));
      }
      case 'consequences':
        return consequencesOf(plantMovement(question.before), placed);
      case 'offPlaces':
        return offPlaces(placed.movement);
    }
  }

  private printed(placed: PlacedMovement, choice: SheetChoice): readonly PrintedSheet[] {
    const key = JSON.stringify(choice);
    if (this.known?.placed !== placed || this.known.key !== key) {
      this.known = { placed, key, printed: printedSheetsOf(placed, settingsOf(choice, this.fonts)) };
    }
    return this.known.printed;
  }
}
