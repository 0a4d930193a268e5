/**
 * Families of small random networks for the proof of rank: each is made from a known placement, so that its rules can
 * hold, and many are made to be special: bodies that swing, links that lie parallel, arcs that only touch, directions
 * that lose their meaning; along the axes, along the diagonal, or turned by any angle, by less than can be seen too.
 */
import { type Network, RuleKind } from '../../../solver/planting/network.ts';
import { type DraftRule, distance, networkFrom } from '../../planting/scenes/builder.ts';

type Spot = readonly [number, number];
type Random = () => number;

const whole = (random: Random, from: number, to: number): number => from + Math.floor((to - from + 1) * random());
const pick = <T>(random: Random, list: readonly T[]): T => list[Math.floor(list.length * random())] as T; // never empty
const gap = (a: Spot, b: Spot): number => Math.hypot(a[0] - b[0], a[1] - b[1]);
const angleOf = (from: Spot, to: Spot): number => Math.atan2(to[1] - from[1], to[0] - from[0]);

/** Turns and shifts a drawing: mostly along the axes, sometimes by a hair, sometimes by any angle. */
function laid(random: Random, at: readonly Spot[]): Spot[] {
  const turn = pick(random, [
    0,
    0,
    Math.PI / 2,
    Math.PI / 4,
    1e-9 * random(),
    1e-6 * random(),
    1e-3 * random(),
    7 * random(),
  ]);
  const [c, s] = turn === 0 ? [1, 0] : turn === Math.PI / 2 ? [0, 1] : [Math.cos(turn), Math.sin(turn)];
  return at.map(([x, y]) => [c * x - s * y, s * x + c * y]);
}

/** Sketch places: at the known ones, or off by up to `most` mm; held points stay. */
function sketched(random: Random, at: readonly Spot[], held: readonly number[], most: number): Spot[] {
  const off = pick(random, [0, 1e-6, 1e-3, most * random(), most * random()]);
  return at.map(([x, y], i) => (held.includes(i) ? [x, y] : [x + off * (random() - 0.5), y + off * (random() - 0.5)]));
}

function made(
  random: Random,
  at: readonly Spot[],
  held: readonly number[],
  rules: readonly DraftRule[],
  off = 2,
): Network {
  const order = rules.map((rule) => ({ rule, by: random() })).sort((a, b) => a.by - b.by);
  return networkFrom({ at: sketched(random, at, held, off), held, rules: order.map(({ rule }) => rule) });
}

/** The distance that two known points have. */
const between = (at: readonly Spot[], a: number, b: number): DraftRule =>
  distance(a, b, gap(at[a] as Spot, at[b] as Spot)); // points of the drawing

/** Spots apart from each other, on a lattice of 5 mm or anywhere. */
function spots(random: Random, count: number): Spot[] {
  const lattice = random() < 0.5;
  const list: Spot[] = [];
  while (list.length < count) {
    const spot: Spot = lattice ? [5 * whole(random, 0, 12), 5 * whole(random, 0, 12)] : [60 * random(), 60 * random()];
    if (list.every((other) => gap(other, spot) > 4)) list.push(spot);
  }
  return list;
}

/** A rule of any kind between points of the drawing that holds there. */
function anyRule(random: Random, at: readonly Spot[]): DraftRule | undefined {
  const [p, a, c] = [whole(random, 0, at.length - 1), whole(random, 0, at.length - 1), whole(random, 0, at.length - 1)];
  if (p === a || a === c || p === c) return undefined;
  const [P, A, C] = [at[p] as Spot, at[a] as Spot, at[c] as Spot]; // drawn from their count
  const kind = whole(random, 0, 9);
  if (kind <= 5) return between(at, p, a);
  if (kind === 6) return { kind: RuleKind.ray, points: [p, a], values: [angleOf(A, P)] };
  if (kind === 7) return { kind: RuleKind.ray, points: [p, a, c], values: [angleOf(A, P) - angleOf(A, C)] };
  if (kind === 8) {
    const turn = 7 * random();
    const [nx, ny] = [Math.cos(turn), Math.sin(turn)];
    return { kind: RuleKind.onLine, points: [p], values: [nx, ny, nx * P[0] + ny * P[1]] };
  }
  if (Math.abs((C[0] - A[0]) * (P[1] - A[1]) - (C[1] - A[1]) * (P[0] - A[0])) < 1e-12) {
    return { kind: RuleKind.inLine, points: [p, a, c] };
  }
  if (Math.abs(gap(P, C) - gap(A, C)) < 1e-12) return { kind: RuleKind.sameRadius, points: [p, a, c] };
  return undefined;
}

/** Any rules between a few points: too few, just enough, too many. */
function anything(random: Random): Network {
  const at = spots(random, whole(random, 3, 7));
  const held = random() < 0.15 ? [] : random() < 0.4 ? [0] : [0, 1];
  const rules: DraftRule[] = [];
  const wanted = 2 * (at.length - held.length) + whole(random, -2, 2);
  while (rules.length < wanted) {
    const rule = anyRule(random, at);
    if (rule) rules.push(rule);
  }
  return made(random, at, held, rules);
}

/** A braced body of four to six points held at one of them: it swings, however many distances it has. */
function swinging(random: Random): Network {
  const [w, h] = [pick(random, [10, 20, 30, 10 + 30 * random()]), pick(random, [10, 20, 10 + 30 * random()])];
  const at = [
    ...laid(random, [
      [0, 0],
      [w, 0],
      [w, h],
      [0, h],
    ]),
    [90, 40] as Spot,
  ];
  const rules = [
    between(at, 0, 1),
    between(at, 1, 2),
    between(at, 2, 3),
    between(at, 3, 0),
    between(at, 0, 2),
    between(at, 1, 3),
  ];
  const held = [whole(random, 0, 3), 4];
  // Now and then a further rule stops it, or one that says nothing new is added.
  if (random() < 0.3) rules.push(between(at, (held[0] as number) === 0 ? 1 : 0, 4)); // one held corner
  if (random() < 0.3) rules.push(between(at, 0, 1));
  return made(random, at, held, rules, 4);
}

/** A strip of triangles held at one point, with or without a direction that stops it. */
function strip(random: Random): Network {
  const count = whole(random, 4, 9);
  const side = pick(random, [10, 20, 8 + 20 * random()]);
  const flat = pick(random, [1, Math.sqrt(3) / 2, 0.3 + random()]);
  const at = laid(
    random,
    Array.from({ length: count }, (_, k): Spot => [(k * side) / 2, k % 2 ? flat * side : 0]),
  );
  const rules: DraftRule[] = [];
  for (let k = 1; k < count; k++) {
    rules.push(between(at, k - 1, k));
    if (k > 1) rules.push(between(at, k - 2, k));
  }
  if (count > 4 && random() < 0.4) rules.push(between(at, 0, 3));
  const held = [whole(random, 0, count - 1)];
  const [root] = held as [number];
  if (random() < 0.5) {
    const other = (root + whole(random, 1, count - 1)) % count;
    rules.push({ kind: RuleKind.ray, points: [other, root], values: [angleOf(at[root] as Spot, at[other] as Spot)] }); // points of the strip
  }
  return made(random, at, held, rules, 3);
}

/** A bar or a triangle on links that lie parallel: of equal length it moves, of unequal lengths it only would. */
function parallel(random: Random): Network {
  const links = whole(random, 2, 4);
  const equal = random() < 0.5;
  const length = pick(random, [10, 20, 15 + 10 * random()]);
  const foot: Spot[] = Array.from({ length: links }, (_, k) => [k * 15, equal ? 0 : -5 * whole(random, 0, 3)]);
  const head: Spot[] = foot.map(([x]) => [x, length]);
  const at = laid(random, [...foot, ...head, [7, length + 12]]);
  const top = Array.from({ length: links }, (_, k) => links + k);
  const body = [...top, 2 * links];
  const rules = top.map((h, k) => between(at, k, h));
  for (let i = 0; i < body.length; i++) {
    for (let j = 0; j < i; j++) {
      if (i === body.length - 1 || j === 0) rules.push(between(at, body[i] as number, body[j] as number));
    }
  } // within the body
  if (random() < 0.2) rules.splice(whole(random, 0, rules.length - 1), 1);
  return made(
    random,
    at,
    Array.from({ length: links }, (_, k) => k),
    rules,
    1,
  );
}

/** Two arcs that touch, or nearly, from outside or inside, with another point hung on; alone or inside a block. */
function tangent(random: Random): Network {
  const [ra, rb] = [pick(random, [10, 20, 5 + 30 * random()]), pick(random, [12, 25, 5 + 30 * random()])];
  const off = pick(random, [0, 0, 1e-15, 1e-13, -1e-13, 1e-12, 1e-11, 1e-10, 1e-9, 1e-8, 1e-6, -1e-11, -1e-8]);
  const apart = (random() < 0.6 || Math.abs(ra - rb) < 2 ? ra + rb : Math.abs(ra - rb)) - off * ra;
  const P: Spot = [apart > ra ? ra : ra > rb ? ra : -ra, 0];
  const at = laid(random, [[0, 0], [apart, 0], P, [P[0] + 6, 14]]);
  const rules = [distance(2, 0, ra), distance(2, 1, rb), between(at, 3, 2), between(at, 3, 0)];
  if (random() < 0.3) rules[3] = between(at, 3, 1);
  if (random() < 0.2) rules.push(between(at, 3, 1));
  return made(random, at, [0, 1], rules, 3);
}

/** Directions from their own centre, lines through one place, opposites of the centre, lengths of nothing. */
function degenerate(random: Random): Network {
  const at = laid(random, [
    [0, 0],
    [30, 0],
    [10, 20],
    [45, 25],
  ]);
  const ray = (p: number, a: number, angle: number): DraftRule => ({
    kind: RuleKind.ray,
    points: [p, a],
    values: [angle],
  });
  const turn = 6 * random();
  const sets: (() => DraftRule[])[] = [
    () => [ray(2, 0, turn), ray(2, 0, turn + pick(random, [0.5, 1e-3, 1e-6, 1e-9, 3]))],
    () => [
      { kind: RuleKind.inLine, points: [2, 0, 1] },
      { kind: RuleKind.inLine, points: [2, 0, 3] },
    ],
    () => [ray(2, 0, turn), { kind: RuleKind.inLine, points: [2, 0, 1] }],
    () => [
      { kind: RuleKind.samePlace, points: [2, 0] },
      { kind: RuleKind.inLine, points: [3, 2, 0] },
    ],
    () => [distance(2, 1, gap(at[0] as Spot, at[1] as Spot)), ray(2, 0, turn)], // points of the drawing
    () => [distance(2, 1, gap(at[0] as Spot, at[1] as Spot)), { kind: RuleKind.inLine, points: [2, 0, 1] }], // as above
    () => [distance(2, 0, 0), distance(2, 1, 20)],
    () => [
      { kind: RuleKind.samePlace, points: [2, 0] },
      { kind: RuleKind.opposite, points: [3, 0, 2] },
    ],
    () => [{ kind: RuleKind.sameRadius, points: [2, 0, 0] }, distance(2, 1, 20)],
    () => [{ kind: RuleKind.inLine, points: [2, 0, 0] }, distance(2, 1, 20)],
    () => [ray(2, 0, turn), ray(3, 2, turn + 1), ray(3, 2, turn + 2), distance(2, 1, 20)],
    () => [distance(2, 0, 1e-9 * random()), ray(3, 2, turn), distance(3, 1, 20)],
  ];
  const rules = pick(random, sets)();
  if (random() < 0.4) rules.push(between(at, 3, 0), between(at, 3, 1));
  const held = rules.some(({ points }) => points.includes(3)) ? [0, 1] : [0, 1, 3];
  return made(random, at, held, rules, 6);
}

/** Families by name. */
export const FAMILIES: Readonly<Record<string, (random: Random) => Network>> = {
  'any rules': anything,
  'swinging bodies': swinging,
  'triangulated strips': strip,
  'parallel links': parallel,
  'touching arcs': tangent,
  'degenerate places': degenerate,
};
