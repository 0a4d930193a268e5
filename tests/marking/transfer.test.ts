import { describe, expect, it } from 'vitest';
import type { TransferPlan } from '../../solver/marking/index.ts';
import { plateViewOf, transferPlan } from '../../solver/marking/index.ts';
import { fitsOneWay } from '../../solver/marking/steps/transferPlan.ts';
import type { PlacedMovement } from '../../solver/planting/placed.ts';
import { speakerOf } from '../../solver/words/index.ts';
import { transferSays } from '../../solver/words/shop/index.ts';
import { placedByHand } from './placedByHand.ts';

const saysOf = (plan: TransferPlan, { movement }: PlacedMovement): readonly string[] =>
  transferSays(plan, speakerOf(movement));

const dowel = (x: number, y: number, diameter = 3) => ({ x, y, diameter });

describe('dowels that fit one way only', () => {
  it('two never do: turned round, or turned over about their line', () => {
    expect(fitsOneWay([dowel(0, 0), dowel(50, 0)])).toBe(false);
    expect(fitsOneWay([dowel(0, 0, 3), dowel(50, 0, 5)])).toBe(false);
  });
  it('three do, unless two sides are alike or all stand in line', () => {
    expect(fitsOneWay([dowel(0, 0), dowel(50, 0), dowel(15, 30)])).toBe(true);
    expect(fitsOneWay([dowel(0, 0), dowel(50, 0), dowel(25, 30)])).toBe(false);
    expect(fitsOneWay([dowel(0, 0), dowel(50, 0), dowel(25, 30, 5)])).toBe(false);
    expect(fitsOneWay([dowel(0, 0, 4), dowel(50, 0, 3), dowel(25, 30, 5)])).toBe(true);
    expect(fitsOneWay([dowel(0, 0), dowel(20, 0), dowel(50, 0)])).toBe(false);
    // Nearly alike sides within the play of the pins do not keep a wrong way out.
    expect(fitsOneWay([dowel(0, 0), dowel(50, 0), dowel(25.2, 30)])).toBe(false);
  });
});

describe('from one plate to the other', () => {
  const outline = { kind: 'circle', centre: [0, 0], radius: 60 };
  const at = { a: [-40, 0], b: [40, 5], c: [10, 35], d: [0, -20] } as const;
  const data = {
    plates: [
      { id: 'front', name: 'Front plate', levels: { from: 0, to: 2 }, outline },
      { id: 'back', name: 'Back plate', levels: { from: 30, to: 32 }, outline, markedFace: 'down' },
    ],
    posts: Object.entries(at).map(([id, place]) => ({ id, name: `Post ${id}`, at: place, diameter: 8, hole: 4 })),
    marks: [{ id: 'only', at: [5, 5], hole: 1, plate: 'front' }],
  };
  const places = Object.fromEntries([
    ...Object.entries(at).map(([id, place]) => [id, { at: place }]),
    ['only', { at: [5, 5] as const }],
  ]);
  const placed = placedByHand(data, places);

  it('names the shared holes, three dowels that fit one way, and the pinning order', () => {
    const plan = transferPlan(placed, 'front', 'back');
    expect(plan.shared.map(({ labels }) => labels[0])).toEqual(['Post a', 'Post b', 'Post c', 'Post d']);
    expect(plan.dowels.slice(0, 2).map(({ labels }) => labels[0])).toEqual(['Post a', 'Post b']);
    expect(plan.dowels).toHaveLength(3);
    expect(plan.oneWay).toBe(true);
    expect(plan.mirrored).toBe(true);
    const text = saysOf(plan, placed).join('\n');
    expect(text).toMatch(/no register or notch in common.*mirrored/);
    expect(text.indexOf('Drill Post a through both at Ø 4.000 mm and pin it')).toBeLessThan(
      text.indexOf('Then drill Post b'),
    );
    expect(text).toContain('one way only');
  });

  it('names the registers and notches that both have, not those of one alone; running holes are not pinned', () => {
    const ring = (plate: string, radius: number) => ({
      id: `ring-${plate}`,
      name: `Register ring`,
      kind: 'register',
      plate,
      outline: { kind: 'circle', centre: [0, 0], radius },
    });
    const slot = { id: 'slot', kind: 'notch', plate: 'front', outline: { kind: 'circle', centre: [50, 0], radius: 2 } };
    const bearings = ['front', 'back'].map((plate) => ({ plate, kind: 'plain', bore: 2, pivot: 1.98, length: 2 }));
    const arbor = { id: 'far', name: 'Far arbor', at: [-50, -30], diameter: 3, bearings };
    const withRings = (radius: number) =>
      placedByHand(
        { ...data, arbors: [arbor], openings: [ring('front', 20), ring('back', radius), slot] },
        { ...places, far: { at: [-50, -30] } },
      );
    const plan = transferPlan(withRings(20), 'front', 'back');
    expect(plan.registers).toEqual(['Register ring']);
    expect(saysOf(plan, withRings(20))[1]).toContain('Clamp them with Register ring together');
    expect(transferPlan(withRings(21), 'front', 'back').registers).toEqual([]);
    expect(plan.dowels.map(({ labels }) => labels[0])).not.toContain('Far arbor');
    expect(saysOf(plan, withRings(20)).join('\n')).toContain('Drill and ream Far arbor through both: Ø 2.000 mm');
  });

  it('mirroring twice is nothing', () => {
    const [up, down] = [plateViewOf(placed.movement, 'front'), plateViewOf(placed.movement, 'back')];
    for (const place of placed.places.values()) expect(down.see(down.see(place))).toEqual(up.see(place));
  });

  it('says so when too few holes are shared', () => {
    const few = placedByHand({ plates: data.plates, marks: data.marks }, { only: { at: [5, 5] } });
    const plan = transferPlan(few, 'front', 'back');
    expect(plan.dowels).toEqual([]);
    expect(saysOf(plan, few).join()).toContain('too few holes');
  });
});
