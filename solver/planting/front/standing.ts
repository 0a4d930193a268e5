/** Rules that the maker lets stand as they are because of a drilled place. */
import type { RuleId } from '../../movement/ids.ts';
import type { Movement } from '../../movement/schema.ts';

/** All of them: what a drilled place lists. */
export function standingRules({ made }: Pick<Movement, 'made'>): ReadonlySet<RuleId> {
  return new Set(made.flatMap(({ state, stands }) => (state === 'drilled' ? (stands ?? []) : [])));
}
