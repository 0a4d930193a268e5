/** What the view of gaps and end shake lists: stacks, the order of taking apart, and findings that were accepted. */
import { assemblyOrder, type Stack, stackOf } from '../../solver/clearance/index.ts';
import type { ArborId } from '../../solver/movement/ids.ts';
import type { PlacedMovement } from '../../solver/planting/placed.ts';
import { assemblySays, noStackSays, piecesWords } from '../../solver/words/clearance/index.ts';
import { counted, listed, type Speaker } from '../../solver/words/index.ts';

/** The end shake of one arbor as it is listed, mm. */
export interface StackRow {
  readonly arbor: ArborId;
  /** "between Back plate and Front plate": what bounds it. */
  readonly between: string;
  /** mm; undefined where nothing tells it. */
  readonly stated: number;
  readonly found?: number;
  readonly worst?: readonly [number, number];
  readonly likely?: readonly [number, number];
  /** How far the stops themselves move, mm. */
  readonly neighbours?: number;
}

/** One row for each arbor, in the order of the document. */
export function stackRows(speaker: Speaker): readonly StackRow[] {
  const { movement } = speaker;
  return movement.arbors.map(({ id, endShake }) => rowOf(id, endShake, stackOf(movement, id), speaker));
}

function rowOf(arbor: ArborId, stated: number, stack: Stack, speaker: Speaker): StackRow {
  if (stack.kind === 'none') return { arbor, stated, between: noStackSays(stack.why, speaker) };
  if (stack.kind === 'stack') {
    return {
      arbor,
      stated,
      between: `${listed(stack.between.map(({ id }) => speaker.name(id)))} (${counted(stack.pieces.length, 'length')})`,
      found: stack.left,
      worst: stack.worst,
      likely: stack.statistical,
    };
  }
  const { below, above, room, worst, statistical, neighbours, pieces } = stack;
  if (!below || !above || room === undefined || !worst || !statistical) {
    const open = [below ? '' : 'nothing stops it downwards', above ? '' : 'nothing stops it upwards'];
    return { arbor, stated, between: open.filter((side) => side !== '').join(', ') };
  }
  const between = `${piecesWords([below, above], speaker)} (${counted(pieces.length + 1, 'length')})`;
  return { arbor, stated, between, found: room, worst, likely: statistical, neighbours };
}

/** The arbors in the order in which they are lifted out, upper plate off; those of a group come together. */
export function takingApart(
  placed: PlacedMovement,
  speaker: Speaker,
): { readonly groups: readonly (readonly ArborId[])[]; readonly says: readonly string[] } {
  const order = assemblyOrder(placed);
  return { groups: order.groups, says: assemblySays(order, speaker) };
}
