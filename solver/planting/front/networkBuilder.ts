/** Collects points and rules and packs them into the flat arrays of a network. */
import type { Point } from '../../geometry/index.ts';
import type { PointId, RuleId } from '../../movement/ids.ts';
import type { Network, RuleKindCode } from '../network.ts';
import { RuleKind } from '../network.ts';
import type { HeldSource, RuleLength, RuleSource, UnusableRule } from './ground.ts';

/** Codes of `Network.sides`. */
const SIDES = { left: 1, right: 2, ahead: 3, behind: 4 } as const;
export type Side = keyof typeof SIDES;

/** Takes points and rules one by one, and gives the network. */
export class NetworkBuilder {
  readonly pointIds: (PointId | undefined)[] = [];
  readonly indexOf = new Map<PointId, number>();
  readonly sources: RuleSource[] = [];
  readonly networkRulesOf = new Map<RuleId, number[]>();
  readonly heldBy = new Map<number, HeldSource>();
  readonly lengths = new Map<RuleId, RuleLength>();
  readonly unusable: UnusableRule[] = [];
  readonly gapSides = new Map<number, 'inside' | 'outside'>();
  readonly #places: Point[] = [];
  readonly #sides: { readonly point: number; readonly side: Side; readonly from: number; readonly to: number }[] = [];
  readonly #kinds: RuleKindCode[] = [];
  readonly #points: number[] = [];
  readonly #values: number[] = [];
  readonly #plusMinus: number[] = [];
  readonly #ranks: number[] = [];
  readonly #casePlaces = new Map<string, number>();
  readonly #told: ReadonlySet<RuleId>;
  readonly #toldAlone = new Set<number>();

  /** @param told rules of the movement that are told to check */
  constructor(told: ReadonlySet<RuleId> = new Set()) {
    this.#told = told;
  }

  addPoint(id: PointId | undefined, at: Point): number {
    const index = this.pointIds.length;
    this.pointIds.push(id);
    this.#places.push(at);
    if (id !== undefined) this.indexOf.set(id, index);
    return index;
  }

  /** Tells one network rule to check, whatever the rule that it comes from is told. */
  tellToCheck(index: number): void {
    this.#toldAlone.add(index);
  }

  /** A network rule as it was added. */
  ruleAt(index: number): { kind: number; points: readonly number[]; value: number; plusMinus: number } {
    return {
      kind: this.#kinds[index] ?? -1,
      points: this.#points.slice(4 * index, 4 * index + 4).filter((point) => point >= 0),
      value: this.#values[3 * index] ?? 0,
      plusMinus: this.#plusMinus[index] ?? 0,
    };
  }

  /** A place of the case, shared by all rules that name it. */
  casePoint(at: Point): number {
    const key = `${at.x},${at.y}`;
    const known = this.#casePlaces.get(key);
    if (known !== undefined) return known;
    const index = this.addPoint(undefined, at);
    this.#casePlaces.set(key, index);
    this.heldBy.set(index, { by: 'case', plusMinus: 0 });
    return index;
  }

  sketchOf(index: number): Point {
    return this.#places[index] ?? { x: 0, y: 0 };
  }

  /** Fixes a point. */
  hold(index: number, at: Point, held: HeldSource): void {
    this.#places[index] = at;
    this.heldBy.set(index, held);
    if (held.rule !== undefined) this.#own(held.rule);
  }

  /** Asks a place of a point that is fixed otherwise, so that a difference is told. */
  askPlace(index: number, { x, y }: Point, plusMinus: number, source: RuleSource): void {
    this.rule(source, RuleKind.onLine, [index], [1, 0, x], plusMinus);
    this.rule(source, RuleKind.onLine, [index], [0, 1, y], plusMinus);
  }

  /** One sketch place, and one recorded crossing, for points that are merged: then their order cannot matter. */
  shareSketch(from: number, members: readonly number[]): void {
    const at = this.sketchOf(from);
    const side =
      this.#sides.find(({ point }) => point === from) ?? this.#sides.find(({ point }) => members.includes(point));
    for (const member of members) {
      if (!this.heldBy.has(member)) this.#places[member] = at;
      if (side && member !== side.point) this.#sides.push({ ...side, point: member });
    }
  }

  recordSide(point: number, side: Side, from: number, to: number): void {
    this.#sides.push({ point, side, from, to });
  }

  rule(
    source: RuleSource,
    kind: RuleKindCode,
    points: readonly number[],
    values: readonly number[],
    plusMinus = 0,
    rank: 0 | 1 = 0,
  ): number {
    const index = this.#kinds.length;
    this.#kinds.push(kind);
    for (let k = 0; k < 4; k++) this.#points.push(points[k] ?? -1);
    for (let k = 0; k < 3; k++) this.#values.push(values[k] ?? 0);
    this.#plusMinus.push(plusMinus);
    this.#ranks.push(rank);
    this.sources.push(source);
    if (source.kind === 'rule') this.#own(source.rule).push(index);
    return index;
  }

  get plusMinus(): Float64Array {
    return Float64Array.from(this.#plusMinus);
  }

  network(): Network {
    const pointCount = this.pointIds.length;
    const coords = new Float64Array(2 * pointCount);
    const held = new Uint8Array(pointCount);
    const sides = new Uint8Array(pointCount);
    const sideFrom = new Int32Array(pointCount).fill(-1);
    const sideTo = new Int32Array(pointCount).fill(-1);
    this.#places.forEach(({ x, y }, index) => {
      coords[2 * index] = x;
      coords[2 * index + 1] = y;
    });
    for (const index of this.heldBy.keys()) held[index] = 1;
    for (const { point, side, from, to } of this.#sides) {
      sides[point] = SIDES[side];
      sideFrom[point] = from;
      sideTo[point] = to;
    }
    return {
      pointCount,
      ruleCount: this.#kinds.length,
      coords,
      held,
      kinds: Uint8Array.from(this.#kinds),
      points: Int32Array.from(this.#points),
      values: Float64Array.from(this.#values),
      sides,
      sideFrom,
      sideTo,
      rank: Uint8Array.from(this.#ranks),
      ...(this.#told.size + this.#toldAlone.size > 0 && { told: this.#toldRules() }),
    };
  }

  #toldRules(): Uint8Array {
    return Uint8Array.from(this.sources, (source, r) =>
      this.#toldAlone.has(r) || (source.kind === 'rule' && this.#told.has(source.rule)) ? 1 : 0,
    );
  }

  #own(rule: RuleId): number[] {
    const known = this.networkRulesOf.get(rule);
    if (known) return known;
    const fresh: number[] = [];
    this.networkRulesOf.set(rule, fresh);
    return fresh;
  }
}
