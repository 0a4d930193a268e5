/** Two depths between the same axes: their sums of teeth must be equal, or the second is cut with another module (common practice). */
import { describe, expect, it } from 'vitest';
import { checkMovement, remediesFor } from '../../solver/clearance/index.ts';
import { applyEdit } from '../../solver/movement/index.ts';
import { plantMovement } from '../../solver/planting/index.ts';
import { arborAt, sceneOf } from './scenes.ts';
import { wordsOf } from './wordsOf.ts';

/** 30 into 30 on two arbors, and 40 into 24 from a pipe on the first; with `third`, the 40 drives another wheel as well. */
function scene(third = false) {
  const [a, b] = [arborAt('A', 0, 0), { id: 'B', name: 'B', at: [30, 0], diameter: 2 }];
  const wheel = (id: string, arbor: string, teeth: number, level: number) => ({
    ...{ id, name: id, arbor, teeth, size: { module: 1 }, form: 'involute', level, thickness: 2 },
  });
  return sceneOf({
    arbors: [
      a.arbor,
      b,
      { id: 'P', name: 'Pipe', at: [0, 0], diameter: 4, ridesOn: 'A', pipeBore: 2.1 },
      ...(third ? [{ id: 'C', name: 'C', at: [0, 40], diameter: 2 }] : []),
    ],
    rules: [
      a.rule,
      { id: 'way', kind: 'bearing', point: 'B', centre: 'A', angle: 0 },
      { id: 'one', kind: 'depth', wheels: ['a', 'b'] },
      { id: 'two', kind: 'depth', wheels: ['p', 'c'], use: 'held', held: 30 },
      ...(third ? [{ id: 'three', kind: 'depth', wheels: ['p', 'd'] }] : []),
    ],
    wheels: [
      wheel('a', 'A', 30, 0),
      wheel('b', 'B', 30, 0),
      wheel('p', 'P', 40, 5),
      wheel('c', 'B', 24, 5),
      ...(third ? [wheel('d', 'C', 40, 5)] : []),
    ],
  });
}

function sharedOf(movement: ReturnType<typeof scene>) {
  const placed = plantMovement(movement);
  const finding = checkMovement(placed).find(({ key }) => key.startsWith('depth sharedAxis '));
  if (!finding) throw new Error('not found');
  const remedies = remediesFor(placed, finding);
  return { finding, remedies, says: remedies.map(wordsOf(movement).cure) };
}

describe('depths that share two axes', () => {
  it('are cured by the second module: sixty teeth at module 1 are sixty-four at 60/64', () => {
    const movement = scene();
    const { remedies, says } = sharedOf(movement);
    expect(says[0]).toBe('Cut p and c with module 0.9375 for 1');
    for (const { edit } of remedies) {
      const edited = applyEdit(movement, edit);
      if (edited.kind === 'refused') throw new Error(JSON.stringify(edited.why));
      expect(checkMovement(plantMovement(edited.movement)).map(({ key }) => key)).not.toContainEqual(
        expect.stringContaining('sharedAxis'),
      );
    }
  });

  it('are not offered a module that another depth of the same wheel does not have', () => {
    const { says } = sharedOf(scene(true));
    expect(says).not.toContainEqual(expect.stringMatching(/^Cut p and c /));
  });
});
