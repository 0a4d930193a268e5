/** Speed of the sheets of a movement of 200 arbors. Goal (issue 7): all sheets within 5 s. */

import { readFileSync } from 'node:fs';
import { handoverOf, preflight, zipOf } from '../../solver/files/index.ts';
import { printedFilesOf, SheetFonts } from '../../solver/files/pages/index.ts';
import { pdfSheetsOf } from '../../solver/files/pages/printedFiles.ts';
import { markingSteps } from '../../solver/marking/index.ts';
import { plantMovement } from '../../solver/planting/index.ts';
import { sheetWordsOf } from '../../solver/words/shop/index.ts';
import { allSheets } from '../files/allSheets.ts';
import { movementOfText } from '../support/movements.ts';
import { HEADING, line, time } from './measure.ts';

const ARBORS = 200;
const A_ROW = 20;

/** Two hundred arbors on a plate, each struck from two before it; seeded only by their numbers. */
function largeMovement(): string {
  const places = Array.from({ length: ARBORS }, (_, i): [number, number] => {
    const [column, row] = [i % A_ROW, Math.floor(i / A_ROW)];
    return [15 + column * 14 + (row % 2) * 6, 15 + row * 16 + ((column * column * 3) % 7) * 0.9];
  });
  const distance = (a: number, b: number): number => {
    const [x, y] = places[a] ?? [0, 0];
    const [u, v] = places[b] ?? [0, 0];
    return Math.hypot(x - u, y - v);
  };
  const rules = places.flatMap((at, i): object[] => {
    if (i < 2) return [{ id: `h${i}`, kind: 'held', point: `a${i}`, at }];
    const first = i % A_ROW === 0 ? i - A_ROW : i - 1;
    const above = i < A_ROW ? 0 : i - A_ROW + 1;
    const second = above === first ? 1 : above;
    return [first, second].map((other, k) => ({
      id: `d${i}.${k}`,
      kind: 'distance',
      points: [`a${other}`, `a${i}`],
      length: distance(other, i),
    }));
  });
  const corner = (x: number, y: number) => ({ x, y });
  return JSON.stringify({
    format: 'depthwright-movement',
    version: 2,
    title: 'Two hundred arbors',
    plates: [
      {
        id: 'p',
        name: 'Plate',
        levels: { from: 0, to: 3 },
        outline: { kind: 'path', vertices: [corner(0, 0), corner(310, 0), corner(310, 190), corner(0, 190)] },
      },
    ],
    arbors: places.map((at, i) => ({ id: `a${i}`, name: `Arbor ${i}`, at, diameter: 2 })),
    wheels: places.map((_, i) => ({
      id: `w${i}`,
      arbor: `a${i}`,
      teeth: 20,
      size: { module: 0.4 },
      form: 'involute',
      level: (i % 5) * 3,
      thickness: 2,
    })),
    rules,
  });
}

export function run(): void {
  const face = (name: string) =>
    new Uint8Array(readFileSync(new URL(`../../node_modules/dejavu-fonts-ttf/ttf/${name}.ttf`, import.meta.url)));
  const fonts = new SheetFonts({ regular: face('DejaVuSans'), bold: face('DejaVuSans-Bold') });
  const movement = movementOfText(largeMovement());
  const placed = plantMovement(movement);
  const steps = markingSteps(placed, { plate: 'p' });
  if (steps.length !== ARBORS || steps.some((step) => step.kind === 'unsettled')) {
    throw new Error('every arbor gets a step');
  }
  const text = allSheets(placed);
  if (/Problem/.test(text.at(-1)?.text ?? 'Problem')) throw new Error('the pre-flight is clean');
  const dxf = text.find(({ name }) => name.endsWith('numbers.dxf'));
  if (!dxf || preflight(dxf).holes.length !== ARBORS) throw new Error('every hole is in the file');
  console.log(HEADING);
  console.log(
    line(
      'marking-out steps of 200 arbors',
      time(() => markingSteps(placed, { plate: 'p' }), 20, 3),
    ),
  );
  console.log(
    line(
      'text sheets with their pre-flight',
      time(() => allSheets(placed), 10, 2),
      `${text.length} files`,
    ),
  );
  const pdfs = pdfSheetsOf(placed, { fonts, words: sheetWordsOf });
  const size = pdfs.reduce((sum, { bytes }) => sum + bytes.length, 0);
  console.log(
    line(
      'PDF sheets',
      time(() => pdfSheetsOf(placed, { fonts, words: sheetWordsOf }), 10, 1),
      `${pdfs.length} files, ${size} bytes`,
    ),
  );
  const pages = printedFilesOf(placed, { fonts, words: sheetWordsOf }, ['pdf', 'svg']).length - pdfs.length;
  console.log(
    line(
      'all sheets: text, PDF and each page as SVG',
      time(
        () => {
          allSheets(placed);
          printedFilesOf(placed, { fonts, words: sheetWordsOf });
        },
        10,
        1,
      ),
      `${pages} pages; goal 5000 ms`,
    ),
  );
  console.log(
    line(
      'handover with zip',
      time(() => zipOf(handoverOf(placed, { settings: { fonts, words: sheetWordsOf } })), 10, 1),
      'everything above in one file',
    ),
  );
}
