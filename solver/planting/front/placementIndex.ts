/** Indexes over a planted network, each made when it is first asked for. */
import type { RuleId } from '../../movement/ids.ts';
import type { NetworkResult } from '../network.ts';
import type { PlantingGround } from './ground.ts';

/** A planted network with answers about it. */
export class PlacementIndex {
  readonly ground: PlantingGround;
  readonly result: NetworkResult;
  #stepOf: Int32Array | undefined;
  #touching: readonly (readonly number[])[] | undefined;
  #doubts: ReadonlyMap<number, 'touching' | 'barely'> | undefined;
  #spare: ReadonlySet<number> | undefined;
  #depthIds: ReadonlySet<RuleId> | undefined;
  #hangers: readonly (readonly number[])[] | undefined;

  constructor(ground: PlantingGround, result: NetworkResult) {
    this.ground = ground;
    this.result = result;
  }

  /** Index of the step that places each point; -1 where none does. */
  get stepOf(): Int32Array {
    if (this.#stepOf) return this.#stepOf;
    const stepOf = new Int32Array(this.ground.network.pointCount).fill(-1);
    this.result.steps.forEach((step, index) => {
      for (const point of step.points) stepOf[point] = index;
    });
    this.#stepOf = stepOf;
    return stepOf;
  }

  /** What is to be told of a planted point: its loci only touch, or it is barely settled. */
  doubtOf(point: number): 'touching' | 'barely' | undefined {
    this.#doubts ??= new Map(this.result.doubts.flatMap(({ kind, points }) => points.map((each) => [each, kind])));
    return this.#doubts.get(point);
  }

  isSpare(rule: number): boolean {
    this.#spare ??= new Set(this.result.spare);
    return this.#spare.has(rule);
  }

  /** Points that a network rule names. */
  pointsOfRule(rule: number): number[] {
    const { points } = this.ground.network;
    return [...points.subarray(4 * rule, 4 * rule + 4)].filter((point) => point >= 0);
  }

  /** Network rules that place a point: all of its step, in a coupled group those that name the point. */
  rulesPlacing(point: number): readonly number[] {
    const step = this.result.steps[this.stepOf[point] ?? -1];
    if (!step || step.kind === 'given') return [];
    if (step.points.length === 1) return step.rules.filter((rule) => !this.isSpare(rule));
    this.#touching ??= this.#listTouching();
    return this.#touching[point] ?? [];
  }

  /** Points placed directly from each point. */
  hangersOf(point: number): readonly number[] {
    this.#hangers ??= this.#listHangers();
    return this.#hangers[point] ?? [];
  }

  /** The movement's rule behind a network rule; undefined for what the document implies. */
  ruleIdOf(rule: number): RuleId | undefined {
    const source = this.ground.sources[rule];
    return source?.kind === 'rule' ? source.rule : undefined;
  }

  /** Does a network rule come from a depth? */
  isDepth(rule: number): boolean {
    const id = this.ruleIdOf(rule);
    return id !== undefined && this.#depths.has(id);
  }

  get #depths(): ReadonlySet<RuleId> {
    this.#depthIds ??= new Set(this.ground.movement.rules.flatMap(({ id, kind }) => (kind === 'depth' ? [id] : [])));
    return this.#depthIds;
  }

  #listTouching(): number[][] {
    const touching = Array.from({ length: this.ground.network.pointCount }, (): number[] => []);
    for (const step of this.result.steps) {
      if (step.points.length < 2) continue;
      const members = new Set(step.points);
      for (const rule of step.rules) {
        if (this.isSpare(rule)) continue;
        for (const point of this.pointsOfRule(rule)) if (members.has(point)) touching[point]?.push(rule);
      }
    }
    return touching;
  }

  #listHangers(): number[][] {
    const hangers = Array.from({ length: this.ground.network.pointCount }, (): Set<number> => new Set());
    this.result.steps.forEach((step, number) => {
      for (const rule of step.rules) {
        for (const from of this.pointsOfRule(rule)) {
          // A merged place lists all of its rules: only what was there before bears the point.
          if ((this.stepOf[from] ?? -1) >= number) continue;
          for (const point of step.points) hangers[from]?.add(point);
        }
      }
    });
    return hangers.map((set) => [...set]);
  }
}
