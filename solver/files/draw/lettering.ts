/** Lettering as single strokes: text shapes become open paths, the same for every file that a machine may follow. */
import type { DrawnVertex } from '../../marking/index.ts';
import type { ShapeOf } from '../drawing.ts';
import {
  BASELINE,
  CAPITAL_HEIGHT,
  CAPITAL_TOP,
  LETTER_GAP,
  LETTERS,
  MARKS_ABOVE,
  MARKS_BELOW,
  SMALL_TOP,
  UNKNOWN_LETTER,
  WRITTEN_AS,
} from './strokeLetters.ts';

/** One letter on a grid of its own, before it is scaled to its height. */
interface Letter {
  readonly width: number;
  /** Grid points of each stroke: x0, y0, x1, y1, … with the baseline at y = 0. */
  readonly strokes: readonly (readonly number[])[];
}

/** The strokes of a text; `height` of the shape is that of a capital. Each is an open path without bulges. */
export function strokesOfText(shape: ShapeOf<'text'>): readonly ShapeOf<'path'>[] {
  const scale = shape.height / CAPITAL_HEIGHT;
  const letters = lettersOf(shape.text);
  const left = shape.at[0] - alignedShift(shape) * widthOfLetters(letters) * scale;
  const paths: ShapeOf<'path'>[] = [];
  let pen = 0;
  for (const letter of letters) {
    for (const stroke of letter.strokes) {
      const vertices: DrawnVertex[] = [];
      for (let i = 0; i + 1 < stroke.length; i += 2) {
        const x = left + (pen + (stroke[i] ?? 0)) * scale;
        vertices.push({ x, y: shape.at[1] + (stroke[i + 1] ?? 0) * scale, bulge: 0 });
      }
      paths.push({ kind: 'path', closed: false, vertices });
    }
    pen += letter.width + LETTER_GAP;
  }
  return paths;
}

const alignedShift = ({ align }: ShapeOf<'text'>): number => (align === 'left' ? 0 : align === 'middle' ? 0.5 : 1);

/** Width of a text in single strokes, mm, for a capital of `height` mm. */
export function textWidth(text: string, height: number): number {
  return (widthOfLetters(lettersOf(text)) * height) / CAPITAL_HEIGHT;
}

function widthOfLetters(letters: readonly Letter[]): number {
  const sum = letters.reduce((total, letter) => total + letter.width + LETTER_GAP, 0);
  return Math.max(0, sum - LETTER_GAP);
}

/** Lowest and highest point that lettering can reach, as parts of the capital's height: tails, and marks over capitals. */
export const LETTER_REACH = { below: 2 / CAPITAL_HEIGHT, above: 10 / CAPITAL_HEIGHT } as const;

const known = new Map<string, readonly Letter[]>();

/** The letters of a text. Letters with marks are taken apart (NFD), others written with what there is, else a box. */
export function lettersOf(text: string): readonly Letter[] {
  const letters: Letter[] = [];
  for (const character of text.normalize('NFC')) letters.push(...lettersOfCharacter(character));
  return letters;
}

function lettersOfCharacter(character: string): readonly Letter[] {
  const before = known.get(character);
  if (before) return before;
  const made = makeLetters(character);
  known.set(character, made);
  return made;
}

function makeLetters(character: string): readonly Letter[] {
  const own = LETTERS[character];
  if (own !== undefined) return [parseLetter(own)];
  if (/^\s$/u.test(character)) return makeLetters(' ');
  // A combining mark that stands alone, or a control character, has nothing to show.
  if (/^[\p{M}\p{C}]$/u.test(character)) return [];
  const written = WRITTEN_AS[character];
  if (written !== undefined) return lettersOf(written);
  const [base = '', ...marks] = character.normalize('NFD');
  if (marks.length === 0 || base === character) return [parseLetter(UNKNOWN_LETTER)];
  const [first, ...rest] = makeLetters(base);
  return first ? [marks.reduce((letter, mark) => withMark(letter, base, mark), first), ...rest] : rest;
}

function parseLetter(code: string): Letter {
  const [width = '0', strokes = ''] = code.split('|');
  return {
    width: Number(width),
    strokes: strokes
      .split(' ')
      .filter((each) => each !== '')
      .map((each) => pointsOf(each, -BASELINE)),
  };
}

function pointsOf(digits: string, lift: number): readonly number[] {
  return [...digits].map((digit, index) => Number(digit) + (index % 2 === 1 ? lift : 0));
}

function withMark(letter: Letter, base: string, mark: string): Letter {
  const above = MARKS_ABOVE[mark];
  const code = above ?? MARKS_BELOW[mark];
  if (code === undefined) return letter;
  const isSmall = base === base.toLowerCase();
  const lift = above === undefined ? -BASELINE : (isSmall ? SMALL_TOP : CAPITAL_TOP) - BASELINE;
  const shift = letter.width / 2 - 2;
  const strokes = code.split(' ').map((each) => pointsOf(each, lift).map((v, i) => (i % 2 === 0 ? v + shift : v)));
  // The dot of i and j gives way to a mark.
  const kept = above !== undefined && (base === 'i' || base === 'j') ? letter.strokes.slice(0, 1) : letter.strokes;
  return { width: letter.width, strokes: [...kept, ...strokes] };
}
