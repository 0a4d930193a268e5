/** Sizes as measured: they stand where contact, clearance, shake and stacks read them, and the drawn ones are kept. */
import { describe, expect, it } from 'vitest';
import { gapBetween, shakeOf, stackOf } from '../../solver/clearance/index.ts';
import { readingTables } from '../../solver/files/pages/readingTables.ts';
import { consequencesOf, editOfSize, partSizes, sizeReadings, trueSize } from '../../solver/made/index.ts';
import type { ArborId, PartId } from '../../solver/movement/ids.ts';
import { applyEdit } from '../../solver/movement/index.ts';
import type { Movement, Reading } from '../../solver/movement/schema.ts';
import { plantMovement } from '../../solver/planting/index.ts';
import { cuttingDataOf } from '../../solver/teeth/cutting/index.ts';
import { refusalSays, speakerOf } from '../../solver/words/index.ts';
import { changesSay, doubtSays } from '../../solver/words/shop/index.ts';
import { movementOf } from '../marking/placedByHand.ts';

/** Ids of this test's own movement, named by the kind that is asked for. */
const arbor = (id: string) => id as ArborId;
const part = (id: string) => id as PartId;

/**
 * Two depths by hand (SOURCES.md) with plates 20 apart: third wheel of 60, m 0.8, tip radius 25.104, beside a centre
 * arbor of Ø 4 at 28.8: 28.8 − 25.104 − 2 = 1.696 between them.
 */
function worked(readings: readonly object[] = []): Movement {
  const wheel = (id: string, on: string, teeth: number, level: number) => ({
    id,
    arbor: on,
    teeth,
    size: { module: 0.8 },
    form: 'cycloidal',
    level,
    thickness: 2,
  });
  const bearings = (pivot: number) =>
    ['back', 'front'].map((plate) => ({ plate, bore: pivot + 0.04, pivot, length: 2 }));
  const outline = { kind: 'circle', centre: [0, 22], radius: 60 };
  return movementOf({
    title: 'Worked example in a frame',
    plates: [
      { id: 'back', outline, levels: { from: -2, to: 0 } },
      { id: 'front', outline, levels: { from: 20, to: 22 }, markedFace: 'up' },
    ],
    arbors: [
      { id: 'centre', at: [0, 0], diameter: 4, bearings: bearings(3) },
      { id: 'escape', at: [0, 45], bearings: bearings(1) },
      { id: 'third', at: [17, 23], bearings: bearings(1.5), endShake: 0.2 },
    ],
    wheels: [
      wheel('w1', 'centre', 64, 3),
      wheel('p1', 'third', 8, 3),
      wheel('w2', 'third', 60, 8),
      wheel('p2', 'escape', 8, 8),
    ],
    rules: [
      { id: 'h1', kind: 'held', point: 'centre', at: [0, 0] },
      { id: 'h2', kind: 'held', point: 'escape', at: [0, 45] },
      { id: 'd1', kind: 'depth', wheels: ['w1', 'p1'] },
      { id: 'd2', kind: 'depth', wheels: ['w2', 'p2'] },
    ],
    readings: readings.map((reading, index) => ({ id: `r${index + 1}`, plusMinus: 0.02, ...reading })),
  });
}

function sizeOf(movement: Movement, key: string) {
  const found = partSizes(movement).find((size) => size.key === key);
  if (!found) {
    throw new Error(
      `no size ${key} among ${partSizes(movement)
        .map((size) => size.key)
        .join(', ')}`,
    );
  }
  return found;
}

/** The movement with all that was measured of one size in use, or with the drawing back. */
function using(movement: Movement, key: string, value?: number): Movement {
  const edit = editOfSize(movement, sizeOf(movement, key), value);
  if (!edit) throw new Error(`no edit of ${key}`);
  const edited = applyEdit(movement, edit);
  if (edited.kind === 'refused') throw new Error(JSON.stringify(edited.why));
  return edited.movement;
}

function gapAside(movement: Movement): number {
  const gap = gapBetween(plantMovement(movement), part('w2'), part('centre'));
  return gap?.direction === 'plan' ? gap.gap : Number.NaN;
}

describe('a measured size in use', () => {
  it('over the tips: the gap to the next arbor and the contact follow; the calculated size comes back', () => {
    const drawn = worked();
    expect(gapAside(drawn)).toBeCloseTo(1.696, 3);
    const cut = using(drawn, 'diameter w2', 50.6);
    // 28.8 − 25.3 − 2, by hand.
    expect(gapAside(cut)).toBeCloseTo(1.5, 9);
    const found = consequencesOf(plantMovement(drawn), plantMovement(cut));
    expect(found.moves).toEqual([]);
    const [depth] = found.depths;
    expect(depth?.rule).toBe('d2');
    expect(depth?.after.distance).toBeCloseTo(27.2, 9);
    expect(changesSay(found, speakerOf(cut)).join('\n')).toContain('as deep as before at 27.200 mm');
    const back = using(cut, 'diameter w2');
    expect(back.wheels[2]).toEqual(drawn.wheels[2]);
  });

  it('tips cut away to a tenth above the pitch circle let go before the next take up', () => {
    // The teeth can only touch where both reach, an arc far shorter than the pitch of 2.51.
    const short = using(worked(), 'diameter w2', 48.2);
    const { depths } = consequencesOf(plantMovement(worked()), plantMovement(short));
    expect(depths.map(({ before, after }) => [before.runs, after.runs])).toEqual([['free', 'apart']]);
  });

  it('pivots and holes: the side shake follows, by hand (hole − pivot) / 2', () => {
    const drawn = worked();
    const z = 9;
    expect(shakeOf(drawn).aside(arbor('third'), z)).toBeCloseTo(0.02, 9);
    const worn = [0, 1].reduce((movement, n) => using(movement, `bore third ${n}`, 1.6), drawn);
    expect(shakeOf(worn).aside(arbor('third'), z)).toBeCloseTo(0.05, 9);
    const thin = [0, 1].reduce((movement, n) => using(movement, `diameter third ${n}`, 1.48), worn);
    expect(shakeOf(thin).aside(arbor('third'), z)).toBeCloseTo(0.06, 9);
    const { plays } = consequencesOf(plantMovement(drawn), plantMovement(thin));
    expect(plays).toHaveLength(1);
    expect(plays[0]).toMatchObject({ arbor: 'third', before: { end: 0.2 }, after: { end: 0.2 } });
    expect(plays[0]?.after.side).toBeCloseTo(0.06, 9);
    expect(thin.arbors[2]?.bearings[1]).toMatchObject({ pivot: 1.48, bore: 1.6, asDrawn: { pivot: 1.5, bore: 1.54 } });
    // One back, the other as measured.
    expect(using(thin, 'bore third 1').arbors[2]?.bearings[1]).toMatchObject({ bore: 1.54, asDrawn: { pivot: 1.5 } });
  });

  it('a pivot that is thicker than its hole is refused in words, and nothing is lost', () => {
    const movement = worked([{ kind: 'diameter', of: ['third'], bearing: 0, value: 1.6 }]);
    const edit = editOfSize(movement, sizeOf(movement, 'diameter third 0'), 1.6);
    const edited = edit && applyEdit(movement, edit);
    if (edited?.kind !== 'refused') throw new Error('A pivot of 1.6 went into a bore of 1.54.');
    expect(refusalSays(edited, speakerOf(movement))).toMatch(/bore/);
    expect(sizeReadings(movement)[0]?.measured?.length).toBeCloseTo(1.6, 12);
  });

  it('thicknesses fill the stack: five tenths of a millimetre more leave as much less room', () => {
    const roomOf = (movement: Movement) => {
      const stack = stackOf(movement, arbor('third'));
      if (stack.kind === 'none' || !('room' in stack)) throw new Error('the third arbor runs between two plates');
      return stack.room;
    };
    const drawn = worked();
    // 20 between the plates less 3 to 10: 13.
    expect(roomOf(drawn)).toBeCloseTo(13, 9);
    expect(roomOf(using(drawn, 'thickness w2', 2.5))).toBeCloseTo(12.5, 9);
    // A front plate of 2.4: its marked face stays at 22, so 19.6 is left between the two.
    expect(roomOf(using(drawn, 'thickness front', 2.4))).toBeCloseTo(12.6, 9);
    expect(using(using(drawn, 'thickness front', 2.4), 'thickness front').plates).toEqual(drawn.plates);
  });

  it('run-out and end shake stand in their fields', () => {
    const movement = using(using(worked(), 'runOut w2', 0.06), 'endShake third', 0.35);
    expect(movement.wheels[2]).toMatchObject({ runOut: 0.06, asDrawn: { runOut: 0 } });
    expect(movement.arbors[2]).toMatchObject({ endShake: 0.35, asDrawn: { endShake: 0.2 } });
    expect(using(movement, 'endShake third').arbors[2]?.asDrawn).toBeUndefined();
  });
});

describe('readings of sizes', () => {
  const tip = { kind: 'diameter', of: ['w2'] };
  const doubtsOf = (...readings: readonly object[]) =>
    sizeReadings(worked(readings)).flatMap(({ doubts }) =>
      doubts.map((doubt) => doubtSays(doubt, speakerOf(worked(readings)))),
    );

  it('are combined by size, against the drawn one', () => {
    const movement = worked([
      { ...tip, value: 50.2 },
      { ...tip, value: 50.22 },
      { kind: 'thickness', of: ['w2'], value: 2.03 },
    ]);
    const [over, thick] = sizeReadings(movement);
    expect(over?.measured?.length).toBeCloseTo(50.21, 9);
    expect(over?.size.drawn).toBeCloseTo(2 * 25.104, 3);
    expect(over?.isUsed).toBe(false);
    expect(thick?.size).toMatchObject({ field: 'thickness', drawn: 2, inUse: 2 });
    const used = using(movement, 'diameter w2', over?.measured?.length);
    expect(sizeReadings(used)[0]?.isUsed).toBe(true);
    expect(sizeReadings(used)[0]?.size.drawn).toBeCloseTo(2 * 25.104, 3);
  });

  it.each([
    ['in inches', 50.2 / 25.4],
    ['taken as inches', 50.2 * 25.4],
    ['ten times too large', 502],
    ['ten times too small', 5.02],
    ['a radius', 25.1],
  ])('%s is asked about, and means 50.2', (_, value) => {
    const movement = worked([{ ...tip, value }]);
    const [reading] = movement.readings;
    const found = reading && trueSize(reading, sizeOf(movement, 'diameter w2'), movement);
    expect(found?.kind).toBe('doubt');
    expect(found?.kind === 'doubt' && found.meant).toBeCloseTo(50.2, 9);
    // The maker says that it is right: it is used.
    const stands = { by: 'A. Maker', date: '2026-05-01' };
    expect(sizeReadings(worked([{ ...tip, value, stands }]))[0]?.measured?.length).toBeCloseTo(value, 9);
  });

  it('what the part itself forbids is asked about', () => {
    expect(doubtsOf({ ...tip, value: 44 })[0]).toContain('leaves no teeth');
    expect(doubtsOf({ kind: 'runOut', of: ['w2'], value: 6 })[0]).toContain('more than the teeth are deep');
    expect(doubtsOf({ kind: 'endShake', of: ['third'], value: 30 })[0]).toContain('whole frame');
    expect(doubtsOf({ kind: 'thickness', of: ['w2'], value: -2 })[0]).toContain('above zero');
    expect(
      doubtsOf({ kind: 'runOut', of: ['w2'], value: 0 }, { kind: 'endShake', of: ['third'], value: 0.02 }),
    ).toEqual([]);
  });

  it('flat jaws over an odd count bridge two tips: the tips stand further out', () => {
    const odd = (readings: readonly object[]) => {
      const movement = worked(readings);
      return {
        ...movement,
        wheels: movement.wheels.map((wheel) => (wheel.id === 'w2' ? { ...wheel, teeth: 61 } : wheel)),
      };
    };
    const [, , wheel] = odd([]).wheels;
    const over = wheel && cuttingDataOf(wheel, odd([])).overTips;
    const tipRadius = 30.5 * 0.8 + 1.38 * 0.8;
    // Between pointed tips, R (1 + cos π/z), and tips as wide as a tooth: the reading lies between the two.
    expect(over?.reads).toBeGreaterThanOrEqual(tipRadius * (1 + Math.cos(Math.PI / 61)) - 1e-9);
    expect(over?.reads).toBeLessThan(2 * tipRadius);
    const movement = odd([{ ...tip, value: over?.reads, taken: { how: 'jaws' } }]);
    expect(sizeReadings(movement)[0]?.measured?.length).toBeCloseTo(2 * tipRadius, 2);
  });

  it('a bearing that is gone is no size, and its reading harms nothing', () => {
    const movement = worked([{ kind: 'bore', of: ['third'], bearing: 7, value: 1.6 }]);
    expect(sizeReadings(movement)).toEqual([]);
    const [gone] = movement.readings as readonly Reading[];
    expect(gone?.bearing).toBe(7);
  });

  it('takes tips that the drawing states itself as drawn, and gives them back', () => {
    const set = applyEdit(worked([{ kind: 'diameter', of: ['w2'], value: 49.98 }]), {
      kind: 'change',
      id: 'w2',
      set: { tipDiameter: 50 },
    });
    if (set.kind === 'refused') throw new Error(JSON.stringify(set.why));
    expect(sizeOf(set.movement, 'diameter w2')).toMatchObject({ drawn: 50, inUse: 50, isReplaced: false });
    const cut = using(set.movement, 'diameter w2', 49.98);
    expect(sizeOf(cut, 'diameter w2')).toMatchObject({ drawn: 50, inUse: 49.98, isReplaced: true });
    expect(using(cut, 'diameter w2').wheels[2]).toEqual(set.movement.wheels[2]);
    // Tips of the form: 2 × 25.104, the two depths by hand (SOURCES.md).
    const ofForm = using(worked(), 'diameter w2', 50.1);
    expect(sizeOf(ofForm, 'diameter w2')).toMatchObject({
      drawn: expect.closeTo(50.208, 3),
      inUse: 50.1,
      isReplaced: true,
    });
    expect(using(ofForm, 'diameter w2').wheels[2]).toEqual(worked().wheels[2]);
  });

  it('has a blank box on the record for every size, every hole and every depth, with what is wanted', () => {
    const tables = new Map(readingTables(plantMovement(worked())).map((table) => [table.heading, table]));
    expect([...tables.keys()]).toEqual(['Depths', 'Wheels as cut', 'Pivots and their holes', 'Holes as drilled']);
    expect(tables.get('Wheels as cut')?.rows[2]?.slice(1)).toEqual(['50.208', '', '2.000', '', '', '', '']);
    expect(tables.get('Pivots and their holes')?.rows[4]).toEqual([
      'arbor 3, plate 1',
      '1.500',
      '',
      '1.540',
      '',
      '',
      '',
    ]);
    // Two depths by hand (SOURCES.md): (16.65530, 23.49556).
    expect(tables.get('Holes as drilled')?.rows.map((row) => row.slice(0, 3))).toEqual([
      ['arbor 1', '0.000', '0.000'],
      ['arbor 2', '0.000', '45.000'],
      ['arbor 3', '16.655', '23.496'],
    ]);
    for (const { columns, rows } of tables.values()) {
      for (const row of rows) {
        expect(row).toHaveLength(columns.length);
        columns.forEach(({ box }, index) => {
          if (box) expect(row[index]).toBe('');
        });
      }
    }
  });
});
