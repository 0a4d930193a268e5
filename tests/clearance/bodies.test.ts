/** Bodies that follow from what they have to reach, and the hole that each crossing of a plate has. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  heightsOfArbor,
  heightsOfPost,
  needsOfPlate,
  usualBearing,
  usualPipe,
} from '../../solver/clearance/bodies/index.ts';
import { checkMovement } from '../../solver/clearance/index.ts';
import { holesOf } from '../../solver/marking/index.ts';
import type { Movement } from '../../solver/movement/schema.ts';
import { plantMovement } from '../../solver/planting/index.ts';
import { arborAt, sceneOf, wheelOf } from './scenes.ts';

const square = (half: number) => ({
  kind: 'path',
  vertices: [
    { x: -half, y: -half },
    { x: half, y: -half },
    { x: half, y: half },
    { x: -half, y: half },
  ],
});
const plate = (id: string, from: number, to: number, half = 50): object => ({
  id,
  name: id,
  outline: square(half),
  levels: { from, to },
});
const PLATES = [plate('back', -3, 0), plate('front', 40, 43)];
const bearing = (on: string, bore = 1.83): object => ({ plate: on, bore, pivot: bore - 0.03, length: 3 });

/** One arbor between two plates with whatever else stands on its axis. */
function onOneAxis(arbor: object, more: { arbors?: object[]; [key: string]: unknown } = {}): Movement {
  const a = arborAt('A', 0, 0, arbor);
  return sceneOf({ plates: PLATES, rules: [a.rule], ...more, arbors: [a.arbor, ...(more.arbors ?? [])] });
}

function heights(movement: Movement, id = 'A'): ReturnType<typeof heightsOfArbor> {
  const arbor = movement.arbors.find((each) => each.id === id);
  return arbor && heightsOfArbor(arbor, movement);
}

describe('heights of arbors', () => {
  const BEARINGS = [bearing('back'), bearing('front')];

  test('left blank, from the lowest bearing to the highest', () => {
    expect(heights(onOneAxis({ bearings: BEARINGS }))).toEqual({ from: -3, to: 43 });
  });

  test('left blank, to a hand beyond the last bearing', () => {
    const swept = [{ kind: 'hand', farthest: 20, from: 50, to: 51 }];
    expect(heights(onOneAxis({ bearings: BEARINGS, swept }))).toEqual({ from: -3, to: 51 });
  });

  test('left blank, through the bearings of a pipe that runs on it', () => {
    const pipe = {
      id: 'P',
      at: [0, 0],
      ridesOn: 'A',
      diameter: 4,
      bearings: [{ at: 55, bore: 2, pivot: 2, length: 4 }],
    };
    expect(heights(onOneAxis({ bearings: BEARINGS }, { arbors: [pipe] }))).toEqual({ from: -3, to: 59 });
  });

  test('nothing is invented where nothing decides', () => {
    expect(heights(onOneAxis({}))).toBeUndefined();
    expect(heights(onOneAxis({ levels: { from: 3 } }))).toBeUndefined();
  });

  test('typing one end never moves the other', () => {
    fc.assert(
      fc.property(fc.integer({ min: -90, max: 30 }), fc.boolean(), (height, isLower) => {
        const wheels = [wheelOf('w', 'A', 20, 31, 2)];
        const blank = heights(onOneAxis({ bearings: BEARINGS }, { wheels }));
        const typed = isLower ? { from: height } : { to: height + 100 };
        const after = heights(onOneAxis({ bearings: BEARINGS, levels: typed }, { wheels }));
        expect(after).toEqual({ ...blank, ...typed });
      }),
    );
  });
});

describe('heights of posts', () => {
  const postIn = (post: object, plates = PLATES): ReturnType<typeof heightsOfPost> => {
    const movement = sceneOf({ plates, posts: [{ id: 'p', at: [30, 30], diameter: 8, ...post }] });
    return movement.posts[0] && heightsOfPost(movement.posts[0], { x: 30, y: 30 }, movement);
  };
  const DIAL = [...PLATES, plate('dial', 60, 61)];

  test('from plate to plate', () => {
    expect(postIn({})).toEqual({ from: 0, to: 40 });
    expect(postIn({}, DIAL)).toEqual({ from: 0, to: 40 });
  });

  test('from the plate that it stands on', () => {
    expect(postIn({ plate: 'front' }, DIAL)).toEqual({ from: 43, to: 60 });
    expect(postIn({ plate: 'dial' }, DIAL)).toEqual({ from: 43, to: 60 });
  });

  test('one end stated: the other reaches its plate', () => {
    expect(postIn({ levels: { to: 12 } })).toEqual({ from: 0, to: 12 });
    expect(postIn({ levels: { from: 43 } }, DIAL)).toEqual({ from: 43, to: 60 });
  });

  test('a plate that does not reach over its place is not counted on', () => {
    expect(postIn({}, [plate('back', -3, 0), plate('small', 20, 23, 10), plate('front', 40, 43)])).toEqual({
      from: 0,
      to: 40,
    });
  });
});

describe('holes of what crosses a plate', () => {
  const holes = (movement: Movement, on: string) => needsOfPlate(plantMovement(movement), on);
  const pipes = [
    { id: 'P5', at: [0, 0], ridesOn: 'A', diameter: 5, levels: { from: 30, to: 60 } },
    { id: 'P7', at: [0, 0], ridesOn: 'P5', diameter: 7, levels: { from: 35, to: 55 } },
  ];
  const axis = () => onOneAxis({ bearings: [bearing('back')], levels: { from: -3, to: 70 } }, { arbors: pipes });

  test('the widest pipe decides, with the gap that turning parts owe a plate on each side', () => {
    expect(Math.max(...holes(axis(), 'front').map(({ diameter }) => diameter))).toBe(7 + 2 * 0.5);
    const own = { ...axis(), limits: { ...axis().limits, wallGap: 0.2 } };
    expect(Math.max(...holes(own, 'front').map(({ diameter }) => diameter))).toBeCloseTo(7.4, 12);
  });

  test('the drawings and the drill program have the hole that the check has', () => {
    const placed = plantMovement(axis());
    expect(holesOf(placed, 'front')).toMatchObject([{ points: ['A', 'P5', 'P7'], diameter: 8, finish: 'drill' }]);
    expect(holesOf(placed, 'back')).toMatchObject([{ points: ['A'], diameter: 1.83, finish: 'ream' }]);
  });

  test('an opening needs no hole', () => {
    const openings = [{ id: 'o', plate: 'front', outline: { kind: 'circle', centre: [0, 0], radius: 9 } }];
    expect(holes({ ...axis(), ...sceneOf({ plates: PLATES, openings }), arbors: axis().arbors }, 'front')).toEqual([]);
  });

  test('where a bearing of the axis stands the hole stays the bearing’s', () => {
    const movement = onOneAxis(
      { bearings: [bearing('back'), bearing('front')], levels: { from: -3, to: 70 } },
      { arbors: pipes },
    );
    expect(holes(movement, 'front').map(({ diameter }) => diameter)).toEqual([1.83]);
  });

  test('a post through a plate slides in its hole, one on a plate has the hole that is stated', () => {
    const posts = [
      { id: 'through', at: [30, 30], diameter: 6, levels: { from: -8, to: 20 } },
      { id: 'on', at: [-30, 30], diameter: 6, hole: 3.2 },
    ];
    const movement = sceneOf({ plates: PLATES, posts });
    expect(holes(movement, 'back').map(({ id, diameter }) => [id, diameter])).toEqual([
      ['through', 6.1],
      ['on', 3.2],
    ]);
  });
});

describe('sizes that are given', () => {
  test('pipes size themselves outwards: each goes over the one inside it, and none is thicker than its bore', () => {
    fc.assert(
      fc.property(fc.integer({ min: 5, max: 100 }), (tenths) => {
        const inside = { diameter: tenths / 10 };
        const first = usualPipe(inside);
        const second = usualPipe(first);
        expect(first.pipeBore).toBeGreaterThan(inside.diameter);
        expect(first.diameter).toBeGreaterThan(first.pipeBore);
        expect(second.pipeBore).toBeGreaterThan(first.diameter);
      }),
    );
    const pipe = { id: 'P', at: [0, 0], ridesOn: 'A', levels: { from: 46, to: 60 }, ...usualPipe({ diameter: 2 }) };
    const next = { id: 'Q', at: [0, 0], ridesOn: 'P', levels: { from: 47, to: 58 }, ...usualPipe(pipe) };
    const movement = onOneAxis(
      { bearings: [bearing('back', 2.03), bearing('front', 2.03)], levels: { from: -3, to: 65 } },
      { arbors: [pipe, next] },
    );
    expect(checkMovement(plantMovement(movement)).filter(({ severity }) => severity === 'stops')).toEqual([]);
  });

  test('a bearing leaves a shoulder and the stated play', () => {
    const given = usualBearing({ diameter: 4 });
    expect(given).toMatchObject({ pivot: 2.4, bore: 2.43 });
    expect(usualBearing({ diameter: 0.4 }).pivot).toBe(0.4);
  });
});
