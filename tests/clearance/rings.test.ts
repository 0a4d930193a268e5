import { describe, expect, it } from 'vitest';
import { checkMovement, remediesFor } from '../../solver/clearance/index.ts';
import { applyEdit } from '../../solver/movement/index.ts';
import { plantMovement } from '../../solver/planting/index.ts';
import { arborAt, sceneOf } from './scenes.ts';
import { wordsOf } from './wordsOf.ts';

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
    const said = Number(/misses by (\d\.\d+) of a tooth/.exec(found ? wordsOf(ring()).finding(found) : '')?.[1]);
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
    if (loose.kind === 'refused') throw new Error(JSON.stringify(loose.why));
    const [found] = rings(loose.movement);
    const says = found ? wordsOf(loose.movement).finding(found) : '';
    const to = /C by [\d.]+ mm to \((-?[\d.]+), (-?[\d.]+)\)/.exec(says);
    expect(says).toMatch(/It closes when/);
    if (!to) throw new Error('no place of C is told');
    const [x, y] = [Number(to[1]), Number(to[2])];
    const moved = applyEdit(movement, { kind: 'setValue', rule: 'place-C', value: [x, y] });
    if (moved.kind === 'refused') throw new Error(JSON.stringify(moved.why));
    expect(rings(moved.movement)).toEqual([]);
  });
});

describe('a ring through wheels that share an arbor', () => {
  // 20 into 40 at module 1 and 25 into 50 at module 0.8 between the same axes, 30 apart: both halve the speed, so the ring
  // turns, and its teeth meet once one wheel is set on its arbor.
  const movement = sceneOf({
    arbors: [arborAt('A', 0, 0).arbor, { id: 'B', name: 'B', at: [28, 9], diameter: 2 }],
    rules: [
      arborAt('A', 0, 0).rule,
      { id: 'way', kind: 'bearing', point: 'B', centre: 'A', angle: 17 },
      { id: 'one', kind: 'depth', wheels: ['a1', 'b1'] },
      { id: 'two', kind: 'depth', wheels: ['a2', 'b2'] },
    ],
    wheels: (
      [
        ['a1', 'A', 20, 1, 0],
        ['b1', 'B', 40, 1, 0],
        ['a2', 'A', 25, 0.8, 5],
        ['b2', 'B', 50, 0.8, 5],
      ] as const
    ).map(([id, arbor, teeth, module, level]) => ({
      ...{ id, name: id, arbor, teeth, size: { module }, form: 'involute', level, thickness: 2 },
      // On no even part of a tooth, so that the sense of the turn matters.
      ...(id === 'b1' ? { phase: 1.3 } : {}),
    })),
  });

  it('is cured by setting one wheel on its arbor at the angle that the congruence of teeth asks for', () => {
    const placed = plantMovement(movement);
    const finding = checkMovement(placed).find(({ kind }) => kind === 'ring');
    expect(finding).toMatchObject({ severity: 'notes' });
    expect(finding && wordsOf(movement).finding(finding)).toMatch(
      /^The ring of A and B closes when .+ is set on [AB] \d\.\d{3}° /,
    );
    const [remedy, ...others] = finding ? remediesFor(placed, finding) : [];
    expect(others).toEqual([]);
    const cause = finding?.cause;
    if (!finding || cause?.kind !== 'ringSet') throw new Error('the ring is not said to close');
    // Seen from the marked face with y up, a turn that adds to the angle is anticlockwise: told both ways.
    for (const turn of [cause.turn, -cause.turn]) {
      const way = turn > 0 ? ' anticlockwise of its place' : ' clockwise of its place';
      expect(wordsOf(movement).finding({ ...finding, cause: { ...cause, turn } })).toContain(way);
    }
    expect(remedy && wordsOf(movement).cure(remedy)).toMatch(
      /^Set [ab][12] on its arbor with a tooth -?\d+\.\d{3}° from the drawing's zero/,
    );
    if (!remedy) throw new Error('no remedy');
    const edited = applyEdit(movement, remedy.edit);
    if (edited.kind === 'refused') throw new Error(JSON.stringify(edited.why));
    expect(rings(edited.movement)).toEqual([]);
    // By hand: with a tooth of a1 towards B at 17°, b1 has a space there; so must the second pair. What is over, in
    // teeth, is the same whichever wheel of the four is turned: the phases' sum must be half a tooth at both depths.
    const teethOf = (id: string) => movement.wheels.find((wheel) => wheel.id === id)?.teeth ?? 0;
    const phase = (id: string) => edited.movement.wheels.find((wheel) => wheel.id === id)?.phase ?? 0;
    // The turn that is told is the one that the cure makes, to a tooth.
    const before = movement.wheels.find(({ id }) => id === cause.wheel)?.phase ?? 0;
    const told = (((cause.turn * 180) / Math.PI + before - phase(cause.wheel)) * teethOf(cause.wheel)) / 360;
    expect(Math.abs(told - Math.round(told))).toBeLessThan(1e-3);
    const over = (teeth: readonly [number, number], at: readonly [number, number]) =>
      (teeth[0] * (17 - at[0]) + teeth[1] * (197 - at[1])) / 360;
    const turnOf = (first: number): number => (0.5 - first) / 40;
    // B is turned as a whole so that the first pair meets; then the second must meet too.
    const b = -360 * turnOf(over([20, 40], [phase('a1'), phase('b1')]));
    const second = over([25, 50], [phase('a2'), phase('b2') + b]) - 0.5;
    // Another tooth of b1 in the space turns B by a fortieth: of those places one lets the second pair meet.
    const misses = Array.from({ length: 40 }, (_, k) => second - (50 * k) / 40);
    expect(Math.min(...misses.map((miss) => Math.abs(miss - Math.round(miss))))).toBeLessThan(1e-3);
  });
});
