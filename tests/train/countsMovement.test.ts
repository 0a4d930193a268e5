import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { ArborId } from '../../solver/movement/ids.ts';
import { applyEdit, emptyMovement, readMovement, writeMovement } from '../../solver/movement/index.ts';
import type { Movement } from '../../solver/movement/schema.ts';
import type { CountedTrain } from '../../solver/train/counts/counts.ts';
import { findJointCounts } from '../../solver/train/counts/jointCounts.ts';
import { editOfTrain, editOfTrains } from '../../solver/train/counts/movementFromCounts.ts';
import { findCounts } from '../../solver/train/counts/searchCounts.ts';
import { divide, fractionText, ONE, rational } from '../../solver/train/turning/rational.ts';
import { turnMovement } from '../../solver/train/turning/turnMovement.ts';

const train = (stages: CountedTrain['stages'], idlers = 0): Pick<CountedTrain, 'stages' | 'idlers'> => ({
  stages,
  idlers,
});

function edited(movement: Movement, made: ReturnType<typeof editOfTrain>): Movement {
  if (made.kind === 'refused') throw new Error(made.says);
  const result = applyEdit(movement, made.edit);
  if (result.kind === 'refused') throw new Error(JSON.stringify(result.why));
  return result.movement;
}

/** Turns of the last arbor for one of the first, as the turning of the finished movement says. */
function turnsOf(movement: Movement, arbors: readonly string[]): string {
  const driven = {
    ...movement,
    drive: { arbor: arbors[0] as ArborId, period: { value: 12, unit: 'h' }, sense: 'clockwise' },
  } as Movement;
  const rate = turnMovement(driven).arbors.get(arbors[arbors.length - 1] as ArborId)?.rate;
  return rate ? fractionText(rate.turns) : 'does not turn';
}

describe('a train goes into the movement in one edit', () => {
  it('turns there as the search said, survives save and load, and has no problems (property)', () => {
    const teeth = fc.integer({ min: 6, max: 120 });
    const stages = fc.array(fc.record({ driver: teeth, driven: teeth }), { minLength: 1, maxLength: 4 });
    fc.assert(
      fc.property(stages, fc.integer({ min: 0, max: 1 }), (list, idlers) => {
        const made = editOfTrain(emptyMovement(), train(list, idlers));
        const movement = edited(emptyMovement(), made);
        const ratio = list.reduce((product, stage) => divide(product, rational(stage.driven, stage.driver)), ONE);
        const sign = (list.length + idlers) % 2 === 1 ? '-' : '';
        expect(turnsOf(movement, made.kind === 'edit' ? made.arbors : [])).toBe(sign + fractionText(ratio));
        const again = readMovement(writeMovement(movement));
        expect(again.kind === 'movement' && again.movement).toEqual(movement);
      }),
      { numRuns: 60 },
    );
  });

  it('starts from an arbor that is there, gives fresh ids, and places arbors at their distances', () => {
    const first = editOfTrain(emptyMovement(), train([{ driver: 10, driven: 40 }]));
    const movement = edited(emptyMovement(), first);
    const second = editOfTrain(
      movement,
      train([
        { driver: 12, driven: 36 },
        { driver: 8, driven: 64 },
      ]),
      { from: 'S2', size: { module: 0.5 } },
    );
    const both = edited(movement, second);
    expect(both.arbors.map((arbor) => arbor.id)).toEqual(['S1', 'S2', 'S3', 'S4']);
    expect(turnsOf(both, ['S1', 'S4'])).toBe('-1/96');
    const at = (id: string): readonly [number, number] => both.arbors.find((arbor) => arbor.id === id)?.at ?? [0, 0];
    expect(Math.hypot(at('S3')[0] - at('S2')[0], at('S3')[1] - at('S2')[1])).toBeCloseTo(12, 2);
    expect(editOfTrain(movement, train([{ driver: 12, driven: 36 }]), { from: 'Z' }).kind).toBe('refused');
  });

  it('puts a worm in as a coupling, a returning train on a pipe, and the wish as an indication', () => {
    const worm = editOfTrain(
      emptyMovement(),
      train([
        { driver: 2, driven: 60, worm: true },
        { driver: 10, driven: 30 },
      ]),
    );
    expect(turnsOf(edited(emptyMovement(), worm), worm.kind === 'edit' ? worm.arbors : [])).toBe('-1/90');
    const hands = editOfTrain(
      emptyMovement(),
      train([
        { driver: 12, driven: 36 },
        { driver: 10, driven: 40 },
      ]),
      {
        returns: true,
        size: [{ module: 1 }, { module: 0.96 }],
        indication: { period: { value: 144, unit: 'h' } },
      },
    );
    const movement = edited(emptyMovement(), hands);
    expect(movement.arbors[2]?.ridesOn).toBe('S1');
    const turning = turnMovement({
      ...movement,
      drive: { arbor: 'S1' as ArborId, period: { value: 12, unit: 'h' }, sense: 'clockwise' },
    });
    expect(turning.indications[0]?.errorPpm).toBe(0);
    expect(turning.sharedAxes[0]?.fits).toBe(true);
  });
});

describe('joint search', () => {
  const limits = { drivers: { from: 8, to: 14 }, driven: { from: 20, to: 44 } };
  const range = (from: number, to: number): number[] =>
    Array.from({ length: to - from + 1 }, (_, index) => from + index);

  it('finds the least worst error that nested loops over all trains find', () => {
    const wanted = [7.31, 9.87];
    const result = findJointCounts({
      ...limits,
      sharedStages: 1,
      indications: wanted.map((ratio, index) => ({ name: `hand ${index}`, ratio, stages: 1 })),
      best: 3,
    });
    let least = Number.POSITIVE_INFINITY;
    const ratios = range(8, 14).flatMap((driver) => range(20, 44).map((driven) => driven / driver));
    for (const shared of ratios) {
      const worst = Math.max(
        ...wanted.map((ratio) => Math.min(...ratios.map((own) => Math.abs((shared * own) / ratio - 1)))),
      );
      least = Math.min(least, worst);
    }
    expect(result.kind).toBe('found');
    if (result.kind !== 'found') return;
    expect(result.rows[0]?.worstPpm).toBeCloseTo(least * 1e6, 6);
    expect(result.rows).toHaveLength(3);
  });

  it('shares a stage between a moon and a tide hand, and both go into one movement', () => {
    const result = findJointCounts({
      drivers: { from: 8, to: 30 },
      driven: { from: 20, to: 100 },
      sharedStages: 1,
      indications: [
        { name: 'moon', ratio: '59.061177706', stages: 2 },
        { name: 'lunar day', ratio: '2.0701002', stages: 1 },
      ],
      best: 2,
    });
    if (result.kind !== 'found') throw new Error(JSON.stringify(result));
    const [row] = result.rows;
    if (!row) throw new Error('no row');
    const made = editOfTrains(emptyMovement(), [
      { train: row.shared },
      ...row.branches.map((branch) => ({ train: branch.train, layOut: { from: '#0', headingDeg: 90 } })),
    ]);
    const movement = edited(emptyMovement(), made);
    expect(row.branches[0]?.train.stages).toHaveLength(2);
    const moon = row.branches[0];
    const shared = row.shared.stages.length + (moon?.train.stages.length ?? 0);
    const arbor = movement.arbors[shared]?.id ?? '';
    expect(turnsOf(movement, ['S1', arbor])).toBe(`-${moon ? fractionText(divide(ONE, moon.ratio)) : ''}`);
    // The same as one search for the moon alone of as many stages could not be better than exhaustive.
    const alone = findCounts({
      ratio: '59.061177706',
      stages: 3,
      drivers: { from: 8, to: 30 },
      driven: { from: 20, to: 100 },
      best: 1,
    });
    expect(alone.kind === 'found' && Math.abs(alone.rows[0]?.errorPpm ?? 0)).toBeLessThanOrEqual(
      Math.abs(moon?.errorPpm ?? 0) + 1e-9,
    );
  });

  it('says none where no shared stage serves all', () => {
    const wishes = [1000, 2].map((ratio) => ({ name: `${ratio}`, ratio, stages: 1 }));
    const none = findJointCounts({ ...limits, sharedStages: 1, indications: wishes });
    expect(none.kind === 'none' && none.withinPpm).toBeCloseTo(100_000, 6);
  });

  it('refuses bad numbers of stages, periods and hands in words', () => {
    const bad = findJointCounts({ ...limits, sharedStages: 3, indications: [{ name: 'a', ratio: -1, stages: 0 }] });
    const fields = bad.kind === 'refused' ? bad.problems.map((problem) => problem.field) : [];
    expect(fields).toEqual(
      expect.arrayContaining(['sharedStages', 'indications', 'indications[0].ratio', 'indications[0].stages']),
    );
  });
});
