/**
 * Dragging a loose point: the solver keeps all rules, the place follows the pointer, and near a rule that it could
 * keep it settles on it. Until the pointer is released nothing is in the movement.
 */
import { applyEdit, type Edit, type PointId } from '../../solver/movement/index.ts';
import { type DragSession, type PlacedMovement, plantMovement, startDrag } from '../../solver/planting/index.ts';
import { type Point, toWorld, type View } from '../bench/view.ts';
import type { Bench, Preview } from '../state/bench.svelte.ts';
import type { Gesture, Press } from './pointerHub.ts';
import { withIds } from './ruleIds.ts';
import { chooseSnap, type Snap } from './snap.ts';
import { snapCandidates } from './snapCandidates.ts';
import { snapFigures, snapLabels } from './snapGuides.ts';

/** How near a locus must be to be taken, CSS pixels. */
export const SNAP_REACH_PX = 9;

/** Sketch places of what a drag moved. */
type MovedSketch = ReturnType<DragSession['release']>;

export interface Settling {
  readonly preview: Preview;
  readonly edits: readonly Edit[];
  readonly kept: readonly string[];
}

/**
 * What a dragged point would come to: the planting with the rules it snaps to, or without any.
 *
 * @param start   the planting before the drag
 * @param dragged the planting with the point dragged, all rules kept
 * @param moved   sketch places of all that moved with it
 */
export function settle(
  bench: Pick<Bench, 'nameOf' | 'lengthSays'>,
  start: PlacedMovement,
  dragged: PlacedMovement,
  moved: MovedSketch,
  point: PointId,
  target: Point,
  view: View,
  free: boolean,
): Settling {
  const place = dragged.places.get(point);
  const without: Settling = {
    preview: { placed: dragged, figures: new Map(), lettered: () => [], says: '' },
    edits: moved ? [moved] : [],
    kept: [],
  };
  const freedom = start.places.get(point)?.free.length ?? 0;
  if (free || !place || freedom === 0) return without;
  const near = freedom > 1 ? target : place;
  const reach = SNAP_REACH_PX / view.scale;
  const question = { placed: dragged, point, target: near, reach, nameOf: bench.nameOf, lengthSays: bench.lengthSays };
  const snap = chooseSnap(snapCandidates(question), near, reach, freedom);
  return (snap && withSnap(start, dragged, point, snap, moved)) ?? without;
}

/** Plants the movement with the rules of a snap; none when the rules would then disagree. */
function withSnap(
  start: PlacedMovement,
  dragged: PlacedMovement,
  point: PointId,
  snap: Snap,
  moved: MovedSketch,
): Settling | undefined {
  const rules = withIds(
    snap.candidates.map(({ keeps }) => keeps),
    start.movement,
  );
  const others = moved?.places.filter(({ id }) => id !== point) ?? [];
  const edits: Edit[] = [
    { kind: 'move', places: [...others, { id: point, at: [snap.at.x, snap.at.y] }] },
    ...rules.map((item): Edit => ({ kind: 'add', to: 'rules', item })),
  ];
  const outcome = applyEdit(start.movement, { kind: 'several', edits });
  if (outcome.kind === 'refused') return undefined;
  const placed = plantMovement(outcome.movement, dragged);
  const at = placed.places.get(point);
  if (!at || at.state === 'contested' || placed.disagreements.length > start.disagreements.length) return undefined;
  const kept = snap.candidates.map(({ says }) => says);
  return {
    preview: { placed, figures: snapFigures(snap), lettered: snapLabels(snap, at), says: kept.join('; ') },
    edits,
    kept,
  };
}

/** The gesture that drags one point. */
export function dragPoint(bench: Bench, point: PointId, start: Press): Gesture {
  const before = bench.settled;
  const from = before.places.get(point);
  const grabbed = toWorld(bench.view, start.pixel);
  // The place keeps its distance from the pointer, so that nothing jumps when it is picked up off its centre.
  const offset = from ? { x: from.x - grabbed.x, y: from.y - grabbed.y } : { x: 0, y: 0 };
  const session = startDrag(before, point);
  let settling: Settling | undefined;
  return {
    move(press) {
      const pointer = toWorld(bench.view, press.pixel);
      const target = { x: pointer.x + offset.x, y: pointer.y + offset.y };
      const dragged = session.to(target.x, target.y);
      settling = settle(bench, before, dragged, session.release(), point, target, bench.view, press.free);
      bench.preview = settling.preview;
    },
    finish() {
      bench.preview = undefined;
      if (!settling || settling.edits.length === 0) return;
      const name = bench.nameOf(point);
      const says = settling.kept.length > 0 ? `${name}: ${settling.kept.join(', ')}` : `move ${name}`;
      bench.change(says, settling.edits, { chosen: [point] });
    },
    abandon() {
      bench.preview = undefined;
    },
  };
}
