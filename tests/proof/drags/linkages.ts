/** Small linkages with one or two free motions, for the proof of drags: hand-made kinds, and planted networks a rule short. */
import { type Network, RuleKind } from '../../../solver/planting/network.ts';
import { type DraftRule, distance, networkFrom } from '../../planting/scenes/builder.ts';
import { chainedNetwork } from '../../planting/scenes/chained.ts';
import { constructedNetwork } from '../../planting/scenes/constructed.ts';
import { everyKind } from '../../planting/scenes/everyKind.ts';

type Spot = readonly [number, number];
type Random = () => number;

const gap = (a: Spot, b: Spot): number => Math.hypot(a[0] - b[0], a[1] - b[1]);
const joined = (at: readonly Spot[], pairs: readonly (readonly [number, number])[]): DraftRule[] =>
  pairs.map(([a, b]) => distance(a, b, gap(at[a] as Spot, at[b] as Spot))); // pairs name points

const shaken = (random: Random, at: readonly Spot[], by: number): Spot[] =>
  at.map(([x, y]) => [x + by * (random() - 0.5), y + by * (random() - 0.5)]);

/** Crank, coupler with a point on it, rocker. */
function fourBar(random: Random): Network {
  const at = shaken(
    random,
    [
      [0, 0],
      [60, 0],
      [5, 25],
      [58, 40],
      [35, 55],
    ],
    16,
  );
  return networkFrom({
    at,
    held: [0, 1],
    rules: joined(at, [
      [0, 2],
      [1, 3],
      [2, 3],
      [2, 4],
      [3, 4],
    ]),
  });
}

/** Two or three links in a row from a held point. */
function arm(random: Random): Network {
  const links = random() < 0.5 ? 2 : 3;
  const all: readonly Spot[] = [
    [0, 0],
    [20, 8],
    [38, 2],
    [50, 20],
  ];
  const at = shaken(random, all.slice(0, links + 1), 8);
  return networkFrom({
    at,
    held: [0],
    rules: joined(
      at,
      Array.from({ length: links }, (_, k) => [k, k + 1] as const),
    ),
  });
}

/** A body of four points and six distances held at one, with a point hung on it. */
function swinging(random: Random): Network {
  const at = shaken(
    random,
    [
      [0, 0],
      [30, 0],
      [30, 20],
      [0, 20],
      [70, 5],
      [55, 30],
    ],
    10,
  );
  const rules = joined(at, [
    [0, 1],
    [1, 2],
    [2, 3],
    [3, 0],
    [0, 2],
    [1, 3],
    [5, 2],
    [5, 4],
  ]);
  return networkFrom({ at, held: [0, 4], rules });
}

/** A point on a line or on a ray, with another at a distance. */
function sliding(random: Random): Network {
  const at = shaken(
    random,
    [
      [0, 0],
      [20, 2],
      [38, 20],
      [60, 0],
    ],
    8,
  );
  const turn = Math.atan2(at[1]![1] - at[0]![1], at[1]![0] - at[0]![0]); // four points
  const slide: DraftRule =
    random() < 0.5
      ? { kind: RuleKind.ray, points: [1, 0], values: [turn] }
      : { kind: RuleKind.inLine, points: [1, 0, 3] };
  const along =
    slide.kind === RuleKind.inLine
      ? at.map((spot, k): Spot => (k === 1 ? [(at[0]![0] + at[3]![0]) / 2, (at[0]![1] + at[3]![1]) / 2] : spot))
      : at; // as above
  return networkFrom({ at: along, held: [0, 3], rules: [slide, ...joined(along, [[1, 2]])] });
}

/** A planted network without one of its rules. */
function short({ network }: { network: Network }, random: Random): Network {
  const left = Math.floor(random() * network.ruleCount);
  const keep = Array.from({ length: network.ruleCount }, (_, r) => r).filter((r) => r !== left);
  return {
    ...network,
    ruleCount: keep.length,
    kinds: Uint8Array.from(keep, (r) => network.kinds[r] as number), // rules of it
    points: Int32Array.from(keep.flatMap((r) => Array.from(network.points.subarray(4 * r, 4 * r + 4)))),
    values: Float64Array.from(keep.flatMap((r) => Array.from(network.values.subarray(3 * r, 3 * r + 3)))),
  };
}

const KINDS: readonly (readonly [string, (random: Random) => Network])[] = [
  ['four bars', fourBar],
  ['arms of two and three links', arm],
  ['swinging bodies', swinging],
  ['sliding points', sliding],
  [
    'built point by point, a rule short',
    (random) => short(constructedNetwork(Math.floor(1e6 * random()), 6, 0), random),
  ],
  ['chained blocks, a rule short', (random) => short(chainedNetwork(Math.floor(1e6 * random()), 5, 0), random)],
  ['every kind of rule, one short', (random) => short(everyKind(Math.floor(1e6 * random()), 0), random)],
];

/** The linkage of a case. */
export function linkageOf(n: number, random: Random): { readonly name: string; readonly network: Network } {
  const [name, make] = KINDS[n % KINDS.length] as (typeof KINDS)[number]; // within the list
  return { name, network: make(random) };
}
