/** Other crossings: never taken, found where they let all rules hold, and offered with the movement planted so. */
import { describe, expect, test } from 'vitest';
import { applyEdit } from '../../solver/movement/index.ts';
import type { Movement } from '../../solver/movement/schema.ts';
import { crossingCure, plantMovement } from '../../solver/planting/index.ts';
import { otherPlacing } from '../../solver/planting/kernel/otherPlacing.ts';
import { plantNetwork } from '../../solver/planting/kernel/plant.ts';
import type { NetworkResult } from '../../solver/planting/network.ts';
import { speakerOf } from '../../solver/words/index.ts';
import { crossingCureSays } from '../../solver/words/planting/index.ts';
import { arbor, buildMovement, distance, held, placeOf } from './buildMovement.ts';
import { strutChain } from './scenes/strutChain.ts';

const failing = ({ missBy, checks }: NetworkResult): number[] =>
  Array.from(missBy.keys()).filter((r) => !checks[r] && (missBy[r] ?? 0) > 1e-3);

test('chains of 30 points, every one sketched 10 mm off, are planted or the crossings that plant them are found', () => {
  let found = 0;
  for (let seed = 1; seed <= 60; seed++) {
    const { network } = strutChain(seed, 30, 10);
    const before = Float64Array.from(network.coords);
    const planted = plantNetwork(network);
    if (failing(planted).length === 0) continue;
    const other = otherPlacing(network, planted, failing);
    expect(other, `seed ${seed}`).toBeDefined();
    if (!other) continue;
    found++;
    expect(Math.max(...other.result.missBy)).toBeLessThanOrEqual(1e-9);
    expect(network.coords).toEqual(before);
  }
  expect(found).toBeGreaterThan(5);
});

/** P is sketched below the line of A and B; the depth from C is true above it. Q hangs on P. */
const wrongSide = (cp: number): Movement =>
  buildMovement({
    arbors: [arbor('A', 0, 0), arbor('B', 40, 0), arbor('C', 20, 60), arbor('P', 20, -19), arbor('Q', 35, -35)],
    rules: [
      held('a', 'A', 0, 0),
      held('b', 'B', 40, 0),
      held('c', 'C', 20, 60),
      distance('ap', 'A', 'P', 28),
      distance('bp', 'B', 'P', 28),
      distance('pq', 'P', 'Q', 22),
      distance('bq', 'B', 'Q', 36),
      distance('cp', 'C', 'P', cp),
    ],
  });
const above = Math.sqrt(28 * 28 - 20 * 20);

describe('a check that is over by a lot because its point is sketched on the wrong side', () => {
  const movement = wrongSide(60 - above);
  const placed = plantMovement(movement);
  const [over] = placed.disagreements;
  if (!over) throw new Error('nothing is over');

  test('is not cured by planting itself: the sketch chooses', () => {
    expect(placeOf(placed, 'P').y).toBeCloseTo(-above, 9);
    expect(over.gap).toBeCloseTo(2 * above, 9);
  });

  test('holds with the other crossing, which is offered with what moves', () => {
    const cure = crossingCure(placed, over);
    if (!cure) throw new Error('no crossing is offered');
    expect(cure.points.map(({ id }) => id)).toEqual(['P']);
    expect(cure.moves).toMatchObject({ count: 2 });
    expect(cure.planted.disagreements).toEqual([]);
    const edited = applyEdit(movement, cure.edit);
    if (edited.kind === 'refused') throw new Error(JSON.stringify(edited.why));
    expect(placeOf(plantMovement(edited.movement), 'P').y).toBeCloseTo(above, 9);
    expect(crossingCureSays(cure, speakerOf(movement))).toMatch(
      /^With the other crossing of P all of this holds: 2 points move, . the farthest, by \d/,
    );
  });

  test('is not offered a crossing with which it would still be over, nor one that breaks another rule', () => {
    const wrong = plantMovement(wrongSide(60 - above + 1));
    const [still] = wrong.disagreements;
    expect(still && crossingCure(wrong, still)).toBeUndefined();
    const both = buildMovement({
      ...movement,
      rules: [...movement.rules, { kind: 'bearing', id: 'down', point: 'P', centre: 'A', angle: 315.585 }],
    } as never);
    const told = plantMovement(both);
    for (const each of told.disagreements) expect(crossingCure(told, each)).toBeUndefined();
  });
});

test('arcs that miss because of an earlier crossing: that one is offered', () => {
  const movement = buildMovement({
    arbors: [arbor('A', 0, 0), arbor('B', 40, 0), arbor('P', 20, -19), arbor('D', 20, 60), arbor('R', 25, 40)],
    rules: [
      held('a', 'A', 0, 0),
      held('b', 'B', 40, 0),
      held('d', 'D', 20, 60),
      distance('ap', 'A', 'P', 28),
      distance('bp', 'B', 'P', 28),
      distance('pr', 'P', 'R', 25),
      distance('dr', 'D', 'R', 22),
    ],
  });
  const placed = plantMovement(movement);
  expect(placeOf(placed, 'R').state).toBe('contested');
  expect(placeOf(placed, 'P')).toMatchObject({ state: 'planted', y: -above });
  const [told] = placed.disagreements;
  const cure = told && crossingCure(placed, told);
  expect(cure?.points.map(({ id }) => id)).toEqual(['P']);
  expect(placeOf(cure?.planted ?? placed, 'R').state).toBe('planted');
});
