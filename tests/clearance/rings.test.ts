import { describe, expect, it } from 'vitest';
import { checkMovement } from '../../solver/clearance/index.ts';
import { applyEdit } from '../../solver/movement/index.ts';
import { plantMovement } from '../../solver/planting/index.ts';
import { arborAt, sceneOf } from './scenes.ts';

/** Four wheels in a ring, the second and fourth both between the first and the third. */
function ring(more: object = {}, diagonal = 30) {
  const [a, c] = [arborAt('A', 0, 0), arborAt('C', diagonal, 0)];
  const wheel = (id: string, arbor: string, teeth: number) => ({
    id,
    arbor,
    teeth,
    size: { module: 1 },
    form: 'involute',
    level: 0,
    thickness: 2,
  });
  return sceneOf({
    arbors: [
      a.arbor,
      { id: 'B', name: 'B', at: [15, 20], diameter: 2 },
      c.arbor,
      { id: 'D', name: 'D', at: [15, -20], diameter: 2 },
    ],
    rules: [
      a.rule,
      c.rule,
      { id: 'ab', kind: 'depth', wheels: ['a', 'b'] },
      { id: 'bc', kind: 'depth', wheels: ['b', 'c'] },
      { id: 'cd', kind: 'depth', wheels: ['c', 'd'] },
      { id: 'da', kind: 'depth', wheels: ['d', 'a'] },
    ],
    wheels: [wheel('a', 'A', 20), wheel('b', 'B', 24), wheel('c', 'C', 20), wheel('d', 'D', 25)],
    ...more,
  });
}

const rings = (movement: ReturnType<typeof ring>) =>
  checkMovement(plantMovement(movement)).filter(({ kind }) => kind === 'ring');

describe('closed rings of depths', () => {
  it('that miss are findings with the miss in teeth, by the alternating sum of teeth times angle', () => {
    const placed = plantMovement(ring());
    const [found] = rings(ring());
    expect(found?.severity).toBe('stops');
    const said = Number(/misses by (\d\.\d+) of a tooth/.exec(found?.says ?? '')?.[1]);
    // Corner angles of the quadrangle times teeth, with alternating signs, in turns: its distance from a whole number
    // or, for four wheels, from a whole number as well (an even ring).
    const at = (id: string) => placed.places.get(id as never) ?? { x: 0, y: 0 }; // ids of the scene
    const corner = (p: string, q: string, r: string) => {
      const [u, v] = [at(p), at(r)].map(({ x, y }) => Math.atan2(y - at(q).y, x - at(q).x));
      return (((((v ?? 0) - (u ?? 0)) / (2 * Math.PI)) % 1) + 1) % 1;
    };
    const sum =
      20 * corner('D', 'A', 'B') - 24 * corner('A', 'B', 'C') + 20 * corner('B', 'C', 'D') - 25 * corner('C', 'D', 'A');
    const over = Math.abs(sum - Math.round(sum));
    expect(said).toBeCloseTo(over, 3);
  });

  it('tell how far a loose arbor has to move, and moving it so closes the ring', () => {
    const movement = ring();
    const loose = applyEdit(movement, { kind: 'leaveOut', rules: ['place-C'], leaveOut: true });
    if (loose.kind === 'refused') throw new Error(loose.says);
    const [found] = rings(loose.movement);
    const to = /C by [\d.]+ mm to \((-?[\d.]+), (-?[\d.]+)\)/.exec(found?.says ?? '');
    expect(found?.says).toMatch(/It closes when/);
    if (!to) throw new Error('no place of C is told');
    const [x, y] = [Number(to[1]), Number(to[2])];
    const moved = applyEdit(movement, { kind: 'setValue', rule: 'place-C', value: [x, y] });
    if (moved.kind === 'refused') throw new Error(moved.says);
    expect(rings(moved.movement)).toEqual([]);
  });
});
