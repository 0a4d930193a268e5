/** Contrate pairs, as they turn each other. */
import type { CouplingOf } from '../../movement/schema.ts';
import type { Join } from './join.ts';

/** A contrate pair says its own sense, each wheel seen from its own front. */
export const contrateJoins = ({ kind, wheels, sense }: CouplingOf<'contrate'>): Join => ({
  kind,
  by: 'wheels',
  wheels,
  sense: sense === 'same' ? 1 : -1,
});
