/** Ids for rules that are about to be kept. */
import { freshId, type ItemInput, idsOf, stemOfRule } from '../../solver/movement/index.ts';
import type { Movement } from '../../solver/movement/schema.ts';
import type { DraftRule } from '../../solver/planting/index.ts';

/** The rules with ids that are free in the movement. */
export function withIds(drafts: readonly DraftRule[], movement: Movement): ItemInput<'rules'>[] {
  const taken = new Set<string>(idsOf(movement).keys());
  return drafts.map((draft) => {
    const id = freshId(taken, stemOfRule(draft.kind));
    taken.add(id);
    return { ...draft, id } as ItemInput<'rules'>; // a draft is a rule of its kind without the id
  });
}
