/** Limits by kind of pair, and how the document keeps them. */
import { describe, expect, it } from 'vitest';
import { checkMovement, planGapsOwed } from '../../solver/clearance/index.ts';
import type { PartId } from '../../solver/movement/ids.ts';
import { readMovement, writeMovement } from '../../solver/movement/index.ts';
import { plantMovement } from '../../solver/planting/index.ts';
import { arborAt, sceneOf, wheelOf } from './scenes.ts';

/** Two wheels 0.6 apart, and a post 0.6 from the first: both keep the general 0.5. */
function scene(limits: object = {}) {
  const [a, b] = [arborAt('A', 0, 0), arborAt('B', 35.6, 0)];
  return sceneOf({
    limits,
    arbors: [a.arbor, b.arbor],
    rules: [a.rule, b.rule, { id: 'p', kind: 'held', point: 'P', at: [0, 22.6] }],
    wheels: [wheelOf('a', 'A', 40, 0), wheelOf('b', 'B', 30, 0)],
    posts: [{ id: 'P', at: [0, 22.6], diameter: 4, levels: { from: -5, to: 10 } }],
  });
}
const found = (limits: object): string[] =>
  checkMovement(plantMovement(scene(limits))).map(({ parts, wanted }) => `${[...parts].sort().join(' ')} ${wanted}`);

describe('limits by kind of pair', () => {
  it('hold for their kinds in either order, and leave the others alone', () => {
    expect(found({})).toEqual([]);
    expect(found({ pairs: [{ between: ['wheel', 'post'], plan: 0.8 }] })).toEqual(['P a 0.8']);
    expect(found({ pairs: [{ between: ['post', 'wheel'], plan: 0.8 }] })).toEqual(['P a 0.8']);
    expect(found({ pairs: [{ between: ['wheel', 'wheel'], plan: 0.8 }] })).toEqual(['a b 0.8']);
    expect(found({ pairs: [{ between: ['wheel', 'wheel'], height: 5 }] })).toEqual([]);
  });
  it('may be smaller than the general ones, and the first that fits counts', () => {
    expect(found({ radialGap: 1 })).toHaveLength(2);
    expect(found({ radialGap: 1, pairs: [{ between: ['wheel', 'post'], plan: 0.3 }] })).toEqual(['a b 1']);
    const twice = ['wheel', 'post'].map(() => ['wheel', 'post']);
    expect(found({ pairs: twice.map((between, i) => ({ between, plan: [0.3, 0.9][i] })) })).toEqual([]);
  });
  it('are looked for as far as the widest of them', () => {
    expect(found({ pairs: [{ between: ['wheel', 'post'], plan: 60 }] })).toContain('P b 60');
  });
});

describe('what two parts owe each other before they are drawn', () => {
  const owed = (limits: object, first: string, second: string, rules: readonly object[] = []) => {
    const movement = scene(limits);
    const more = rules as typeof movement.rules; // whole rules: the scene is not read from text again
    return planGapsOwed({ ...movement, rules: [...movement.rules, ...more] })(first as PartId, second as PartId);
  };

  it('is what the check asks of the pair', () => {
    expect(owed({ radialGap: 0.7 }, 'a', 'P')).toBe(0.7);
    expect(owed({ pairs: [{ between: ['post', 'wheel'], plan: 2 }] }, 'a', 'P')).toBe(2);
    expect(owed({ pairs: [{ between: ['post', 'wheel'], plan: 2 }] }, 'a', 'b')).toBe(0.5);
  });
  it('is nothing between wheels that mesh, on one arbor, and for what has no body', () => {
    const depth = { kind: 'depth', id: 'd', wheels: ['a', 'b'], use: 'calculated', allowance: 0, leaveOut: false };
    expect(owed({}, 'a', 'b', [depth])).toBeUndefined();
    expect(owed({}, 'a', 'b', [{ ...depth, leaveOut: true }])).toBe(0.5);
    expect(owed({}, 'a', 'A')).toBeUndefined();
    expect(owed({}, 'a', 'no such part')).toBeUndefined();
  });
});

describe('the document', () => {
  it('of an older file has the usual tolerances, and writes none of them', () => {
    const movement = scene();
    expect(movement.stackTolerance).toEqual({ piece: 0.02, plates: 0.05 });
    expect(writeMovement(movement)).not.toMatch(/stackTolerance|pairs/);
  });
  it('keeps what is set, and names a kind that it does not know', () => {
    const set = sceneOf({
      stackTolerance: { piece: 0.01 },
      limits: { pairs: [{ between: ['hand', 'plate'], height: 1 }] },
    });
    const again = readMovement(writeMovement(set));
    expect(again.kind === 'movement' && again.movement).toEqual(set);
    const bad = readMovement(
      JSON.stringify({
        format: 'depthwright-movement',
        version: 2,
        limits: { pairs: [{ between: ['wheel', 'pillar'] }] },
      }),
    );
    expect(bad.kind === 'problems' && bad.problems[0]?.path).toContain('limits.pairs[0].between[1]');
  });
});
