/**
 * In what order arbors come out of the frame, the upper plate off and what stands in front of it taken away.
 *
 * An arbor is lifted straight up. It is held down by every other part that stands over some part of it: that one has
 * to be out first. Arbors that hold each other down come out together.
 */
import type { ArborId, PartId } from '../../movement/ids.ts';
import type { PlacedMovement } from '../../planting/placed.ts';
import { TOUCH } from '../../tolerances.ts';
import { spanBetweenPlates } from '../bodies/heights.ts';
import type { Finding } from '../findings/finding.ts';
import { meshingPairs, pairKey } from '../gaps/pairTerms.ts';
import { boundsOfSolid, planGapOf } from '../gaps/planGap.ts';
import { nearTreeOf } from '../planckAdapter.ts';
import type { Solid } from '../solids/solid.ts';
import { solidsOf } from '../solids/solids.ts';

/** An arbor with what lies over it. */
export interface HeldDown {
  readonly arbor: ArborId;
  /** What has to be out before it can be lifted: arbors, and parts of the frame that never leave. */
  readonly by: readonly ArborId[];
  readonly frame: readonly PartId[];
}

/** In what order the arbors leave the frame. */
export interface AssemblyOrder {
  /** Groups in the order in which they are lifted out; the arbors of a group come out together. Put in: the other way. */
  readonly groups: readonly (readonly ArborId[])[];
  readonly heldDown: readonly HeldDown[];
}

/** The order of taking out, and what holds what down. */
export function assemblyOrder(placed: PlacedMovement): AssemblyOrder {
  const { movement } = placed;
  const held = holdings(placed);
  const ids = movement.arbors.map(({ id }) => id);
  const groups = inOrder(ids, (id) => held.get(id)?.by ?? new Set());
  const heldDown = ids.flatMap((arbor): HeldDown[] => {
    const known = held.get(arbor);
    return known ? [{ arbor, by: [...known.by], frame: [...known.frame] }] : [];
  });
  return { groups, heldDown };
}

/** Arbors that a part of the frame holds down for good, as findings. */
export function checkAssembly(placed: PlacedMovement): readonly Finding[] {
  return [...holdings(placed)].flatMap(([arbor, { frame }]): Finding[] =>
    [...frame].map((part) => ({
      key: `assembly ${arbor} ${part}`,
      kind: 'assembly',
      severity: 'warns',
      parts: [arbor, part],
      cause: { kind: 'heldDown', arbor, by: part },
    })),
  );
}

/** What lies over a group of arbors. */
interface Holding {
  readonly by: Set<ArborId>;
  readonly frame: Set<PartId>;
}

function holdings(placed: PlacedMovement): ReadonlyMap<ArborId, Holding> {
  const top = spanBetweenPlates(placed.movement)?.to ?? Number.POSITIVE_INFINITY;
  const solids = solidsOf(placed).filter(({ role, heights }) => role !== 'plate' && heights.from < top);
  const meshes = meshingPairs(placed.movement);
  const boxes = solids.map(boundsOfSolid);
  const tree = nearTreeOf(boxes);
  const held = new Map<ArborId, Holding>();
  solids.forEach((lower, index) => {
    const box = boxes[index];
    const { arbor } = lower;
    if (!box || arbor === undefined) return;
    tree.near(box, 0, (other) => {
      const upper = solids[other];
      if (!upper || upper.arbor === arbor || !standsOver(upper, lower, meshes)) return;
      const known = held.get(arbor) ?? { by: new Set(), frame: new Set() };
      if (upper.arbor === undefined) known.frame.add(upper.part);
      else known.by.add(upper.arbor);
      held.set(arbor, known);
    });
  });
  return held;
}

function standsOver(upper: Solid, lower: Solid, meshes: ReadonlySet<string>): boolean {
  if (upper.heights.from < lower.heights.to - TOUCH || meshes.has(pairKey(upper.part, lower.part))) return false;
  const plan = planGapOf(upper, lower);
  return plan !== undefined && plan.gap < -TOUCH;
}

/** Takes out whatever nothing holds down; where everything is held, the smallest set that holds only itself. */
function inOrder(
  ids: readonly ArborId[],
  heldBy: (id: ArborId) => ReadonlySet<ArborId>,
): readonly (readonly ArborId[])[] {
  const groups: (readonly ArborId[])[] = [];
  const left = new Set(ids);
  while (left.size > 0) {
    let group: readonly ArborId[] | undefined;
    for (const id of left) {
      const together = allAbove(id, left, heldBy);
      if (!group || together.length < group.length) group = together;
      if (group.length === 1) break;
    }
    for (const id of group ?? []) left.delete(id);
    groups.push(group ?? []);
  }
  return groups;
}

/** An arbor and everything that has to come out with it, of those that are still in. */
function allAbove(id: ArborId, left: ReadonlySet<ArborId>, heldBy: (id: ArborId) => ReadonlySet<ArborId>): ArborId[] {
  const found = new Set([id]);
  for (const next of found) for (const above of heldBy(next)) if (left.has(above)) found.add(above);
  return [...found];
}
