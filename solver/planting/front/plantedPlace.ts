/** The place of one point in the maker's terms; what costs work is found when it is asked for. */

import type { Point } from '../../geometry/index.ts';
import type { PointId, RuleId } from '../../movement/ids.ts';
import { PointState } from '../network.ts';
import type { Place, PlaceState, Spread } from '../placed.ts';
import { freeDirections } from './freeDirections.ts';
import type { PlacementIndex } from './placementIndex.ts';
import type { Sensitivity } from './sensitivity.ts';

const STATES: readonly PlaceState[] = (() => {
  const names: PlaceState[] = [];
  names[PointState.planted] = 'planted';
  names[PointState.loose] = 'loose';
  names[PointState.contested] = 'contested';
  return names;
})();

/** A drilled hole is a fact and settled, whatever rule it misses: the rule is what is told to disagree. */
function stateOf({ ground, result }: PlacementIndex, point: number): PlaceState {
  if (ground.heldBy.get(point)?.by === 'drilled') return 'planted';
  return STATES[result.states[point] ?? PointState.contested] ?? 'contested';
}

/** A hundredth of a millimetre: the maker's unit of error. */
const HUNDREDTH = 0.01;

/** A place whose costly parts are found when asked for. */
export class PlantedPlace implements Place {
  readonly id: PointId;
  readonly x: number;
  readonly y: number;
  readonly state: PlaceState;
  readonly doubt: 'touching' | 'barely' | undefined;
  readonly #point: number;
  readonly #index: PlacementIndex;
  readonly #sensitivity: Sensitivity;
  #spread: { readonly value: Spread | undefined } | undefined;

  constructor(id: PointId, point: number, index: PlacementIndex, sensitivity: Sensitivity) {
    const { coords } = index.result;
    this.id = id;
    this.x = coords[2 * point] ?? Number.NaN;
    this.y = coords[2 * point + 1] ?? Number.NaN;
    this.state = stateOf(index, point);
    this.doubt = this.state === 'planted' ? index.doubtOf(point) : undefined;
    this.#point = point;
    this.#index = index;
    this.#sensitivity = sensitivity;
  }

  /** Is this also the point's place in another planting of the same rules? */
  standsIn(index: PlacementIndex): boolean {
    const { coords } = index.result;
    return (
      this.x === coords[2 * this.#point] &&
      this.y === coords[2 * this.#point + 1] &&
      this.state === stateOf(index, this.#point) &&
      (this.state !== 'planted' || this.doubt === index.doubtOf(this.#point))
    );
  }

  get placedBy(): readonly RuleId[] {
    return [...this.#reach().keys()];
  }

  get movedBy(): readonly number[] {
    return [...this.#reach().values()];
  }

  get hangsOn(): readonly PointId[] {
    return hangersWithNames(this.#index, this.#point);
  }

  get free(): readonly Point[] {
    return this.state === 'loose' ? freeDirections(this.#index.result.motions, this.#point) : [];
  }

  get other(): Point | undefined {
    const other = this.#step?.other;
    return other && { x: other[0], y: other[1] };
  }

  get crossingAngle(): number | undefined {
    return this.#step?.crossingAngle;
  }

  get spread(): Spread | undefined {
    const isSettled = this.state === 'planted' || this.#index.ground.heldBy.has(this.#point);
    this.#spread ??= { value: isSettled ? this.#sensitivity.spreadOf(this.#point) : undefined };
    return this.#spread.value;
  }

  get #step() {
    return this.#index.result.steps[this.#index.stepOf[this.#point] ?? -1];
  }

  /** Placing rules with the way that a hundredth in each moves the point. */
  #reach(): Map<RuleId, number> {
    const held = this.#index.ground.heldBy.get(this.#point);
    if (held) return new Map(held.rule === undefined ? [] : [[held.rule, HUNDREDTH]]);
    const reach = new Map<RuleId, number>();
    const rules = this.#index.rulesPlacing(this.#point);
    const moved = this.#sensitivity.movedBy(this.#point, rules);
    rules.forEach((rule, index) => {
      const id = this.#index.ruleIdOf(rule);
      const way = HUNDREDTH * (moved[index] ?? 0);
      if (id !== undefined) reach.set(id, Math.max(way, reach.get(id) ?? 0));
    });
    return reach;
  }
}

/** Points of the movement placed from a point, directly or by places without a name: ends of shared lengths, ghosts. */
function hangersWithNames(index: PlacementIndex, from: number): PointId[] {
  const seen = new Set<number>([from]);
  const found: PointId[] = [];
  const queue = [from];
  for (let at = queue.pop(); at !== undefined; at = queue.pop()) {
    for (const point of index.hangersOf(at)) {
      if (seen.has(point)) continue;
      seen.add(point);
      const id = index.ground.pointIds[point];
      if (id === undefined) queue.push(point);
      else found.push(id);
    }
  }
  return found;
}
