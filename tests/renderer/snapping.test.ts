/** Snapping: which rules are taken near a place, and that keeping them gives the place that was shown. */

import { describe, expect, it } from 'vitest';
import { Settler } from '../../renderer/gestures/settling.ts';
import { chooseSnap, type SnapCandidate } from '../../renderer/gestures/snap.ts';
import type { Locus } from '../../solver/geometry/index.ts';
import type { PointId } from '../../solver/movement/ids.ts';
import { applyEdit } from '../../solver/movement/index.ts';
import type { Movement } from '../../solver/movement/schema.ts';
import { plantMovement } from '../../solver/planting/index.ts';
import { movementOfParts } from '../support/movements.ts';

const candidate = (key: string, at: Locus, weight = 1): SnapCandidate => ({
  key,
  locus: at,
  keeps: { kind: 'radius', point: 'p' as PointId, centre: 'c' as PointId, length: 1 },
  says: key,
  weight,
});

describe('choosing', () => {
  const round = candidate('round', { kind: 'circle', centre: { x: 0, y: 0 }, radius: 10 });
  const straight = candidate('straight', { kind: 'line', through: { x: 0, y: 6 }, along: { x: 1, y: 0 } });

  it('takes nothing out of reach, and nothing for a point that has no freedom', () => {
    expect(chooseSnap([round], { x: 12, y: 0 }, 1, 2)).toBeUndefined();
    expect(chooseSnap([round], { x: 10.5, y: 0 }, 1, 0)).toBeUndefined();
  });

  it('takes two that cross nearby, and one where only one rule can be taken', () => {
    const near = { x: 8.2, y: 6.2 };
    const both = chooseSnap([round, straight], near, 1, 2);
    expect(both?.candidates).toHaveLength(2);
    // 6-8-10 triangle.
    expect(both?.at.x).toBeCloseTo(8, 12);
    expect(both?.at.y).toBeCloseTo(6, 12);
    expect(chooseSnap([round, straight], near, 1, 1)?.candidates).toHaveLength(1);
  });

  it('takes no crossing behind the start of a ray', () => {
    const up = candidate('up', { kind: 'ray', through: { x: 8, y: 7 }, along: { x: 0, y: 1 } });
    const there = chooseSnap([round, up], { x: 8.1, y: 6.2 }, 1.5, 2);
    expect(there?.candidates).toHaveLength(1);
  });

  it('prefers the weightier of two that are equally far', () => {
    const depth = candidate('depth', { kind: 'circle', centre: { x: 0, y: 0 }, radius: 10.2 }, 2);
    expect(chooseSnap([round, depth], { x: 10.1, y: 0 }, 1, 1)?.candidates[0]?.key).toBe('depth');
  });
});

function movement(): Movement {
  const wheel = (id: string, arbor: string, teeth: number) => ({
    id,
    arbor,
    teeth,
    size: { module: 1 },
    form: 'involute',
    level: 0,
    thickness: 2,
  });
  return movementOfParts({
    arbors: [
      { id: 'a', at: [0, 0] },
      { id: 'b', at: [70, 0] },
      { id: 'p', at: [30, 60] },
    ],
    wheels: [wheel('wa', 'a', 60), wheel('wb', 'b', 40), wheel('wp', 'p', 36)],
    rules: [
      { id: 'ha', kind: 'held', point: 'a', at: [0, 0] },
      { id: 'hb', kind: 'held', point: 'b', at: [70, 0] },
    ],
  });
}

describe('settling', () => {
  const words = { nameOf: (id: string) => id, lengthSays: (mm: number) => mm.toFixed(3) };
  const point = 'p' as PointId;
  // (60 + 36) / 2 = 48 from a and (40 + 36) / 2 = 38 from b; crossing by the cosine rule.
  const x = (48 ** 2 - 38 ** 2 + 70 ** 2) / 140;
  const y = Math.sqrt(48 ** 2 - x ** 2);

  it('snaps to two depths at once, and what is kept plants to the place that was shown', () => {
    const start = plantMovement(movement());
    const settler = new Settler(words, start, point);
    settler.at({ x: 40, y: 50 }, 4, false);
    const settling = settler.at({ x: x + 0.3, y: y - 0.2 }, 4, false);
    expect([...settling.kept].sort()).toEqual(['depth 38.000 with wb', 'depth 48.000 with wa']);
    const shown = settling.preview.placed.places.get(point);
    expect(shown?.x).toBeCloseTo(x, 9);
    expect(shown?.y).toBeCloseTo(y, 9);
    const outcome = applyEdit(start.movement, { kind: 'several', edits: settling.edits() });
    if (outcome.kind === 'refused') throw new Error(JSON.stringify(outcome.why));
    const kept = plantMovement(outcome.movement).places.get(point);
    expect(kept?.state).toBe('planted');
    expect(kept?.x).toBeCloseTo(x, 9);
    expect(kept?.y).toBeCloseTo(y, 9);
    expect(start.movement.rules).toHaveLength(2);
  });

  it('keeps one rule while the pointer runs along it, and drops it when it leaves', () => {
    const start = plantMovement(movement());
    const settler = new Settler(words, start, point);
    for (const turn of [1.2, 1.25, 1.3, 1.35]) {
      const settling = settler.at({ x: 48.4 * Math.cos(turn), y: 48.4 * Math.sin(turn) }, 6, false);
      const at = settling.preview.placed.places.get(point);
      expect(settling.kept).toContain('depth 48.000 with wa');
      expect(Math.hypot(at?.x ?? 0, at?.y ?? 0)).toBeCloseTo(48, 9);
    }
    const away = settler.at({ x: 20, y: 90.3 }, 6, true);
    expect(away.kept).toEqual([]);
    expect(away.preview.placed.places.get(point)?.x).toBeCloseTo(20, 6);
    expect(away.preview.placed.places.get(point)?.y).toBeCloseTo(90.3, 6);
  });
});

/** Centre and East held, a radius of 31 about the centre, a post, a mark and a wall; the rest is dragged. Our own scenario. */
function workshopOf(extra: Readonly<Record<string, readonly object[]>>, limits: object = {}): Movement {
  return movementOfParts({
    limits,
    arbors: [
      { id: 'centre', at: [0, 0] },
      { id: 'east', at: [50, 0] },
      { id: 'ring', at: [0, 31] },
      ...(extra['arbors'] ?? []),
    ],
    wheels: [
      { id: 'big', arbor: 'centre', teeth: 40, size: { module: 1 }, form: 'involute', level: 0, thickness: 2 },
      ...(extra['wheels'] ?? []),
    ],
    posts: [{ id: 'pillar', at: [-70, 0], diameter: 8, levels: { from: 0, to: 20 } }, ...(extra['posts'] ?? [])],
    marks: [{ id: 'dot', at: [10, -60] }, ...(extra['marks'] ?? [])],
    walls: [
      {
        id: 'case',
        outline: { kind: 'circle', centre: [0, 0], radius: 120 },
        inner: { kind: 'circle', centre: [0, 0], radius: 110 },
        levels: { from: 0, to: 20 },
      },
    ],
    rules: [
      { id: 'h1', kind: 'held', point: 'centre', at: [0, 0] },
      { id: 'h2', kind: 'held', point: 'east', at: [50, 0] },
      { id: 'h3', kind: 'held', point: 'pillar', at: [-70, 0] },
      { id: 'h4', kind: 'held', point: 'dot', at: [10, -60] },
      { id: 'r', kind: 'radius', point: 'ring', centre: 'centre', length: 31 },
    ],
  });
}

describe('what arbors, posts and marks settle on', () => {
  const words = { nameOf: (id: string) => id, lengthSays: (mm: number) => mm.toFixed(1) };
  const post = { posts: [{ id: 'it', at: [-40, 70], diameter: 8, levels: { from: 0, to: 20 } }] };
  const mark = { marks: [{ id: 'it', at: [-40, 70] }] };
  const wheel = {
    id: 'small',
    arbor: 'it',
    teeth: 20,
    size: { module: 1 },
    form: 'involute',
    level: 0.5,
    thickness: 2,
  };
  const arbor = { arbors: [{ id: 'it', at: [-40, 70] }], wheels: [wheel] };

  /** What is kept when the pointer stops at a place. */
  function kept(extra: Readonly<Record<string, readonly object[]>>, x: number, y: number): readonly string[] {
    const settler = new Settler(words, plantMovement(workshopOf(extra)), 'it' as PointId);
    return settler.at({ x, y }, 8, false).kept;
  }

  it.each([
    ['a mark: a radius that another has', mark, [22.1, 22.3], 'radius 31.0 from centre'],
    ['a post: a radius that another has', post, [22.1, 22.3], 'radius 31.0 from centre'],
    ['a mark: straight opposite', mark, [-49.8, 0.2], 'straight opposite east'],
    ['a post: straight opposite', post, [-49.8, 0.2], 'straight opposite east'],
    ['a mark: in line with two', mark, [22.1, -41.6], 'in line with dot and east'],
    ['a mark: the same place as an arbor', mark, [50.3, 0.2], 'same place as east'],
    ['a mark: the same place as a post', mark, [-70.3, 0.3], 'same place as pillar'],
    ['a mark: the same place as a mark', mark, [10.3, -59.8], 'same place as dot'],
    ['an arbor: the same place as a mark', arbor, [10.3, -59.8], 'same place as dot'],
    ['a post: the same place as a mark', post, [10.3, -59.8], 'same place as dot'],
  ] as const)('%s', (_, extra, [x, y], says) => {
    expect(kept(extra, x, y)).toContain(says);
  });

  it('a post and an arbor are solid: neither is offered the place of the other', () => {
    expect(kept(post, 50.3, 0.2)).not.toContain('same place as east');
    expect(kept(arbor, -70.3, 0.3)).not.toContain('same place as pillar');
  });

  // Limits of a new movement, mm; tip radius of 40 teeth of module 1 is 21 by ISO 53, of 20 teeth 11.
  const { radialGap, wallGap } = workshopOf({}).limits;
  it.each([
    ['a post clear of a wheel', post, 21 + radialGap + 4, `clear of big by ${radialGap.toFixed(1)}`],
    // A post may stand against a wall: the check asks no gap of the two.
    ['a post against the wall', post, 110 - 4, 'clear of case by 0.0'],
    ['a wheel clear of the wall', arbor, 110 - wallGap - 11, `clear of case by ${wallGap.toFixed(1)}`],
  ] as const)('%s, at the gap that is asked for', (_, extra, radius, says) => {
    const turn = 2.2;
    const there = kept(extra, (radius + 0.4) * Math.cos(turn), (radius + 0.4) * Math.sin(turn));
    expect(there.join('; ')).toContain(says);
  });

  it('a wheel clear of a post, where nothing else is nearer', () => {
    const away = 11 + radialGap + 4 + 0.3;
    const there = kept(arbor, -70 - away * Math.cos(0.5), away * Math.sin(0.5));
    expect(there.join('; ')).toContain('clear of pillar');
  });

  /** What is offered for a wheel dragged to about `gap` from the pillar, by a movement with limits of its own. */
  function offered(limits: object, gap: number): readonly string[] {
    const settler = new Settler(words, plantMovement(workshopOf(arbor, limits)), 'it' as PointId);
    const away = 11 + gap + 4 + 0.3;
    return settler.at({ x: -70 - away * Math.cos(0.5), y: away * Math.sin(0.5) }, 8, false).kept;
  }

  it('the gap is the one that the check asks of the pair, not the general one', () => {
    const own = { radialGap: 0.5, pairs: [{ between: ['post', 'wheel'], plan: 2 }] };
    expect(offered(own, 2).join('; ')).toContain('clear of pillar by 2.0');
    expect(offered({ radialGap: 0.7 }, 0.7).join('; ')).toContain('clear of pillar by 0.7');
  });
});
