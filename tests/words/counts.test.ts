/** Every kind of outcome of a search for counts, printed with any figures. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type CountsFault,
  type CountsProgress,
  type CountsRow,
  findCounts,
  type NoCounts,
  ratioOfPeriods,
  verifyTrain,
} from '../../solver/train/counts/index.ts';
import { digitsOf } from '../../solver/train/turning/rational.ts';
import * as words from '../../solver/words/train/index.ts';
import { count, eachKind, type Kinds, mm, of, size, spoken } from './kinds.ts';
import { bothUnits, expectSpoken } from './spoken.ts';
import { error, exact } from './trainKinds.ts';

const speakers = bothUnits();
const found = fc.oneof(mm, fc.constant(Number.NaN), fc.constant(Number.POSITIVE_INFINITY));

const FAULTS: Kinds<CountsFault> = {
  notWhole: of('notWhole', { found, from: count, to: count }),
  notInOrder: of('notInOrder', {
    from: fc.option(found, { nil: undefined }),
    to: fc.option(found, { nil: undefined }),
  }),
  notPositive: of('notPositive', { found }),
  noRatio: of('noRatio', { found: fc.oneof(found, fc.constantFrom('0/5', 'often')) }),
  beyondExact: of('beyondExact', { stages: count, teeth: count }),
  noneLeft: of('noneLeft'),
  notWithWorm: of('notWithWorm'),
  groupsOfRange: of('groupsOfRange'),
  inTwoGroups: of('inTwoGroups'),
  noStage: of('noStage', { found, last: count }),
  branchTooLong: of('branchTooLong'),
  tooManyRatios: of('tooManyRatios', { stages: count }),
};

/** Every option that a search or a joint search can refuse. */
const OPTIONS = [
  'drivers.from',
  'driven',
  'stages.to',
  'worm.starts.from',
  'worm.wheel',
  'centreDistance.module',
  'largestPrime',
  'tolerancePpm',
  'best',
  'equalSums',
  'sharedStages',
  'indications[1].stages',
  'indications[0].ratio',
  'indications',
  'ratio',
];

describe('what is wrong with a question', () =>
  eachKind<CountsFault>(
    FAULTS,
    (why, speaker) => OPTIONS.map((field) => words.countsProblemSays({ field, why }, speaker)).join(' '),
    speakers,
  ));

it('every option has a name of its own', () => {
  const [speaker] = speakers;
  if (!speaker) throw new Error('nobody speaks');
  const names = OPTIONS.map((field) => words.countsProblemSays({ field, why: { kind: 'noneLeft' } }, speaker));
  expect(new Set(names).size).toBe(OPTIONS.length);
  expect(names.join(' ')).not.toContain('An option');
});

describe('what a search finds', () => {
  const row = fc.tuple(exact, error).map(([ratio, off]) => {
    return { ratio, digits: digitsOf(ratio), error: off, errorPpm: 0, trains: [] } as CountsRow;
  });
  const NONE: Kinds<NoCounts> = {
    outOfReach: of('outOfReach', { stages: count, low: size, high: size }),
    allTried: of('allTried', { withinPpm: size }),
  };
  eachKind<NoCounts>(
    NONE,
    (why, speaker) => words.countsSay({ kind: 'none', target: { n: 3n, d: 2n }, why }, speaker),
    speakers,
  );

  it('ratios, the nearest of none, what it does now', () => {
    const rows = fc.array(row, { minLength: 1, maxLength: 3 });
    spoken(
      fc.tuple(exact, rows),
      ([target, all], say) => words.countsSay({ kind: 'found', target, rows: all }, say),
      speakers,
    );
    spoken(
      fc.tuple(exact, row),
      ([target, nearest], say) =>
        words.countsSay({ kind: 'none', target, why: { kind: 'allTried', withinPpm: 2.5 }, nearest }, say),
      speakers,
    );
    spoken(size, (withinPpm, speaker) => words.noJointCountsSay({ withinPpm }, speaker), speakers);
    const doing = fc.oneof(of('stages', { stages: count }), of('ratios', { stages: count }), of('shared'));
    const progress = fc.record({ done: fc.constant(0.5), doing }) as fc.Arbitrary<CountsProgress>;
    spoken(progress, words.searchingCountsSay, speakers);
  });

  it('one ratio is one, one tooth is one', () => {
    const [speaker] = speakers;
    const result = findCounts({ ratio: 2, stages: 1, drivers: { from: 8, to: 8 }, driven: { from: 16, to: 16 } });
    if (result.kind !== 'found' || !speaker) throw new Error('16 over 8 is 2');
    expect(words.countsSay(result, speaker)).toBe('1 ratio for 2; the best is 2 = 2, exact.');
  });
});

it('typed trains and periods that cannot be read are told by what stands over them', () => {
  for (const speaker of speakers) {
    for (const [train, target] of [
      ['46/9 x 104/9', '59.06'],
      ['often', '2'],
      ['2/1', 'never'],
      ['2/1', '2'],
    ] as const) {
      expectSpoken(words.verifiedSays(verifyTrain(train, target), speaker), speaker);
    }
    const period = ratioOfPeriods('soon', '12 h');
    expectSpoken(period.kind === 'refused' ? words.noPeriodSays(period) : '', speaker);
  }
});
