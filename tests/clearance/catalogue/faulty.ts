/** Movements that cannot be made or put together, each with one fault, and the cause that has to be named. */
import type { FindingCause } from '../../../solver/clearance/index.ts';
import type { Case, Writer } from './bench.ts';

/** A movement with one fault: its cause, and the parts that the finding names. */
export interface Faulty extends Case {
  readonly cause: FindingCause['kind'];
  readonly of: readonly string[];
}

const one = (w: Writer, arbor: object = {}, more: object = {}): object =>
  w.movement({ arbors: [w.arbor('A', 0, 0, arbor)], wheels: [w.wheel('w', 'A', 40, 10)], ...more });

function piped(w: Writer, pipes: object[], arbor: object = {}): object {
  const A = w.arbor('A', 0, 0, { diameter: w.l(2), levels: w.levels(-3, 70), ...arbor });
  return w.movement({ arbors: [A, ...pipes] });
}

const pipe = (
  w: Writer,
  id: string,
  on: string,
  diameter: number,
  inside: number,
  from: number,
  to: number,
  more = {},
) => ({
  id,
  name: id,
  at: w.at(0, 0),
  ridesOn: on,
  turns: 'withArbor',
  diameter: w.l(diameter),
  pipeBore: w.l(inside + 0.4),
  levels: w.levels(from, to),
  bearings: [w.bush(from, inside), w.bush(to - 3, inside)],
  ...more,
});

const drum = (w: Writer, inner: number) => [
  { id: 'drum', outline: w.circle(0, 0, 90), inner: w.circle(0, 0, inner), levels: w.levels(-10, 60) },
];
const round = (w: Writer, radius: number) => [
  w.plate('back', -3, 0, w.circle(0, 0, radius)),
  w.plate('front', 40, 43, w.circle(0, 0, radius)),
];

/** Each has one fault. */
export const FAULTY: readonly Faulty[] = [
  {
    name: 'an arbor as thick as its pinion’s roots',
    cause: 'arborInRoots',
    of: ['A', 'w'],
    parts: (w) => one(w, { diameter: w.l(6) }, { wheels: [w.wheel('w', 'A', 8, 10)] }),
  },
  {
    name: 'an arbor thicker than its pinion',
    cause: 'arborInRoots',
    of: ['A', 'w'],
    parts: (w) => one(w, { diameter: w.l(11) }, { wheels: [w.wheel('w', 'A', 8, 10)] }),
  },
  {
    name: 'an arbor thicker than the bore of its wheel',
    cause: 'arborInBore',
    of: ['A', 'w'],
    parts: (w) => one(w, {}, { wheels: [w.wheel('w', 'A', 40, 10, { bore: w.l(2.5) })] }),
  },
  {
    name: 'a pipe bored smaller than its arbor',
    cause: 'arborInPipe',
    of: ['A', 'P'],
    parts: (w) => piped(w, [pipe(w, 'P', 'A', 5, 2, 46, 60, { pipeBore: w.l(1.8), bearings: [] })]),
  },
  {
    name: 'bushes smaller than the arbor in them',
    cause: 'arborInPipe',
    of: ['A', 'P'],
    parts: (w) => piped(w, [pipe(w, 'P', 'A', 5, 2, 46, 60, { bearings: [w.bush(46, 1.5), w.bush(57, 1.5)] })]),
  },
  {
    name: 'an arbor thick on both sides of the front plate',
    cause: 'bodyInHole',
    of: ['A', 'front'],
    parts: (w) => one(w, { levels: w.levels(-3, 60) }),
  },
  {
    name: 'an arbor thick on both sides of the back plate',
    cause: 'bodyInHole',
    of: ['A', 'back'],
    parts: (w) => one(w, { levels: w.levels(-15, 43) }),
  },
  {
    name: 'a wheel above the end of its arbor',
    cause: 'notReached',
    of: ['A', 'w'],
    parts: (w) => one(w, { levels: w.levels(-3, 8), bearings: [w.bearing('back')] }),
  },
  {
    name: 'a wheel below the end of its arbor',
    cause: 'notReached',
    of: ['A', 'w'],
    parts: (w) => one(w, { levels: w.levels(20, 43), bearings: [w.bearing('front')] }),
  },
  {
    name: 'a hand beyond the end of its arbor',
    cause: 'notReached',
    of: ['A'],
    parts: (w) =>
      one(w, { levels: w.levels(-3, 43), swept: [{ kind: 'hand', farthest: w.l(20), from: w.z(50), to: w.z(51) }] }),
  },
  {
    name: 'a collar beyond the end of its arbor',
    cause: 'notReached',
    of: ['A'],
    parts: (w) => one(w, { levels: w.levels(-3, 43), collars: [{ diameter: w.l(6), ...w.levels(46, 48) }] }),
  },
  {
    name: 'a wheel beyond the end of its pipe',
    cause: 'notReached',
    of: ['P', 'w'],
    parts: (w) =>
      w.movement({
        arbors: [w.arbor('A', 0, 0, { diameter: w.l(2), levels: w.levels(-3, 70) }), pipe(w, 'P', 'A', 5, 2, 46, 60)],
        wheels: [w.wheel('w', 'P', 30, 63)],
      }),
  },
  {
    name: 'an arbor that ends before its bearing',
    cause: 'bearingNotReached',
    of: ['A', 'front'],
    parts: (w) => one(w, { levels: w.levels(-3, 35) }),
  },
  {
    name: 'a pivot too thin for its length',
    cause: 'pivotThin',
    of: ['A'],
    parts: (w) => one(w, { diameter: w.l(1.5), bearings: [w.bearing('back', 0.3), w.bearing('front', 0.3)] }),
  },
  {
    name: 'a pivot too thin for its arbor',
    cause: 'pivotThin',
    of: ['A'],
    parts: (w) => one(w, { diameter: w.l(7), bearings: [w.bearing('back', 0.6), w.bearing('front', 0.6)] }),
  },
  {
    name: 'a pivot thicker than its arbor',
    cause: 'pivotThick',
    of: ['A'],
    parts: (w) => one(w, { bearings: [w.bearing('back', 4), w.bearing('front', 4)] }),
  },
  {
    name: 'a rim thinner than its teeth',
    cause: 'rimThin',
    of: ['w'],
    parts: (w) =>
      one(w, {}, { wheels: [w.wheel('w', 'A', 60, 10, { arms: { count: 5, width: w.l(4), rim: w.l(1.2) } })] }),
  },
  {
    name: 'pillars of 35 between plates 40 apart',
    cause: 'postShort',
    of: ['p1'],
    parts: (w) => one(w, {}, { posts: w.pillars({ levels: w.levels(0, 35) }) }),
  },
  {
    name: 'one pillar that is too short',
    cause: 'postShort',
    of: ['p9'],
    parts: (w) => one(w, {}, { posts: [...w.pillars().slice(1), w.post('p9', 50, 40, { levels: w.levels(0, 39) })] }),
  },
  {
    name: 'a pillar that hangs short of the back plate',
    cause: 'postShort',
    of: ['p9'],
    parts: (w) => one(w, {}, { posts: [...w.pillars().slice(1), w.post('p9', 50, 40, { levels: w.levels(4, 40) })] }),
  },
  {
    name: 'pillars that stand in the front plate',
    cause: 'postLong',
    of: ['p1'],
    parts: (w) => one(w, {}, { posts: w.pillars({ levels: w.levels(0, 41) }) }),
  },
  {
    name: 'a pillar that stands in the back plate',
    cause: 'postLong',
    of: ['p9'],
    parts: (w) => one(w, {}, { posts: [...w.pillars().slice(1), w.post('p9', 50, 40, { levels: w.levels(-2, 40) })] }),
  },
  {
    name: 'a pipe through the hole of its arbor’s pivot',
    cause: 'holeTight',
    of: ['P', 'front'],
    parts: (w) => piped(w, [pipe(w, 'P', 'A', 5, 2, 30, 65)]),
  },
  {
    name: 'two pipes through the hole of their arbor’s pivot',
    cause: 'holeTight',
    of: ['Q', 'front'],
    parts: (w) => piped(w, [pipe(w, 'P', 'A', 5, 2, 30, 65), pipe(w, 'Q', 'P', 7, 5, 34, 60)]),
  },
  {
    name: 'a post through a plate with a small screw hole',
    cause: 'holeTight',
    of: ['s', 'back'],
    parts: (w) =>
      one(
        w,
        {},
        { posts: [...w.pillars(), w.post('s', 0, -35, { levels: w.levels(-12, 25), hole: w.l(4), plate: 'back' })] },
      ),
  },
  {
    name: 'a bearing near the edge',
    cause: 'nearEdge',
    of: ['A', 'front'],
    parts: (w) => w.movement({ arbors: [w.arbor('A', 0, 48.6)] }),
  },
  {
    name: 'a pillar’s hole near the edge',
    cause: 'nearEdge',
    of: ['p9', 'front'],
    parts: (w) => one(w, {}, { posts: [...w.pillars().slice(1), w.post('p9', 57.7, 40)] }),
  },
  {
    name: 'a bearing near an opening',
    cause: 'nearEdge',
    of: ['A', 'front'],
    parts: (w) => one(w, {}, { openings: [{ id: 'o', plate: 'front', outline: w.circle(0, 10, 8.5) }] }),
  },
  {
    name: 'a bearing that breaks out of the edge',
    cause: 'breaksOut',
    of: ['A', 'front'],
    parts: (w) => w.movement({ arbors: [w.arbor('A', 0, 49.5)] }),
  },
  {
    name: 'a pillar’s hole that breaks out of the edge',
    cause: 'breaksOut',
    of: ['p9', 'front'],
    parts: (w) => one(w, {}, { posts: [...w.pillars().slice(1), w.post('p9', 59, 40)] }),
  },
  {
    name: 'a bearing in the hole of a pillar',
    cause: 'holesMeet',
    of: ['A', 'p1'],
    parts: (w) => w.movement({ arbors: [w.arbor('A', 48, 38)] }),
  },
  {
    name: 'two bushes in one another',
    cause: 'holesMeet',
    of: ['A', 'B'],
    parts: (w) =>
      w.movement({
        arbors: ['A', 'B'].map((id, i) =>
          w.arbor(id, 7 * i, 0, {
            bearings: ['back', 'front'].map((plate) => w.bearing(plate, 2, { kind: 'bush', outer: w.l(8) })),
          }),
        ),
      }),
  },
  {
    name: 'an arbor outside the case',
    cause: 'outsideCase',
    of: ['B'],
    parts: (w) =>
      w.movement({
        arbors: [w.arbor('A', 0, 0), w.arbor('B', 140, 0, { bearings: [w.bush(10, 2)], levels: w.levels(5, 30) })],
        walls: drum(w, 86),
      }),
  },
  {
    name: 'plates too large for their drum',
    cause: 'plateInWall',
    of: ['front', 'drum'],
    parts: (w) => one(w, {}, { plates: round(w, 81), walls: drum(w, 80) }),
  },
  {
    name: 'plates without play in their drum',
    cause: 'plateInWall',
    of: ['back', 'drum'],
    parts: (w) => one(w, {}, { plates: round(w, 80), walls: drum(w, 80) }),
  },
  {
    name: 'plates too wide for their box',
    cause: 'plateInWall',
    of: ['front', 'box'],
    parts: (w) =>
      one(
        w,
        {},
        { walls: [{ id: 'box', outline: w.rectangle(66, 56), inner: w.rectangle(59, 52), levels: w.levels(-10, 60) }] },
      ),
  },
  { name: 'an arbor that nothing bears', cause: 'noBearing', of: ['A'], parts: (w) => one(w, { bearings: [] }) },
  { name: 'an arbor without end shake', cause: 'noEndShake', of: ['A'], parts: (w) => one(w, { endShake: 0 }) },
  {
    name: 'a stack longer than the plates are apart',
    cause: 'stackShort',
    of: ['A'],
    parts: (w) =>
      one(w, {
        collars: [
          { diameter: w.l(6), ...w.levels(0, 10) },
          { diameter: w.l(6), ...w.levels(12, 40) },
        ],
      }),
  },
  {
    name: 'a pillar under a wheel',
    cause: 'gap',
    of: ['w', 'p9'],
    parts: (w) => one(w, {}, { posts: [...w.pillars(), w.post('p9', 20, 0)] }),
  },
  {
    name: 'two wheels on one level that overlap',
    cause: 'gap',
    of: ['a', 'b'],
    parts: (w) =>
      w.movement({
        arbors: [w.arbor('A', 0, 0), w.arbor('B', 28, 0)],
        wheels: [w.wheel('a', 'A', 30, 10), w.wheel('b', 'B', 30, 11)],
      }),
  },
  {
    name: 'a wheel in the front plate',
    cause: 'gap',
    of: ['v', 'front'],
    parts: (w) => one(w, {}, { wheels: [w.wheel('v', 'A', 40, 38.5)] }),
  },
  {
    name: 'a hand that meets a post',
    cause: 'gap',
    of: ['A', 's'],
    parts: (w) =>
      one(
        w,
        { diameter: w.l(2), swept: [{ kind: 'hand', farthest: w.l(36), from: w.z(50), to: w.z(51) }] },
        { posts: [...w.pillars(), w.post('s', 0, -35, { levels: w.levels(43, 60), plate: 'front' })] },
      ),
  },
  {
    name: 'two wheels of one arbor in each other',
    cause: 'gap',
    of: ['w', 'v'],
    parts: (w) => one(w, {}, { wheels: [w.wheel('w', 'A', 40, 10), w.wheel('v', 'A', 20, 11)] }),
  },
  {
    name: 'wheels in mesh that do not meet in height',
    cause: 'apartInHeight',
    of: ['a', 'b'],
    parts: (w) =>
      w.movement({
        arbors: [w.arbor('A', 0, 0), w.arbor('B', 30, 0)],
        wheels: [w.wheel('a', 'A', 40, 10), w.wheel('b', 'B', 20, 14)],
        rules: [{ id: 'd', kind: 'depth', wheels: ['a', 'b'] }],
      }),
  },
  {
    name: 'a support soldered to a wall five millimetres away',
    cause: 'noContact',
    of: ['s', 'drum'],
    parts: (w) =>
      one(
        w,
        {},
        {
          plates: round(w, 79.5),
          walls: drum(w, 80),
          posts: [
            ...w.pillars(),
            w.post('s', 0, -71, {
              hole: 0,
              levels: w.levels(0, 40),
              fixedTo: { wall: 'drum', how: 'soldered', allowance: w.l(0.1) },
            }),
          ],
        },
      ),
  },
  {
    name: 'a support that stands in the wall it is soldered to',
    cause: 'noContact',
    of: ['s', 'drum'],
    parts: (w) =>
      one(
        w,
        {},
        {
          plates: round(w, 79.5),
          walls: drum(w, 80),
          posts: [
            ...w.pillars(),
            w.post('s', 0, -77, {
              hole: 0,
              levels: w.levels(0, 40),
              fixedTo: { wall: 'drum', how: 'soldered', allowance: w.l(0.1) },
            }),
          ],
        },
      ),
  },
];
