/** Every reason against a change, and every fault of a typed measure, in millimetres and in inches with odd names. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { EditRefusal } from '../../solver/movement/edits/refusal.ts';
import { applyEdit, type Edit } from '../../solver/movement/index.ts';
import { type MeasureProblem, parseAngle, parseLength } from '../../solver/movement/measures.ts';
import { measureProblemSays, refusalSays } from '../../solver/words/index.ts';
import { count, eachKind, ids, type Kinds, of, rule } from './kinds.ts';
import { bothUnits, expectSpoken, oddlyNamed } from './spoken.ts';

const speakers = bothUnits();
const part = ids<string>('zz0', 'zz1', 'zz3', 'zz8', 'zz12');
const typed = fc.constantFrom('twelve', '12 13', 'furlong');
const problem = fc.record({
  path: fc.constantFrom('limits.radialGap', 'rules[2].plusMinus', 'drilling.safeHeight'),
  found: fc.constantFrom('“zz3”, the post itself', 'a length below nothing'),
  expected: fc.constant('another'),
  remedy: fc.constantFrom('choose another than “zz6”', 'correct it'),
  says: fc.constant(''),
});

const REFUSALS: Kinds<EditRefusal> = {
  unsound: of('unsound', {
    problems: fc.array(
      fc.oneof(
        problem,
        problem.map((each) => ({ ...each, id: 'zz6' })),
      ),
    ),
  }),
  unknownPart: of('unknownPart', { id: fc.constant('great'), near: part }),
  tooManyArbors: of('tooManyArbors', { most: count }),
  noSuchTurn: of('noSuchTurn', { place: count, length: count }),
  idByRenaming: of('idByRenaming', { part }),
  sameName: of('sameName', { part }),
  nameTaken: of('nameTaken', { wanted: fc.constant('great') }),
  noPlaceOfItsOwn: of('noPlaceOfItsOwn', { part }),
  notAPoint: of('notAPoint', { part }),
  noValue: of('noValue', { rule }),
  notADepth: of('notADepth', { rule }),
  noSuchBearing: of('noSuchBearing', { arbor: ids('zz1', 'zz2'), bearings: count }),
  nothingToPaste: of('nothingToPaste'),
  notDescribed: of('notDescribed', { field: fc.constantFrom('rules', 'accepted') }),
  notDrilled: of('notDrilled', { point: ids('zz1', 'zz5') }),
  notMade: of('notMade', { point: ids('zz1', 'zz5') }),
  notAccepted: of('notAccepted'),
};

const FAULTS: Kinds<MeasureProblem> = {
  nothing: of('nothing', { of: fc.constantFrom('length', 'angle') }),
  someWithoutUnit: of('someWithoutUnit', { of: fc.constantFrom('length', 'angle') }),
  tooLong: of('tooLong', { of: fc.constant('length') }),
  tooManyTurns: of('tooManyTurns', { of: fc.constant('angle') }),
  endsEarly: of('endsEarly', { of: fc.constantFrom('length', 'angle') }),
  notUnderstood: of('notUnderstood', { of: fc.constantFrom('length', 'angle'), text: typed }),
  noNumber: of('noNumber', { of: fc.constantFrom('length', 'angle'), text: typed }),
  notFinite: of('notFinite', { of: fc.constantFrom('length', 'angle'), text: typed }),
  unknownUnit: of('unknownUnit', { of: fc.constantFrom('length', 'angle'), text: typed }),
};

describe('a change that does not apply', () => {
  eachKind(REFUSALS, (why, speaker) => refusalSays({ kind: 'refused', why }, speaker), speakers);

  it.each<[string, Edit]>([
    ['a part twice', { kind: 'add', to: 'marks', item: { id: 'zz3', at: [0, 0] } }],
    ['a depth of one axis', { kind: 'change', id: 'zz12', set: { wheels: ['zz7', 'zz8'] } }],
    ['a pivot wider than its bore', { kind: 'change', id: 'zz1', set: { bearings: [{ bore: 1, pivot: 2 }] } }],
    ['a pipe on itself', { kind: 'change', id: 'zz2', set: { ridesOn: 'zz2' } }],
    ['a measure below nothing', { kind: 'setValue', rule: 'zz12', value: -3 }],
    ['no point', { kind: 'setCrossing', point: 'zz8' }],
  ])('%s is told by names alone', (_, edit) => {
    const movement = oddlyNamed('mm');
    const [speaker] = speakers;
    const outcome = applyEdit(movement, edit);
    expect(outcome.kind).toBe('refused');
    if (outcome.kind === 'refused' && speaker) expectSpoken(refusalSays(outcome, speaker), speaker);
  });
});

describe('a measure that cannot be read', () => {
  // What is accepted names units on purpose, so only the sentence before it is asked.
  const fault = (each: MeasureProblem, speaker: (typeof speakers)[number]) =>
    measureProblemSays(each, speaker).split(' Accepted are ')[0] ?? '';
  eachKind(FAULTS, fault, speakers);

  it('has examples that are read', () => {
    const examples = (parsed: { kind: string; problem?: MeasureProblem }) => {
      const [speaker] = speakers;
      const says = parsed.problem && speaker ? measureProblemSays(parsed.problem, speaker) : '';
      return (
        /such as (.*)\.$/
          .exec(says)?.[1]
          ?.split(/, (?=\d\S* )|, or sums such as | or |(?<=12\.5|54\.67|54\.67°|"), /) ?? []
      );
    };
    const lengths = examples(parseLength(''));
    const angles = examples(parseAngle(''));
    expect(lengths.length).toBeGreaterThan(5);
    for (const each of lengths) expect(parseLength(each).kind, each).toBe('length');
    expect(angles.length).toBeGreaterThan(4);
    for (const each of angles) expect(parseAngle(each).kind, each).toBe('angle');
  });
});
