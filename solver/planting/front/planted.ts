/** A planted movement whose parts are found when they are asked for: a drag step that only redraws pays only for places. */

import type { Point } from '../../geometry/index.ts';
import type { PointId, RuleId } from '../../movement/ids.ts';
import type { Movement } from '../../movement/schema.ts';
import type { Disagreement } from '../disagreement.ts';
import type { NetworkResult } from '../network.ts';
import type { ConstructionStep, Place, PlacedMovement, RuleOutcome } from '../placed.ts';
import { toldDisagreements } from './disagreements.ts';
import type { PlantingGround } from './ground.ts';
import { PlacementIndex } from './placementIndex.ts';
import { PlantedPlace } from './plantedPlace.ts';
import { ruleOutcomes } from './ruleOutcomes.ts';
import { Sensitivity } from './sensitivity.ts';

/** A placed movement over its network. */
export class PlantedMovement implements PlacedMovement {
  readonly movement: Movement;
  readonly index: PlacementIndex;
  readonly #sensitivity: Sensitivity;
  #places: ReadonlyMap<PointId, PlantedPlace> | undefined;
  #before: ReadonlyMap<PointId, PlantedPlace> | undefined;
  #rules: ReadonlyMap<RuleId, RuleOutcome> | undefined;
  #order: readonly ConstructionStep[] | undefined;
  #motions: readonly ReadonlyMap<PointId, Point>[] | undefined;
  #disagreements: readonly Disagreement[] | undefined;

  constructor(ground: PlantingGround, result: NetworkResult) {
    this.movement = ground.movement;
    this.index = new PlacementIndex(ground, result);
    this.#sensitivity = new Sensitivity(this.index);
  }

  get places(): ReadonlyMap<PointId, Place> {
    if (this.#places) return this.#places;
    const places = new Map<PointId, PlantedPlace>();
    for (const [id, point] of this.index.ground.indexOf) {
      const before = this.#before?.get(id);
      const isSame = before?.standsIn(this.index);
      places.set(id, before && isSame ? before : new PlantedPlace(id, point, this.index, this.#sensitivity));
    }
    this.#places = places;
    this.#before = undefined;
    return places;
  }

  get rules(): ReadonlyMap<RuleId, RuleOutcome> {
    this.#rules ??= ruleOutcomes(this.index);
    return this.#rules;
  }

  get order(): readonly ConstructionStep[] {
    this.#order ??= constructionOrder(this.index);
    return this.#order;
  }

  get freeMotions(): number {
    return this.index.result.freeMotions;
  }

  get motions(): readonly ReadonlyMap<PointId, Point>[] {
    this.#motions ??= this.index.result.motions.map(
      (motion) =>
        new Map(
          [...this.index.ground.indexOf].map(([id, point]) => [
            id,
            { x: motion[2 * point] ?? 0, y: motion[2 * point + 1] ?? 0 },
          ]),
        ),
    );
    return this.#motions;
  }

  get disagreements(): readonly Disagreement[] {
    this.#disagreements ??= toldDisagreements(this.index);
    return this.#disagreements;
  }

  /** The planting of the same rules at other places; points that did not move keep their `Place` objects. */
  following(result: NetworkResult): PlantedMovement {
    const next = new PlantedMovement(this.index.ground, result);
    next.#before = this.#places;
    return next;
  }

  plusMinusBetween = (a: PointId, b: PointId): number | undefined => {
    const [i, j] = [this.#settledIndex(a), this.#settledIndex(b)];
    if (i === undefined || j === undefined) return undefined;
    return this.#sensitivity.plusMinusBetween(i, j);
  };

  /** Index of a point whose place is settled: planted, or held whatever disagrees with it. */
  #settledIndex(id: PointId): number | undefined {
    const point = this.index.ground.indexOf.get(id);
    if (point === undefined) return undefined;
    return this.places.get(id)?.state === 'planted' || this.index.ground.heldBy.has(point) ? point : undefined;
  }
}

function constructionOrder(index: PlacementIndex): readonly ConstructionStep[] {
  const { ground, result } = index;
  return result.steps.flatMap(({ kind, points, rules }) => {
    const ids = points.flatMap((point) => ground.pointIds[point] ?? []);
    // Places of the case are given, but nobody strikes them.
    if (ids.length === 0) return [];
    const holding = points.flatMap((point) => ground.heldBy.get(point)?.rule ?? []);
    const own = rules.flatMap((rule) => index.ruleIdOf(rule) ?? []);
    return { kind, points: ids, rules: [...new Set([...holding, ...own])] };
  });
}
