/** Ids for rules that are about to be kept. */
import { freshId, type ItemInput, idsOf } from '../../solver/movement/index.ts';
import type { Movement, Rule } from '../../solver/movement/schema.ts';
import type { DraftRule } from '../../solver/planting/index.ts';

/** Short words for ids, by kind of rule. */
const STEMS: Readonly<Record<Rule['kind'], string>> = {
  held: 'held',
  depth: 'depth',
  distance: 'distance',
  radius: 'radius',
  bearing: 'bearing',
  opposite: 'opposite',
  samePlace: 'same-place',
  inLine: 'in-line',
  sameRadius: 'same-radius',
  evenSpacing: 'even-spacing',
  clearBy: 'clear-by',
};

/** The rules with ids that are free in the movement. */
export function withIds(drafts: readonly DraftRule[], movement: Movement): ItemInput<'rules'>[] {
  const taken = new Set<string>(idsOf(movement).keys());
  return drafts.map((draft) => {
    const id = freshId(taken, STEMS[draft.kind]);
    taken.add(id);
    return { ...draft, id } as ItemInput<'rules'>; // a draft is a rule of its kind without the id
  });
}
