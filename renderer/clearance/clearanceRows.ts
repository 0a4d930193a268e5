/** What the view of gaps and end shake lists: stacks, the order of taking apart, and findings that were accepted. */
import { assemblyOrder, type Stack, stackOf } from '../../solver/clearance/index.ts';
import type { ArborId } from '../../solver/movement/ids.ts';
import type { Movement } from '../../solver/movement/schema.ts';
import type { PlacedMovement } from '../../solver/planting/placed.ts';

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
export function stackRows(movement: Movement): readonly StackRow[] {
  return movement.arbors.map(({ id, endShake }) => rowOf(id, endShake, stackOf(movement, id)));
}

function rowOf(arbor: ArborId, stated: number, stack: Stack): StackRow {
  if (stack.kind === 'none') return { arbor, stated, between: stack.says };
  if (stack.kind === 'stack') {
    const [low, high] = stack.between.map(({ id, name }) => name ?? id);
    return {
      arbor,
      stated,
      between: `${low} and ${high} (${lengths(stack.pieces.length)})`,
      found: stack.endShake,
      worst: stack.worst,
      likely: stack.statistical,
    };
  }
  const { below, above, room, worst, statistical, neighbours, pieces } = stack;
  if (!below || !above || room === undefined || !worst || !statistical) {
    const open = [below ? '' : 'nothing stops it downwards', above ? '' : 'nothing stops it upwards'];
    return { arbor, stated, between: open.filter((side) => side !== '').join(', ') };
  }
  const between = `${below.label} and ${above.label} (${lengths(pieces.length + 1)})`;
  return { arbor, stated, between, found: room, worst, likely: statistical, neighbours };
}

const lengths = (count: number): string => (count === 1 ? '1 length' : `${count} lengths`);

/** The arbors in the order in which they are lifted out, upper plate off; those of a group come together. */
export function takingApart(placed: PlacedMovement): {
  readonly groups: readonly (readonly ArborId[])[];
  readonly says: readonly string[];
} {
  const { groups, says } = assemblyOrder(placed);
  return { groups, says };
}
