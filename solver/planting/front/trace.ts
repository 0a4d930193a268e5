/** How a planting came about, as plain data: the network, what each rule did, steps, blocks, branches, work counts. */
import type { Movement } from '../../movement/schema.ts';
import { plantNetwork } from '../kernel/plant.ts';
import { type NetworkResult, type PlacementStep, PointState, RuleKind } from '../network.ts';
import type { PlantingGround } from './ground.ts';
import { networkOf } from './networkOf.ts';

/** Names of codes, by code. */
const namesOfCodes = (codes: Readonly<Record<string, number>>): ReadonlyMap<number, string> =>
  new Map(Object.entries(codes).map(([name, code]) => [code, name]));

const KINDS = namesOfCodes(RuleKind);
const STATES = namesOfCodes(PointState);
const SIDES = ['none', 'left', 'right', 'ahead', 'behind'] as const;

/** One planting laid open; points and rules of the network by their index in the lists. Lengths in mm, angles in radians. */
export interface PlantingTrace {
  readonly points: readonly {
    /** Id in the movement; absent for a place of the case. */
    readonly id?: string;
    readonly sketch: readonly [number, number];
    readonly held: boolean;
    readonly side: (typeof SIDES)[number];
    readonly at: readonly [number, number];
    readonly state: string;
  }[];
  readonly rules: readonly {
    readonly kind: string;
    readonly from: PlantingGround['sources'][number];
    readonly points: readonly number[];
    readonly values: readonly number[];
    /** What the rule was chosen for: it places, it only checks, or it cannot hold. */
    readonly role: 'places' | 'checks' | 'disagrees';
    readonly missBy: number;
  }[];
  /** In order of construction; `other` is the crossing that was not taken. */
  readonly steps: readonly PlacementStep[];
  readonly blocks: readonly { readonly points: readonly number[]; readonly rules: readonly number[] }[];
  readonly freeMotions: number;
  readonly disagreements: NetworkResult['disagreements'];
  readonly work: NetworkResult['work'];
}

/** Plants a movement from its sketch and keeps how: the same network and result as `plantMovement` makes of it. */
export function tracePlanting(movement: Movement): PlantingTrace {
  const ground = networkOf(movement);
  const result = plantNetwork(ground.network);
  return {
    points: pointsOf(ground, result),
    rules: rulesOf(ground, result),
    steps: result.steps,
    blocks: result.steps.filter(({ kind }) => kind === 'block').map(({ points, rules }) => ({ points, rules })),
    freeMotions: result.freeMotions,
    disagreements: result.disagreements,
    work: result.work,
  };
}

const pairAt = (coords: Float64Array, point: number): readonly [number, number] => [
  coords[2 * point] ?? Number.NaN,
  coords[2 * point + 1] ?? Number.NaN,
];

function pointsOf({ network, pointIds }: PlantingGround, result: NetworkResult): PlantingTrace['points'] {
  return Array.from({ length: network.pointCount }, (_, point) => {
    const id = pointIds[point];
    return {
      ...(id === undefined ? {} : { id }),
      sketch: pairAt(network.coords, point),
      held: network.held[point] === 1,
      side: SIDES[network.sides[point] ?? 0] ?? 'none',
      at: pairAt(result.coords, point),
      state: STATES.get(result.states[point] ?? -1) ?? 'unknown',
    };
  });
}

function rulesOf({ network, sources }: PlantingGround, result: NetworkResult): PlantingTrace['rules'] {
  const disagrees = new Set(result.disagreements.flatMap(({ rules }) => rules));
  return sources.map((from, rule) => ({
    kind: KINDS.get(network.kinds[rule] ?? -1) ?? 'unknown',
    from,
    points: [...network.points.slice(4 * rule, 4 * rule + 4)].filter((point) => point >= 0),
    values: [...network.values.slice(3 * rule, 3 * rule + 3)],
    role: disagrees.has(rule) ? 'disagrees' : result.checks[rule] ? 'checks' : 'places',
    missBy: result.missBy[rule] ?? Number.NaN,
  }));
}
