/** Movements to be cured: demos with one thing disturbed, the faulty ones of the catalogue varied, and random ones. */
import { applyEdit, type Edit } from '../../../solver/movement/index.ts';
import type { Movement } from '../../../solver/movement/schema.ts';
import { type Variation, Writer } from '../../clearance/catalogue/bench.ts';
import { FAULTY } from '../../clearance/catalogue/faulty.ts';
import { movementOfFile, movementOfParts } from '../../support/movements.ts';

export const SOURCES = ['demos', 'catalogue', 'random'] as const;
export type Source = (typeof SOURCES)[number];

const DEMOS = ['going-train', 'moons-of-jupiter', 'tide-dial'];

/** One movement of a source. */
export function sceneFrom(source: Source, random: () => number): Movement {
  if (source === 'demos') return disturbedDemo(random);
  return source === 'catalogue' ? fromCatalogue(random) : randomScene(random);
}

function pick<T>(items: readonly T[], random: () => number): T {
  const item = items[Math.floor(random() * items.length)];
  if (item === undefined) throw new Error('nothing to pick from');
  return item;
}

const between = (least: number, most: number, random: () => number): number =>
  Math.round((least + (most - least) * random()) * 1000) / 1000;

function fromCatalogue(random: () => number): Movement {
  const by: Variation = {
    size: between(0.6, 2, random),
    turn: 2 * Math.PI * random(),
    isMirrored: random() < 0.5,
    lift: between(-20, 20, random),
    unit: 'mm',
    order: random,
  };
  return movementOfParts(pick(FAULTY, random).parts(new Writer(by)));
}

/** What may be changed in a demo, each as one edit. */
function disturbance(movement: Movement, random: () => number): Edit {
  const wheel = pick(movement.wheels, random);
  const arbor = pick(movement.arbors, random);
  const post = pick(movement.posts, random);
  const kinds: readonly (() => Edit)[] = [
    () => ({ kind: 'change', id: wheel.id, set: { level: wheel.level + between(-3, 3, random) } }),
    () => ({ kind: 'change', id: wheel.id, set: { thickness: wheel.thickness + between(0.5, 3, random) } }),
    () => ({ kind: 'change', id: wheel.id, set: { teeth: wheel.teeth + Math.floor(between(-3, 4, random)) } }),
    () => ({ kind: 'change', id: post.id, set: { diameter: post.diameter + between(1, 8, random) } }),
    () => ({ kind: 'change', id: arbor.id, set: { diameter: arbor.diameter + between(0.5, 5, random) } }),
    () => ({ kind: 'change', id: arbor.id, set: { endShake: between(0, 1.5, random) } }),
    () => ({
      kind: 'change',
      id: arbor.id,
      set: { levels: { from: between(-3, 10, random), to: between(20, 60, random) } },
    }),
    () => ({ kind: 'change', id: post.id, set: { levels: { from: 0, to: between(25, 46, random) } } }),
  ];
  return pick(kinds, random)();
}

function disturbedDemo(random: () => number): Movement {
  const demo = movementOfFile(`demo-data/${pick(DEMOS, random)}.json`);
  for (let tries = 0; tries < 20; tries++) {
    const edited = applyEdit(demo, disturbance(demo, random));
    if (edited.kind === 'edited') return edited.movement;
  }
  throw new Error('no disturbance of a demo could be read');
}

/** Two to six arbors with a wheel or two each, anywhere between two plates on four pillars and a post, some in mesh. */
function randomScene(random: () => number): Movement {
  const plates = ['back', 'front'].map((id, i) => ({
    id,
    name: id,
    outline: { kind: 'circle', centre: [0, 0], radius: 75 },
    levels: { from: 40 * i - 3 * (1 - i), to: 40 * i + 3 * i },
  }));
  const arbors = Array.from({ length: 2 + Math.floor(5 * random()) }, (_, i) => ({
    id: `a${i}`,
    at: [between(-40, 40, random), between(-40, 40, random)],
    diameter: between(2, 5, random),
    endShake: between(0.1, 0.4, random),
    bearings: plates.map((plate) => ({ plate: plate.id, bore: 1.83, pivot: 1.8, length: 3 })),
  }));
  const wheels = arbors.flatMap(({ id }, i) =>
    Array.from({ length: 1 + Math.floor(2 * random()) }, (_, j) => ({
      id: `w${i}${j}`,
      arbor: id,
      teeth: 8 + Math.floor(60 * random()),
      size: { module: 0.6 },
      form: 'involute',
      level: between(2, 34, random),
      thickness: between(1.5, 4, random),
    })),
  );
  const posts = [0, 1, 2, 3].map((i) => ({
    id: `p${i}`,
    at: [55 * Math.cos(0.8 + i * 1.57), 55 * Math.sin(0.8 + i * 1.57)],
    diameter: 8,
    hole: 4,
    slidesAbout: 'o',
  }));
  const held = [...arbors, { id: 'o', at: [0, 0] }].map(({ id, at }) => ({
    id: `h-${id}`,
    kind: 'held',
    point: id,
    at,
  }));
  const radii = posts.map(({ id }, i) => [
    { id: `r-${id}`, kind: 'radius', point: id, centre: 'o', length: 55 },
    { id: `b-${id}`, kind: 'bearing', point: id, centre: 'o', angle: (0.8 + i * 1.57) * (180 / Math.PI) },
  ]);
  const marks = [{ id: 'o', at: [0, 0] }];
  return movementOfParts({ plates, arbors, wheels, posts, marks, rules: [...held, ...radii.flat()] });
}
