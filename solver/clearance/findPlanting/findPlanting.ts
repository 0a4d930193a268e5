/**
 * Find a planting: places for all that is still loose, inside the case, so that every rule holds and the smallest gap
 * is as large as possible.
 *
 * Tries are sketches: loose points are sketched anywhere in the case, recorded crossings turned over or not, and
 * planted, so that every rule holds in every try. The best are then improved by small changes of the sketch, with
 * steps that grow when they succeed and shrink when they do not (a (1+1) evolution strategy: I. Rechenberg's rule of
 * success). The poorer half is dropped twice on the way. The same seed gives the same answers.
 */

import type { PointId } from '../../movement/ids.ts';
import type { Edit } from '../../movement/index.ts';
import { applyEdit } from '../../movement/index.ts';
import type { Movement } from '../../movement/schema.ts';
import type { Disagreement } from '../../planting/index.ts';
import { plantMovement } from '../../planting/index.ts';
import type { PlacedMovement } from '../../planting/placed.ts';
import { runSteps, type Steps } from '../../steps.ts';
import { checkMovement } from '../checks/checkMovement.ts';
import { editOf, measuredAgain, type PlantingTry, plantTry, type Sketch, sketchOf } from './plantingTry.ts';
import { groundOf, type RoomMeasure, roomMeasureOf } from './roomOf.ts';
import { seededChance } from './seededChance.ts';

/** How a planting is looked for. */
export interface FindPlantingOptions {
  /** Seed of the search; 1 when absent. */
  readonly seed?: number;
  /** Points that stay where they are. */
  readonly hold?: readonly PointId[];
  /** Answers wanted, at most; 4 when absent. */
  readonly answers?: number;
  /** Share of the usual number of tries; 1 when absent. */
  readonly effort?: number;
}

/** How far the search is. */
export interface FindPlantingProgress {
  /** Tries made of all, 0 … 1. */
  readonly done: number;
  /** Smallest surplus so far, mm: what the tightest pair has beyond what it owes; negative: too near. */
  readonly best: number;
}

/** One planting that was found. */
export interface PlantingAnswer {
  readonly placed: PlacedMovement;
  /** The change as one edit of the movement that was given. */
  readonly edit: Edit;
  /** What the tightest pair that the search can move has beyond what it owes with shake, mm; ≥ 0 where all limits are met. */
  readonly surplus: number;
  /** Findings about gaps that are left; none where all limits are met. */
  readonly gapsLeft: number;
}

/** Why no planting was found. */
export type NoPlanting =
  | { readonly kind: 'nothingLoose' | 'allHeld' }
  | { readonly kind: 'disagree'; readonly disagreement: Disagreement }
  | { readonly kind: 'nonePlanted'; readonly tries: number };

/** Plantings that were found, or why there are none. */
export type FoundPlantings =
  | {
      readonly kind: 'found';
      readonly answers: readonly PlantingAnswer[];
      readonly tries: number;
    }
  | { readonly kind: 'none'; readonly why: NoPlanting };

/** Tries anywhere, sketches kept after them, and tries of each kept sketch in three rounds. */
const ANYWHERE = 240;
const KEPT = [8, 4, 4] as const;
const TRIES = [50, 120, 160] as const;
/** First step, the smallest and the largest, mm. */
const FIRST_STEP = 8;
const SMALLEST_STEP = 0.02;
/** Growth and shrinking of the step: balanced where one try in five succeeds. */
const GROW = 1.5;
const SHRINK = 0.9;
/** Answers in which no distance between two parts differs by more are the same answer, mm. */
const SAME_ANSWER = 4;
/** Tries between two tellings of progress. */
const TOLD_EVERY = 10;

/** Searches, telling its progress; stop it by asking for no more. */
export function* findPlantingSteps(
  placed: PlacedMovement,
  options: FindPlantingOptions = {},
): Steps<FindPlantingProgress, FoundPlantings> {
  const { answers = 4, effort = 1 } = options;
  const why = whyNot(placed);
  if (why) return { kind: 'none', why };
  const search = new Search(placed, options);
  if (search.loose.length === 0) return { kind: 'none', why: { kind: 'allHeld' } };
  const anywhere = Math.ceil(ANYWHERE * effort);
  const rounds = TRIES.map((tries) => Math.ceil(tries * effort));
  const total = anywhere + rounds.reduce((sum, tries, i) => sum + tries * (KEPT[i] ?? 0), 0);
  const told = (): FindPlantingProgress => search.progress(total);

  let kept: PlantingTry[] = [search.start()];
  for (let n = 0; n < anywhere; n++) {
    kept.push(search.anywhere());
    if (n % TOLD_EVERY === 0) yield told();
  }
  kept = search.narrowed(kept);
  for (const [round, tries] of rounds.entries()) {
    kept = distinct(kept, KEPT[round] ?? answers);
    for (const [i, from] of kept.entries()) {
      const climb = search.climb(from, round);
      for (let n = 0; n < tries; n++) {
        kept[i] = climb();
        if (n % TOLD_EVERY === 0) yield told();
      }
    }
  }
  const found = distinct(kept, answers).flatMap((each) => answerOf(placed.movement, each) ?? []);
  if (found.length === 0) return { kind: 'none', why: { kind: 'nonePlanted', tries: search.tries } };
  return { kind: 'found', answers: found, tries: search.tries };
}

/** The same in one go. */
export function findPlanting(placed: PlacedMovement, options: FindPlantingOptions = {}): FoundPlantings {
  return runSteps(findPlantingSteps(placed, options));
}

function whyNot(placed: PlacedMovement): NoPlanting | undefined {
  const [disagreement] = placed.disagreements;
  if (disagreement) return { kind: 'disagree', disagreement };
  return placed.freeMotions > 0 ? undefined : { kind: 'nothingLoose' };
}

/** One search with all that it keeps between its tries. */
class Search {
  tries = 0;
  readonly loose: readonly PointId[];
  private best = Number.NEGATIVE_INFINITY;
  private readonly movement: Movement;
  private readonly measure: RoomMeasure;
  private readonly chance: () => number;
  private readonly ground: ReturnType<typeof groundOf>;
  private readonly crossings: readonly PointId[];
  private readonly startSketch: Sketch;

  constructor(placed: PlacedMovement, { seed = 1, hold = [] }: FindPlantingOptions) {
    this.movement = holding(placed, hold);
    const held = plantMovement(this.movement);
    this.loose = [...held.places.values()].filter(({ state }) => state === 'loose').map(({ id }) => id);
    this.measure = roomMeasureOf(held);
    this.chance = seededChance(seed);
    this.ground = groundOf(held);
    this.startSketch = sketchOf(held);
    const { arbors, posts, marks } = this.movement;
    this.crossings = [...arbors, ...posts, ...marks].filter(({ crossing }) => crossing).map(({ id }) => id);
  }

  start(): PlantingTry {
    return this.tried(this.startSketch, new Set());
  }

  /** Every loose point somewhere in the case. */
  anywhere(): PlantingTry {
    const sketch = new Map(this.startSketch);
    for (const id of this.loose) {
      const radius = this.ground.reach * Math.sqrt(this.chance());
      const angle = 2 * Math.PI * this.chance();
      const { x, y } = this.ground.middle;
      sketch.set(id, [x + radius * Math.cos(angle), y + radius * Math.sin(angle)]);
    }
    return this.tried(sketch, new Set(this.crossings.filter(() => this.chance() < 0.5)));
  }

  /** Gaps that no try has changed would hide all others; they are left out from here on. */
  narrowed(tries: readonly PlantingTry[]): PlantingTry[] {
    this.measure.narrow();
    const again = tries.map((each) => measuredAgain(each, this.measure));
    this.best = Math.max(...again.map(({ room }) => room.surplus));
    return again;
  }

  /** Goes on from a try: each call changes the sketch a little and keeps what is better. */
  climb(from: PlantingTry, round: number): () => PlantingTry {
    let best = from;
    let step = FIRST_STEP / 2 ** (2 * round);
    return () => {
      const next = this.near(best, step);
      if (next.score > best.score) {
        best = next;
        step = Math.min(step * GROW, this.ground.reach / 2);
      } else step = Math.max(step * SHRINK, SMALLEST_STEP);
      return best;
    };
  }

  /** One loose point, now and then all of them, moved by about a step. */
  private near({ placed }: PlantingTry, step: number): PlantingTry {
    const sketch = new Map(sketchOf(placed));
    const one = this.loose[Math.floor(this.chance() * this.loose.length)];
    const moved = this.chance() < 0.3 ? this.loose : this.loose.filter((id) => id === one);
    for (const id of moved) {
      const [x, y] = sketch.get(id) ?? [0, 0];
      sketch.set(id, [x + step * this.spread(), y + step * this.spread()]);
    }
    return this.tried(sketch, this.turnedOverIn(placed.movement));
  }

  /** About normally distributed: three even chances, of unit variance. */
  private spread(): number {
    return 2 * (this.chance() + this.chance() + this.chance() - 1.5);
  }

  private turnedOverIn({ arbors, posts, marks }: Movement): ReadonlySet<PointId> {
    const now = new Map([...arbors, ...posts, ...marks].map(({ id, crossing }) => [id, crossing?.side]));
    const own = [...this.movement.arbors, ...this.movement.posts, ...this.movement.marks];
    return new Set(own.filter(({ id, crossing }) => crossing && crossing.side !== now.get(id)).map(({ id }) => id));
  }

  private tried(sketch: Sketch, turnedOver: ReadonlySet<PointId>): PlantingTry {
    this.tries++;
    const result = plantTry(this.movement, sketch, turnedOver, this.measure);
    this.best = Math.max(this.best, result.room.surplus);
    return result;
  }

  progress(total: number): FindPlantingProgress {
    const { best, tries } = this;
    return { done: Math.min(1, tries / total), best };
  }
}

/** The movement with points held where they are. */
function holding({ movement, places }: PlacedMovement, hold: readonly PointId[]): Movement {
  const rules = hold.flatMap((point, n): Movement['rules'][number][] => {
    const place = places.get(point);
    if (place?.state !== 'loose') return [];
    const id = `held-still-${n}` as Movement['rules'][number]['id']; // only inside the search; no file has it
    return [{ kind: 'held', id, point, at: [place.x, place.y], leaveOut: false }];
  });
  return rules.length === 0 ? movement : { ...movement, rules: [...movement.rules, ...rules] };
}

/** The best tries, no two of them alike. */
function distinct(tries: readonly PlantingTry[], most: number): PlantingTry[] {
  const kept: PlantingTry[] = [];
  for (const each of [...tries].sort((a, b) => b.score - a.score)) {
    if (kept.length >= most) break;
    if (kept.every((other) => difference(each.placed, other.placed) > SAME_ANSWER)) kept.push(each);
  }
  return kept;
}

/**
 * The greatest difference of any distance between two points: a planting turned or mirrored as a whole is not another.
 * Marks have no body and do not count.
 */
function difference(a: PlacedMovement, b: PlacedMovement): number {
  const ids: readonly PointId[] = [...a.movement.arbors, ...a.movement.posts].map(({ id }) => id);
  const apart = ({ places }: PlacedMovement, i: PointId, j: PointId): number => {
    const [from, to] = [places.get(i), places.get(j)];
    return from && to ? Math.hypot(to.x - from.x, to.y - from.y) : 0;
  };
  let most = 0;
  ids.forEach((i, n) => {
    for (const j of ids.slice(n + 1)) most = Math.max(most, Math.abs(apart(a, i, j) - apart(b, i, j)));
  });
  return most;
}

/** A try as an answer, planted and checked once more as the maker would get it. */
function answerOf(movement: Movement, { placed, room }: PlantingTry): PlantingAnswer | undefined {
  const edit = editOf(movement, placed);
  const edited = applyEdit(movement, edit);
  if (edited.kind === 'refused') return undefined;
  const planted = plantMovement(edited.movement);
  if (planted.disagreements.length > 0) return undefined;
  const gapsLeft = checkMovement(planted).filter(({ kind }) => kind === 'fouls' || kind === 'tooClose').length;
  return { placed: planted, edit, surplus: room.surplus, gapsLeft };
}
