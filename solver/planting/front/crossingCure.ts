/** The other crossing as the first cure: tried on a copy of the movement, offered only where all that failed then holds. */
import type { Point } from '../../geometry/index.ts';
import type { PointId } from '../../movement/ids.ts';
import { applyEdit, type Edit } from '../../movement/index.ts';
import type { Disagreement } from '../disagreement.ts';
import { otherPlacing } from '../kernel/otherPlacing.ts';
import type { NetworkResult } from '../network.ts';
import type { PlacedMovement } from '../placed.ts';
import { failingRules } from './failing.ts';
import { tellApart } from './otherCrossing.ts';
import { type Moves, movesTo } from './placeInstead.ts';
import { PlacementIndex } from './placementIndex.ts';
import { PlantedMovement } from './planted.ts';
import { plantMovement } from './plantMovement.ts';

/** Points at their other crossings, with which a disagreement is gone and nothing new fails. */
export interface CrossingCure {
  /** The points that are turned over, with where they stand now and then. */
  readonly points: readonly { readonly id: PointId; readonly from: Point; readonly to: Point }[];
  readonly edit: Edit;
  readonly moves: Moves;
  /** The movement planted so, for its picture. */
  readonly planted: PlacedMovement;
}

/**
 * Other crossings with which the rules of a disagreement hold.
 *
 * @returns undefined where none was found among those tried (the nearest ones), or where something else would then fail
 */
export function crossingCure(placed: PlacedMovement, disagreement: Disagreement): CrossingCure | undefined {
  if (!(placed instanceof PlantedMovement)) return undefined;
  const { cause } = disagreement;
  if (cause.kind === 'notKept') return undefined;
  const { ground, result } = placed.index;
  const own = new Set<string>(disagreement.rules);
  const others = new Set(failingRules(placed.index).filter((r) => !own.has(placed.index.ruleIdOf(r) ?? '')));
  const failingIn = (tried: NetworkResult): number[] =>
    failingRules(new PlacementIndex(ground, tried)).filter((r) => !others.has(r));
  const found = otherPlacing(ground.network, result, failingIn);
  if (!found || found.turned.length === 0) return undefined;
  const points = found.turned.flatMap(([index, x, y]) => {
    const id = ground.pointIds[index];
    return id === undefined ? [] : [{ id, from: placeAt(result, index), to: { x, y } }];
  });
  if (points.length < found.turned.length) return undefined;
  return triedOnACopy(placed, points, disagreement);
}

const placeAt = ({ coords }: NetworkResult, i: number): Point => ({ x: coords[2 * i] ?? 0, y: coords[2 * i + 1] ?? 0 });

function triedOnACopy(
  placed: PlantedMovement,
  points: CrossingCure['points'],
  disagreement: Disagreement,
): CrossingCure | undefined {
  const edit: Edit = { kind: 'several', edits: points.flatMap((turn) => editsFor(placed, turn)) };
  const edited = applyEdit(placed.movement, edit);
  if (edited.kind === 'refused') return undefined;
  const planted = plantMovement(edited.movement);
  const isGone = disagreement.rules.every((id) => planted.rules.get(id)?.role !== 'disagrees');
  const failed = new Set(
    placed.movement.rules.filter(({ id }) => placed.rules.get(id)?.role === 'disagrees').map(({ id }) => id),
  );
  const isWorse = [...planted.rules.values()].some(({ id, role }) => role === 'disagrees' && !failed.has(id));
  if (!isGone || isWorse || planted.freeMotions > placed.freeMotions) return undefined;
  return { points, edit, moves: movesTo(placed, planted), planted };
}

/** The new sketch place, and the side where two points tell it: a recorded one would choose otherwise. */
function editsFor({ index, movement }: PlantedMovement, { id, from, to }: CrossingCure['points'][number]): Edit[] {
  const { ground, result, stepOf } = index;
  const point = ground.indexOf.get(id) ?? -1;
  const step = result.steps[stepOf[point] ?? -1];
  const centres = [...new Set((step?.rules ?? []).flatMap((rule) => index.pointsOfRule(rule)))];
  const named = centres.flatMap((each) => {
    const centre = each === point ? undefined : ground.pointIds[each];
    return centre === undefined ? [] : [{ id: centre, ...placeAt(result, each) }];
  });
  const crossing = step?.kind === 'crossing' ? tellApart(named, from, to) : undefined;
  const move: Edit = { kind: 'move', places: [{ id, at: [to.x, to.y] }] };
  const isRecorded = [...movement.arbors, ...movement.posts, ...movement.marks].some(
    (each) => each.id === id && each.crossing !== undefined,
  );
  if (!crossing && !isRecorded) return [move];
  return [move, crossing ? { kind: 'setCrossing', point: id, crossing } : { kind: 'setCrossing', point: id }];
}
