/** Movements that can be made and put together as drawn. */
import type { Case, Writer } from './bench.ts';

const one = (w: Writer, arbor: object = {}, more: object = {}): object =>
  w.movement({ arbors: [w.arbor('A', 0, 0, arbor)], wheels: [w.wheel('w', 'A', 40, 10)], ...more });

/** A thin arbor with a pipe on it in front of the plates. */
function piped(w: Writer, pipes: object[], more: object = {}, arbor: object = {}): object {
  const A = w.arbor('A', 0, 0, { diameter: w.l(2), levels: w.levels(-3, 70), ...arbor });
  return w.movement({ arbors: [A, ...pipes], ...more });
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

const ARMS = (w: Writer, rim: number) => ({ count: 5, width: w.l(4), rim: w.l(rim), fillet: w.l(0.8) });

/** Each can be built; nothing is to be told of it. */
export const SOUND: readonly Case[] = [
  { name: 'an arbor with a wheel, heights blank', parts: (w) => one(w) },
  { name: 'heights told with the pivots', parts: (w) => one(w, { levels: w.levels(-3, 43) }) },
  { name: 'heights told from shoulder to shoulder', parts: (w) => one(w, { levels: w.levels(0.1, 39.9) }) },
  { name: 'only the upper end told', parts: (w) => one(w, { levels: { to: w.z(43) } }) },
  {
    name: 'two arbors in mesh',
    parts: (w) =>
      w.movement({
        arbors: [w.arbor('A', 0, 0), w.arbor('B', 30, 0)],
        wheels: [w.wheel('a', 'A', 40, 10), w.wheel('b', 'B', 20, 9.5, { thickness: w.l(3) })],
        rules: [{ id: 'd', kind: 'depth', wheels: ['a', 'b'] }],
      }),
  },
  {
    name: 'a wheel on a stud of one plate',
    parts: (w) => one(w, { bearings: [w.bearing('front', 3, { length: w.l(3) })], levels: w.levels(5, 43) }),
  },
  { name: 'pillars of the stated length', parts: (w) => one(w, {}, { posts: w.pillars({ levels: w.levels(0, 40) }) }) },
  {
    name: 'pillars whose ends go into holes of their thickness',
    parts: (w) => one(w, {}, { posts: w.pillars({ levels: w.levels(-3, 43), hole: w.l(8) }) }),
  },
  {
    name: 'a short support beside four pillars',
    parts: (w) =>
      one(w, {}, { posts: [...w.pillars(), w.post('s', 0, -35, { levels: w.levels(0, 25), plate: 'back' })] }),
  },
  {
    name: 'a post right through a plate',
    parts: (w) =>
      one(
        w,
        {},
        { posts: [...w.pillars(), w.post('s', 0, -35, { levels: w.levels(-12, 25), hole: 0, plate: 'back' })] },
      ),
  },
  { name: 'a pipe fixed on its arbor', parts: (w) => piped(w, [pipe(w, 'P', 'A', 5, 2, 46, 60)]) },
  {
    name: 'two pipes, one in the other',
    parts: (w) => piped(w, [pipe(w, 'P', 'A', 5, 2, 46, 65), pipe(w, 'Q', 'P', 8, 5, 48, 60)]),
  },
  {
    name: 'pipes through a plate that does not bear the arbor',
    parts: (w) =>
      piped(
        w,
        [pipe(w, 'P', 'A', 5, 2, 30, 65), pipe(w, 'Q', 'P', 8, 5, 34, 60)],
        {},
        { bearings: [w.bearing('back'), w.bush(20, 2)] },
      ),
  },
  {
    name: 'pipes through an opening',
    parts: (w) =>
      piped(
        w,
        [pipe(w, 'P', 'A', 5, 2, 30, 65)],
        { openings: [{ id: 'o', plate: 'front', outline: w.circle(0, 0, 6) }] },
        { bearings: [w.bearing('back'), w.bush(20, 2)] },
      ),
  },
  {
    name: 'a pipe that runs in a bush of the plate, its arbor in the pipe',
    parts: (w) =>
      piped(
        w,
        [
          pipe(w, 'P', 'A', 5, 2, 30, 65, {
            bearings: [w.bearing('front', 5, { kind: 'bush', outer: w.l(8) }), w.bush(30, 2), w.bush(60, 2)],
          }),
        ],
        {},
        { bearings: [w.bearing('back'), w.bush(31, 2)] },
      ),
  },
  {
    name: 'a hand in front',
    parts: (w) =>
      one(w, { diameter: w.l(2), swept: [{ kind: 'hand', farthest: w.l(20), from: w.z(50), to: w.z(51) }] }),
  },
  {
    name: 'an arbor that goes on as thick as its pivot',
    parts: (w) => one(w, { levels: w.levels(-3, 60), bearings: [w.bearing('back'), w.bearing('front', 3)] }),
  },
  {
    name: 'a collar that makes the shoulder',
    parts: (w) =>
      one(w, { diameter: w.l(2), levels: w.levels(-3, 60), collars: [{ diameter: w.l(5), ...w.levels(20, 39.9) }] }),
  },
  {
    name: 'a crossed out wheel',
    parts: (w) =>
      one(
        w,
        {},
        { wheels: [w.wheel('w', 'A', 60, 10, { arms: ARMS(w, 3), hub: { diameter: w.l(10), ...w.levels(9, 13) } })] },
      ),
  },
  {
    name: 'a wheel bored to its arbor',
    parts: (w) => one(w, {}, { wheels: [w.wheel('w', 'A', 40, 10, { bore: w.l(3) })] }),
  },
  {
    name: 'a pinion cut on its arbor',
    parts: (w) => one(w, {}, { wheels: [w.wheel('w', 'A', 8, 10, { thickness: w.l(6) })] }),
  },
  {
    name: 'ball races without end shake',
    parts: (w) =>
      one(w, {
        endShake: 0,
        bearings: ['back', 'front'].map((plate) => w.bearing(plate, 2, { kind: 'race', outer: w.l(6) })),
      }),
  },
  {
    name: 'a fixed stud',
    parts: (w) => one(w, { turns: 'never', bearings: [], levels: w.levels(0, 20) }),
  },
  {
    name: 'round plates in a drum',
    parts: (w) =>
      one(
        w,
        {},
        {
          plates: [w.plate('back', -3, 0, w.circle(0, 0, 79.5)), w.plate('front', 40, 43, w.circle(0, 0, 79.5))],
          walls: [{ id: 'drum', outline: w.circle(0, 0, 84), inner: w.circle(0, 0, 80), levels: w.levels(-10, 60) }],
        },
      ),
  },
  {
    name: 'plates in a box',
    parts: (w) =>
      one(
        w,
        {},
        {
          walls: [
            { id: 'box', outline: w.rectangle(66, 56), inner: w.rectangle(60.5, 50.5), levels: w.levels(-10, 60) },
          ],
        },
      ),
  },
  {
    name: 'a dial on feet over the plates',
    parts: (w) =>
      one(
        w,
        {},
        {
          plates: [w.plate('back', -3, 0), w.plate('front', 40, 43), w.plate('dial', 55, 56)],
          posts: [
            ...w.pillars(),
            w.post('f1', 40, 0, { plate: 'front', hole: w.l(3) }),
            w.post('f2', -40, 0, { plate: 'front', hole: w.l(3) }),
          ],
        },
      ),
  },
  {
    name: 'wheels seated against each other on one arbor',
    parts: (w) =>
      one(w, {}, { wheels: [w.wheel('a', 'A', 40, 10), w.wheel('b', 'A', 20, 12), w.wheel('c', 'A', 30, 14)] }),
  },
  {
    name: 'two wheels over each other, clear in height',
    parts: (w) =>
      w.movement({
        arbors: [w.arbor('A', 0, 0), w.arbor('B', 25, 0)],
        wheels: [w.wheel('a', 'A', 30, 10), w.wheel('b', 'B', 30, 14)],
      }),
  },
  {
    name: 'holes of marks',
    parts: (w) => one(w, {}, { marks: [{ id: 'm', at: w.at(0, 30), hole: w.l(2), plate: 'front' }] }),
  },
  {
    name: 'an opening beside the holes',
    parts: (w) => one(w, {}, { openings: [{ id: 'o', plate: 'front', outline: w.circle(0, 20, 8) }] }),
  },
  {
    name: 'a thick bush near the edge, with metal left',
    parts: (w) =>
      w.movement({
        arbors: [
          w.arbor('A', 0, 44, {
            bearings: ['back', 'front'].map((plate) => w.bearing(plate, 2, { kind: 'bush', outer: w.l(6) })),
          }),
        ],
      }),
  },
  {
    name: 'thin plates and long pivots',
    parts: (w) => one(w, { bearings: ['back', 'front'].map((plate) => w.bearing(plate, 1, { length: w.l(3) })) }),
  },
  {
    name: 'supports soldered to a drum',
    parts: (w) =>
      one(
        w,
        {},
        {
          plates: [w.plate('back', -3, 0, w.circle(0, 0, 79.5)), w.plate('front', 40, 43, w.circle(0, 0, 79.5))],
          walls: [{ id: 'drum', outline: w.circle(0, 0, 84), inner: w.circle(0, 0, 80), levels: w.levels(-10, 60) }],
          posts: [0, 1, 2].map((i) =>
            w.post(`s${i}`, 76 * Math.cos(0.3 + 2.1 * i), 76 * Math.sin(0.3 + 2.1 * i), {
              hole: 0,
              levels: w.levels(0, 40),
              fixedTo: { wall: 'drum', how: 'soldered', allowance: w.l(0.1) },
            }),
          ),
        },
      ),
  },
];
