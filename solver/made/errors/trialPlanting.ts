/**
 * Planting of a movement with its lengths a little off, as a maker does it: he sets the lengths that place a point, and
 * a rule that only checks comes out as it comes out. Only kernel networks are planted, so that thousands of trials are quick.
 */
import { type Network, networkOf, PointState, plantNetwork, RuleKind } from '../../planting/index.ts';
import type { PlacedMovement } from '../../planting/placed.ts';

type Ground = ReturnType<typeof networkOf>;

/** Plants one movement again and again with lengths a little off. */
export class TrialPlanting {
  readonly ground: Ground;
  /** Network rules that place something, in the order of the trial network. */
  readonly struck: readonly number[];
  /** Points that are settled as planned, and must be in a trial. */
  readonly settled: readonly number[];
  /** How often each point was the first that could not be planted. */
  readonly unplaced = new Map<number, number>();
  private readonly network: Network;
  private readonly positionOf: Int32Array;
  private warm: ReturnType<typeof plantNetwork> | undefined;
  private readonly values: Float64Array;
  private readonly coords: Float64Array;

  constructor(placed: PlacedMovement) {
    this.ground = networkOf(placed.movement);
    const { network, pointIds } = this.ground;
    const planned = plantNetwork(network);
    this.settled = pointIds.flatMap((id, point) => (id !== undefined && isPlanted(planned, point) ? [point] : []));
    // The planned places are the sketch: a small error then never chooses another crossing.
    const sketched = { ...network, coords: Float64Array.from(planned.coords) };
    for (let i = 0; i < network.pointCount; i++) {
      if (network.held[i]) sketched.coords.set(network.coords.subarray(2 * i, 2 * i + 2), 2 * i);
    }
    this.struck = withoutChecks(sketched, planned, this.settled);
    this.network = onlyRules(sketched, this.struck);
    this.positionOf = new Int32Array(network.ruleCount).fill(-1);
    this.struck.forEach((rule, position) => {
      this.positionOf[rule] = position;
    });
    this.values = Float64Array.from(this.network.values);
    this.coords = Float64Array.from(this.network.coords);
  }

  isStruck = (rule: number): boolean => (this.positionOf[rule] ?? -1) >= 0;

  /** Takes all errors back. */
  clear(): void {
    this.values.set(this.network.values);
    this.coords.set(this.network.coords);
  }

  /** Adds to a value of a rule, in its own unit. */
  shiftValue(rule: number, slot: number, by: number): void {
    const at = 3 * (this.positionOf[rule] ?? 0) + slot;
    this.values[at] = (this.values[at] ?? 0) + by;
  }

  /** Moves a held point. */
  shiftHeld(point: number, axis: 0 | 1, by: number): void {
    const at = 2 * point + axis;
    this.coords[at] = (this.coords[at] ?? 0) + by;
  }

  /** Places [x0, y0, …] of all points; undefined where some settled point cannot be planted. */
  plant(): Float64Array | undefined {
    if (
      this.values.some((value, at) => value < 0 && at % 3 === 0 && this.network.kinds[at / 3] === RuleKind.distance)
    ) {
      return undefined;
    }
    const result = plantNetwork({ ...this.network, values: this.values, coords: this.coords }, this.warm);
    this.warm ??= result;
    if (this.settled.every((point) => isPlanted(result, point))) return result.coords;
    const first = this.firstUnplaced(result);
    if (first !== undefined) this.unplaced.set(first, (this.unplaced.get(first) ?? 0) + 1);
    return undefined;
  }

  /** The first settled point, in the order of striking, that has no place. */
  private firstUnplaced(result: ReturnType<typeof plantNetwork>): number | undefined {
    const settled = new Set(this.settled);
    for (const { points } of result.steps) {
      const found = points.find((point) => settled.has(point) && !isPlanted(result, point));
      if (found !== undefined) return found;
    }
    return undefined;
  }
}

function isPlanted(result: ReturnType<typeof plantNetwork>, point: number): boolean {
  return result.states[point] === PointState.planted;
}

/** The rules that place: all but the spare ones, some of which stay where without them a point would be loose. */
function withoutChecks(
  network: Network,
  { spare, checks }: ReturnType<typeof plantNetwork>,
  settled: readonly number[],
): readonly number[] {
  // What only checks is out from the start, whether it holds or not.
  const all = Array.from({ length: network.ruleCount }, (_, rule) => rule).filter((rule) => !checks[rule]);
  const checking = new Set(spare.filter((rule) => (network.kinds[rule] ?? 0) < RuleKind.samePlace && !checks[rule]));
  const rulesLeft = () => all.filter((rule) => !checking.has(rule));
  for (const rule of [...checking]) {
    const result = plantNetwork(onlyRules(network, rulesLeft()));
    if (settled.every((point) => isPlanted(result, point))) break;
    checking.delete(rule);
  }
  return rulesLeft();
}

function onlyRules(network: Network, rules: readonly number[]): Network {
  const pick = (from: { readonly [index: number]: number }, each: number): number[] =>
    rules.flatMap((rule) => Array.from({ length: each }, (_, k) => from[each * rule + k] ?? 0));
  // Duties are not handed on: all that is left places.
  const { checks: _, told: __, rank: ___, ...rest } = network;
  return {
    ...rest,
    ruleCount: rules.length,
    kinds: Uint8Array.from(pick(network.kinds, 1)),
    points: Int32Array.from(pick(network.points, 4)),
    values: Float64Array.from(pick(network.values, 3)),
  };
}
