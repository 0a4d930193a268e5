/**
 * What a dragged point would come to: its nearest place that keeps all rules, or the place where it would keep a rule
 * or two more. Used by dragging and by setting down; nothing here is in the movement.
 *
 * As long as the same rules are snapped to, they are planted once and followed; so a step of a drag costs no more
 * with a snap than without.
 */

import type { Point } from '../../solver/geometry/index.ts';
import type { PointId } from '../../solver/movement/ids.ts';
import type { Edit } from '../../solver/movement/index.ts';
import type { Rule } from '../../solver/movement/schema.ts';
import { type DragSession, startDrag } from '../../solver/planting/index.ts';
import type { PlacedMovement } from '../../solver/planting/placed.ts';
import type { Guide, Preview } from '../state/preview.ts';
import type { Words } from './port.ts';
import { withIds } from './ruleIds.ts';
import { chooseSnap, type Snap, type SnapCandidate } from './snap.ts';
import { movesWith, snapCandidates } from './snapCandidates.ts';

/** How near a locus must be to be taken, CSS pixels. */
export const SNAP_REACH_PX = 9;

/** What a drag shows now and would keep. */
export interface SettlingDrag {
  readonly preview: Preview;
  /** What makes it so, in the movement that the drag began with. */
  readonly edits: () => readonly Edit[];
  /** What the rules say that would be kept. */
  readonly kept: readonly string[];
}

/** The rules that are snapped to, planted. */
interface Snapped {
  readonly key: string;
  readonly session: DragSession;
  readonly edits: readonly Edit[];
}

/** Follows one dragged point, trying rules that it comes near. */
export class Settler {
  private readonly words: Words;
  private readonly start: PlacedMovement;
  private readonly point: PointId;
  private readonly session: DragSession;
  /** How many rules the point can still take. */
  private readonly freedom: number;
  private readonly moving: ReadonlySet<PointId>;
  private snapped: Snapped | undefined;
  /** Keys of rules that would disagree, so that they are planted in vain only once. */
  private readonly refused = new Set<string>();

  /** @param start the planting that the drag begins with */
  constructor(words: Words, start: PlacedMovement, point: PointId) {
    this.words = words;
    this.start = start;
    this.point = point;
    this.session = startDrag(start, point);
    this.moving = movesWith(start, point);
    this.freedom = start.places.get(point)?.free.length ?? 0;
  }

  /** Asks once where it stands, and plants nothing: what a drag asks again and again is then known. */
  prepare(scale: number): void {
    const place = this.start.places.get(this.point);
    if (place && this.freedom > 0) this.snapNear(this.start, place, place, scale);
  }

  /**
   * @param target where the pointer asks the point to be, mm
   * @param scale  CSS pixels for a millimetre
   * @param free   snapping is suspended
   */
  at(target: Point, scale: number, free: boolean): SettlingDrag {
    const dragged = this.session.to(target.x, target.y);
    const place = dragged.places.get(this.point);
    const snap = !free && place && this.freedom > 0 ? this.snapNear(dragged, place, target, scale) : undefined;
    const snapped = snap && this.snappedTo(snap);
    if (!snap || !snapped) {
      this.snapped = undefined;
      return {
        preview: { placed: dragged, guides: [], says: '' },
        edits: () => movesOf(this.session),
        kept: [],
      };
    }
    const placed = snapped.session.to(snap.at.x, snap.at.y);
    const at = placed.places.get(this.point) ?? snap.at;
    const kept = snap.candidates.map(({ says }) => says);
    return {
      preview: { placed, guides: guidesOf(snap, at), says: kept.join('; ') },
      edits: () => [...snapped.edits, ...movesOf(snapped.session)],
      kept,
    };
  }

  private snapNear(dragged: PlacedMovement, place: Point, target: Point, scale: number): Snap | undefined {
    // With one freedom left the place cannot follow the pointer: rules are looked for where it is.
    const near = this.freedom > 1 ? target : place;
    const reach = SNAP_REACH_PX / scale;
    const { nameOf, lengthSays } = this.words;
    const question = {
      placed: dragged,
      point: this.point,
      moving: this.moving,
      target: near,
      reach,
      nameOf,
      lengthSays,
    };
    const candidates = snapCandidates(question).filter(({ key }) => !this.refused.has(key));
    return chooseSnap(candidates, near, reach, this.freedom);
  }

  /** The movement with the rules of a snap, planted; undefined when they cannot be kept. */
  private snappedTo({ candidates, at }: Snap): Snapped | undefined {
    const key = keyOf(candidates);
    if (this.snapped?.key === key) return this.snapped;
    const rules = withIds(
      candidates.map(({ keeps }) => keeps),
      this.start.movement,
    );
    const placed = this.session.keeping(rules as unknown as readonly Rule[], at.x, at.y); // candidates keep whole rules
    const isContested = placed?.places.get(this.point)?.state === 'contested';
    if (!placed || isContested || placed.disagreements.length > this.start.disagreements.length) {
      this.refused.add(candidates.at(-1)?.key ?? key);
      return undefined;
    }
    const others = movesOf(this.session).flatMap((edit) => (edit.kind === 'move' ? edit.places : []));
    const edits: Edit[] = [
      { kind: 'move', places: [...others.filter(({ id }) => id !== this.point), { id: this.point, at: [at.x, at.y] }] },
      ...rules.map((item): Edit => ({ kind: 'add', to: 'rules', item })),
    ];
    this.snapped = { key, session: startDrag(placed, this.point), edits };
    return this.snapped;
  }
}

const keyOf = (candidates: readonly SnapCandidate[]): string => candidates.map(({ key }) => key).join('; ');

function movesOf(session: DragSession): readonly Edit[] {
  const moved = session.release();
  return moved ? [moved] : [];
}

/** What shows the rules that a place at `at` has settled on. */
function guidesOf({ candidates }: Snap, at: Point): Guide[] {
  return candidates.map(({ key, locus, says }) => ({ kind: 'rule', key: `snap ${key}`, locus, at, says }));
}
