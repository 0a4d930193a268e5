/**
 * Several chosen points moved together: every loose one is asked to go the same way, and all rules are kept.
 *
 * Each step plants the movement from sketch places that went along: the loose ones by the whole way, everything that
 * hangs on them from where it stood a step before, so that no crossing jumps to its other side. What is planted by
 * rules of its own stays. The last step's places are the edit, so that what was seen is what is kept.
 */

import type { PartId, PointId } from '../../solver/movement/ids.ts';
import { applyEdit, type Edit } from '../../solver/movement/index.ts';
import { plantMovement } from '../../solver/planting/index.ts';
import type { Place, PlacedMovement } from '../../solver/planting/placed.ts';
import { HOLDS } from '../../solver/tolerances.ts';
import { pointOf } from '../state/derive/parts.ts';
import { movesWith } from './snapCandidates.ts';

/** Near enough to where a hand asks for it, mm; it is followed again at the next move. */
const NEAR = 0.002;
/** A turn that leaves more than this part of the way is the last. */
const SLOW = 0.9;
/** Turns of one step at most; fewer in large movements, where a planting takes longer. */
const MOST_TURNS = 20;
const MANY = 300;

/** The different points that chosen parts stand for. */
export function pointsOfChosen(placed: PlacedMovement, chosen: readonly PartId[]): PointId[] {
  return [...new Set(chosen.flatMap((part) => pointOf(placed, part) ?? []))];
}

/** One drag of several points, from the press to the release. */
export class SeveralDrag {
  /** How many of the points can move, and how many are planted or contested and stay. */
  readonly loose: readonly Place[];
  readonly staying: number;
  private readonly start: PlacedMovement;
  private readonly along: readonly PointId[];
  private last: PlacedMovement;

  constructor(start: PlacedMovement, points: readonly PointId[]) {
    const places = points.flatMap((id) => start.places.get(id) ?? []);
    this.start = start;
    this.last = start;
    this.loose = places.filter(({ state }) => state === 'loose');
    this.staying = places.length - this.loose.length;
    const own = new Set(this.loose.map(({ id }) => id));
    const along = new Set(this.loose.flatMap(({ id }) => [...movesWith(start, id)]));
    // What hangs on them, and loose neighbours that give way.
    for (const { id, state } of start.places.values()) if (state === 'loose') along.add(id);
    this.along = [...along].filter((id) => !own.has(id));
  }

  /**
   * The planting with the loose ones as near as their rules let them to where they would be after (dx, dy), mm.
   *
   * A planting shares a correction among all that is loose; asked again from there, those that are not chosen give way
   * until the chosen ones stand where they were asked to, or come no nearer.
   */
  by(dx: number, dy: number): PlacedMovement {
    const wanted = this.loose.map(({ id, x, y }) => ({ id, at: [x + dx, y + dy] as const }));
    let before = Number.POSITIVE_INFINITY;
    const most = this.start.places.size > MANY ? 2 : MOST_TURNS;
    for (let turn = 0; turn < most; turn++) {
      const stood = this.along.flatMap((id) => this.last.places.get(id) ?? []);
      const places = [...wanted, ...stood.map(({ id, x, y }) => ({ id, at: [x, y] as const }))];
      const outcome = applyEdit(this.start.movement, { kind: 'move', places });
      if (outcome.kind !== 'edited') break;
      this.last = plantMovement(outcome.movement, this.last);
      const off = Math.max(...wanted.map(({ id, at }) => this.awayFrom(id, at)));
      if (off < NEAR || off > before * SLOW) break;
      before = off;
    }
    return this.last;
  }

  private awayFrom(id: PointId, [x, y]: readonly [number, number]): number {
    const place = this.last.places.get(id);
    return place ? Math.hypot(place.x - x, place.y - y) : 0;
  }

  /** What makes the last step's places those of the movement; nothing where nothing moved. */
  edits(): readonly Edit[] {
    const { start, last } = this;
    const hasMoved = ({ id, x, y }: Place): boolean => {
      const was = start.places.get(id);
      return was !== undefined && Math.hypot(was.x - x, was.y - y) > HOLDS;
    };
    if (![...last.places.values()].some(hasMoved)) return [];
    // All that is loose goes along: a group is planted from its sketch as a whole.
    const places = [...last.places.values()].filter((place) => place.state === 'loose' || hasMoved(place));
    return [{ kind: 'move', places: places.map(({ id, x, y }) => ({ id, at: [x, y] as const })) }];
  }
}
