/** The metal answers back: readings replace calculated depths, drilled holes stay, and the cure comes with numbers. */
import { describe, expect, it } from 'vitest';
import { curesFor, shiftOf, shimFor } from '../../solver/made/holes/cure.ts';
import { consequencesOf, depthReadings } from '../../solver/made/index.ts';
import { editsOfDepthReadings } from '../../solver/made/readings/depthReadings.ts';
import { applyEdit } from '../../solver/movement/index.ts';
import type { Movement } from '../../solver/movement/schema.ts';
import { plantMovement } from '../../solver/planting/index.ts';
import { speakerOf } from '../../solver/words/index.ts';
import { changesSay, clockSays, doubtSays, shiftSays } from '../../solver/words/shop/index.ts';
import { movementOf } from '../marking/placedByHand.ts';

/** Two depths by hand (SOURCES.md): centre and escape arbors 45 apart, third wheel 64:8 and 60:8 of module 0.8. */
function worked(extra: object = {}): Movement {
  const wheel = (id: string, arbor: string, teeth: number, level: number) => ({
    id,
    arbor,
    teeth,
    size: { module: 0.8 },
    form: 'cycloidal',
    level,
    thickness: 2,
  });
  return movementOf({
    title: 'Worked example',
    arbors: [
      { id: 'centre', at: [0, 0] },
      { id: 'escape', at: [0, 45] },
      { id: 'third', at: [17, 23] },
    ],
    wheels: [
      wheel('w1', 'centre', 64, 0),
      wheel('p1', 'third', 8, 0),
      wheel('w2', 'third', 60, 5),
      wheel('p2', 'escape', 8, 5),
    ],
    rules: [
      { id: 'h1', kind: 'held', point: 'centre', at: [0, 0] },
      { id: 'h2', kind: 'held', point: 'escape', at: [0, 45] },
      { id: 'd1', kind: 'depth', wheels: ['w1', 'p1'], plusMinus: 0.04 },
      { id: 'd2', kind: 'depth', wheels: ['w2', 'p2'], plusMinus: 0.02 },
    ],
    ...extra,
  });
}

const readings = [
  { id: 'r1', kind: 'depth', of: ['w1', 'p1'], value: 28.86, plusMinus: 0.02 },
  // Over runners of 3 mm: 27.15 + 3.
  {
    id: 'r2',
    kind: 'depth',
    of: ['escape', 'third'],
    value: 30.15,
    taken: { how: 'over', pins: [3, 3] },
    plusMinus: 0.02,
  },
  { id: 'r3', kind: 'depth', of: ['w1', 'p1'], value: 28.86 / 25.4 },
  { id: 'r4', kind: 'depth', of: ['w1', 'p1'], value: 30, setAside: true },
];

describe('readings replace calculated depths', () => {
  const movement = worked({ readings });

  it('each depth gets its own readings; a doubtful one is named, one set aside is left', () => {
    const [first, second] = depthReadings(movement);
    expect(first).toMatchObject({ rule: 'd1', calculated: 28.8, measured: { used: ['r1'] } });
    expect(first?.doubts).toHaveLength(1);
    expect(first?.doubts[0]).toMatchObject({ kind: 'slip', reading: 'r3', slip: 'inchesAsMm' });
    expect(first?.doubts.map((doubt) => doubtSays(doubt, speakerOf(movement))).join()).toContain('millimetres');
    expect(second?.measured?.length).toBeCloseTo(27.15, 12);
  });

  it('moves the third arbor from (16.6553, 23.4956) to (16.6622, 23.5642), shift 0.069, as the worked example says', () => {
    const before = plantMovement(movement);
    const edited = applyEdit(movement, { kind: 'several', edits: editsOfDepthReadings(movement) });
    if (edited.kind === 'refused') throw new Error(JSON.stringify(edited.why));
    const after = plantMovement(edited.movement, before);
    const consequences = consequencesOf(before, after);
    expect(consequences.moves).toHaveLength(1);
    const [move] = consequences.moves;
    expect(move?.id).toBe('third');
    expect(move?.from.x).toBeCloseTo(16.6553, 4);
    expect(move?.from.y).toBeCloseTo(23.49556, 5);
    expect(move?.to.x).toBeCloseTo(16.6622, 4);
    expect(move?.to.y).toBeCloseTo(23.5642, 4);
    expect(move?.amount).toBeCloseTo(0.069, 3);
    const depths = new Map(consequences.depths.map((depth) => [depth.rule as string, depth]));
    expect(depths.get('d1')?.after.distance).toBeCloseTo(28.86, 9);
    expect(depths.get('d2')?.after.distance).toBeCloseTo(27.15, 9);
    // Shallower: more shake; deeper: less.
    expect(depths.get('d1')?.after.shake).toBeGreaterThan(depths.get('d1')?.before.shake ?? Number.NaN);
    expect(depths.get('d2')?.after.shake).toBeLessThan(depths.get('d2')?.before.shake ?? Number.NaN);
    expect(changesSay(consequences, speakerOf(after.movement)).join('\n')).toMatch(
      /Arbor 3 moves 0\.069 mm along 84\.\d°/,
    );
    expect(changesSay(consequencesOf(after, after), speakerOf(after.movement))).toEqual(['Nothing changes.']);
  });

  it('a drilled hole moves exactly nothing', () => {
    const made = [{ point: 'third', state: 'drilled', at: [16.7, 23.52] }];
    const drilled = plantMovement(worked({ made, readings }));
    const edited = applyEdit(drilled.movement, { kind: 'several', edits: editsOfDepthReadings(drilled.movement) });
    if (edited.kind === 'refused') throw new Error(JSON.stringify(edited.why));
    const after = plantMovement(edited.movement);
    const third = [...after.places.values()].find((place) => place.id === 'third');
    expect([third?.x, third?.y]).toEqual([16.7, 23.52]);
    expect(consequencesOf(drilled, after).moves).toEqual([]);
  });
});

describe('the cure with numbers', () => {
  it('tells a direction by angle and clock', () => {
    const along = (degrees: number) =>
      shiftOf(0.04 * Math.cos((degrees * Math.PI) / 180), 0.04 * Math.sin((degrees * Math.PI) / 180));
    expect(shiftSays(along(31), speakerOf(worked()))).toBe("0.040 mm along 31.0° (towards 2 o'clock)");
    const clock = (degrees: number) => clockSays(along(degrees).angle);
    expect([90, 0, -90, 180].map(clock)).toEqual(["12 o'clock", "3 o'clock", "6 o'clock", "9 o'clock"]);
    // The hour hand turns half a degree a minute: 20 to 7 stands at 200° from the top.
    expect([-110, 75, 82.5, 97.5, 92.5].map(clock)).toEqual([
      '20 to 7',
      'half past 12',
      'quarter past 12',
      'quarter to 12',
      '5 to 12',
    ]);
  });

  it('reams, bushes or plugs, the gentlest first', () => {
    const kinds = (dx: number, options: object = {}) =>
      curesFor(dx, 0, { diameter: 3, ...options }).map(({ kind }) => kind);
    expect(kinds(0.01)).toEqual(['leave']);
    expect(kinds(0.1)).toEqual(['ream', 'bush', 'plug']);
    expect(kinds(1)).toEqual(['plug', 'ream', 'bush']);
    expect(kinds(0.1, { roomDiameter: 3.1 })).toEqual(['plug']);
    const [ream, bush] = curesFor(0.1, 0, { diameter: 3 });
    expect(ream).toMatchObject({ kind: 'ream', diameter: 3.2 });
    // The thinnest wall of the bush is the stated one: outer radius less offset less bore radius.
    if (bush?.kind === 'bush') expect(bush.bush.outer / 2 - bush.bush.offset - bush.bush.bore / 2).toBeCloseTo(0.8, 12);
  });

  it('packs a three-jaw chuck so that three equal jaw distances hold the work off centre', () => {
    for (const [outer, offset] of [
      [10, 0.5],
      [6, 0.05],
      [20, 4],
    ] as const) {
      const { narrow, flat } = shimFor(outer, offset);
      const r = outer / 2;
      // Work's centre at (−e, 0); jaw at 0° packed by t; the other jaws touch at ±120°. All three stand at one distance.
      const reach = (angle: number) => {
        const [ux, uy] = [Math.cos(angle), Math.sin(angle)];
        const along = -offset * ux;
        return along + Math.sqrt(along * along - (offset * offset - r * r)) + 0 * uy;
      };
      const [first, second, third] = [0, (2 * Math.PI) / 3, (-2 * Math.PI) / 3].map(reach);
      expect(second).toBeCloseTo(third ?? Number.NaN, 12);
      expect((second ?? 0) - (first ?? 0)).toBeCloseTo(narrow, 12);
      // Flat faces: tangents to the work, at distance r from its centre along each jaw.
      const tangent = (angle: number) => r - offset * Math.cos(angle);
      expect(tangent((2 * Math.PI) / 3) - tangent(0)).toBeCloseTo(flat, 12);
    }
    expect(() => shimFor(2, 5)).toThrow(/expected less/);
  });
});
