/** How many files hold a kind's name as a literal, and that a new kind does not compile until it is whole. */
import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { FORMATS } from '../../solver/files/index.ts';
import { notCompiling } from './compiling.ts';

const TOP = resolve(import.meta.dirname, '../..');

/**
 * Files that may hold each name as a string literal. Wanted is one a room; what stands above that is only ever lowered.
 * Names that are words of other tables too (`depth`, `distance`, `radius`, `held`, `text`, `worm` of the counts, `carrier` of
 * what is wrong in a train) are counted as they stand.
 */
const ALLOWED = {
  // One file in movement, planting, marking and the window; steps of marking out have an `opposite` of their own.
  opposite: 5,
  samePlace: 4,
  inLine: 4,
  sameRadius: 4,
  evenSpacing: 4,
  clearBy: 4,
  involute: 3,
  cycloidal: 1,
  triangular: 1,
  lantern: 1,
  worm: 7,
  contrate: 4,
  carrier: 6,
  stepped: 4,
  dxf: 2,
  svg: 2,
  pdf: 2,
} as const;

const files = ['solver', 'renderer', 'electron'].flatMap((place) =>
  readdirSync(join(TOP, place), { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.(ts|svelte)$/.test(name))
    .map((name) => ({ name: `${place}/${name}`, text: readFileSync(join(TOP, place, name), 'utf8') })),
);

/** Files outside the room of words that hold a name as a string literal. */
const holding = (kind: string): readonly string[] =>
  files
    .filter(({ name, text }) => !name.startsWith('solver/words/') && text.includes(`'${kind}'`))
    .map(({ name }) => name);

describe('the name of a kind', () => {
  it.each(Object.entries(ALLOWED))('%s is a literal in no more than %i files', (kind, most) => {
    const found = holding(kind);
    expect(found.length, found.join('\n')).toBeLessThanOrEqual(most);
    expect(found.length).toBeGreaterThan(0);
  });
});

describe('a new file format', () => {
  it('does not compile until its table has it', () => {
    const broken = notCompiling({
      file: 'solver/files/formats/format.ts',
      change: ["FormatName = 'dxf'", "FormatName = 'dummy' | 'dxf'"],
      roots: ['solver/files/formats/formats.ts'],
      within: ['solver/files/'],
    });
    expect(broken).toEqual(['solver/files/formats/formats.ts']);
  }, 60_000);

  it('has an ending of its own', () => {
    const endings = Object.values(FORMATS).map(({ ending }) => ending);
    expect(new Set(endings).size).toBe(endings.length);
  });
});

describe('a new tooth form', () => {
  const trial = {
    file: 'solver/movement/forms/forms.ts',
    roots: ['solver/teeth/forms/kinds/formKinds.ts', 'solver/words/teeth/formWords.ts', 'renderer/slips/formFields.ts'],
    within: ['solver/movement/forms/', 'solver/teeth/', 'solver/words/teeth/', 'renderer/slips/'],
  };

  it('does not compile until every room has it', () => {
    const dummy = "dummy: { name: 'dummy', hasPins: false, fields: {} } as const, cycloidal:";
    expect(notCompiling({ ...trial, change: ['cycloidal:', dummy] })).toEqual([
      'renderer/slips/formFields.ts',
      'solver/teeth/forms/kinds/formKinds.ts',
      'solver/words/teeth/formWords.ts',
    ]);
  }, 60_000);

  it('does not compile until it is whole', () => {
    const half = "dummy: { name: 'dummy', fields: {} } as const, cycloidal:";
    expect(notCompiling({ ...trial, change: ['cycloidal:', half] })).toContain(trial.file);
  }, 60_000);
});

describe('a new coupling', () => {
  it('does not compile until every room has it', () => {
    const broken = notCompiling({
      file: 'solver/movement/couplings/couplings.ts',
      change: [
        'carrierSchema, steppedSchema]',
        "carrierSchema, steppedSchema, z.looseObject({ kind: z.literal('dummy'), id: wormSchema.shape.id })]",
      ],
      roots: [
        'solver/train/couplings/joins.ts',
        'solver/words/train/turningWords.ts',
        'renderer/offers/couplings/ways.ts',
        'renderer/slips/couplings/fieldsOfCoupling.ts',
      ],
      within: ['solver/movement/', 'solver/train/', 'solver/words/train/', 'renderer/offers/', 'renderer/slips/'],
    });
    expect(broken).toEqual([
      'renderer/offers/couplings/ways.ts',
      'renderer/slips/couplings/fieldsOfCoupling.ts',
      'solver/movement/couplings/couplings.ts',
      'solver/train/couplings/joins.ts',
      'solver/words/train/turningWords.ts',
    ]);
  }, 60_000);
});

describe('a new rule kind', () => {
  const TABLES = ['renderer', 'solver/marking/steps', 'solver/movement', 'solver/planting/front', 'solver/words'].map(
    (room) => `${room}/ruleKinds/ruleKinds.ts`,
  );

  it('does not compile until the table of each room has it, and asks nothing of any other file', () => {
    const broken = notCompiling({
      file: 'solver/movement/rule.ts',
      change: ['  heldRule,\n', "  heldRule,\n  z.looseObject({ ...heldRule.shape, kind: z.literal('dummy') }),\n"],
      roots: TABLES,
      within: ['solver/', 'renderer/'],
    });
    expect(broken).toEqual(TABLES);
  }, 120_000);
});
