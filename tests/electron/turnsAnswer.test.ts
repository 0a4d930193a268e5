/** What `depthwright turns` answers, for a reader and for another program. */
import { describe, expect, it } from 'vitest';
import { turnsAnswer } from '../../electron/cli/turnsAnswer.ts';
import type { Movement } from '../../solver/movement/schema.ts';
import { plantMovement } from '../../solver/planting/index.ts';
import { sketchMovement } from '../train/turningMovement.ts';

const answerOf = (movement: Movement) => turnsAnswer(plantMovement(movement));

describe('the answer of turns', () => {
  const movement = sketchMovement({
    wheels: { a: ['A', 20], b: ['B', 60], c: ['C', 30] },
    depths: ['a b'],
    drive: { arbor: 'A', period: { value: 1, unit: 'h' } },
    indications: [{ id: 'i', name: 'three hours', arbor: 'B', period: { value: 3, unit: 'h' } }],
  });

  it('has a line for every arbor, the hands, and what is to be seen to', () => {
    const report = answerOf(movement);
    expect(report.code).toBe(0);
    expect(report.text).toMatch(/arbor 2 +-1\/3 +-0\.3333333333 +anticlockwise +clockwise +3 h/);
    expect(report.text).toContain('arbor 3  not driven');
    expect(report.text).toContain('Three hours: 3 h');
    // What another program reads knows parts by their ids.
    expect(JSON.parse(JSON.stringify(report.json))).toMatchObject({
      arbors: [{ id: 'A' }, { id: 'B', rate: { turns: '-1/3', period: '3 h' } }, { id: 'C', state: 'notDriven' }],
      indications: [{ id: 'i', name: 'three hours', achievedPeriod: '3 h' }],
    });
  });

  it('says problems where a hand is wrong or a ring is locked', () => {
    const wrong = {
      ...movement,
      indications: movement.indications.map((shown) => ({ ...shown, sense: 'clockwise' as const })),
    };
    expect(answerOf(wrong).code).toBe(1);
    expect(answerOf(wrong).text).toContain('the wrong way');
  });
});
