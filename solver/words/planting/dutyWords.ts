/** What a rule is for, as the maker reads it. */
import type { RuleOutcome } from '../../planting/placed.ts';

const DUTIES: Readonly<Record<RuleOutcome['duty'], string>> = {
  places: 'plants it',
  checks: 'checks',
  told: 'told to check',
  released: 'released by a hole',
  leftOut: 'left out',
};

/** "plants it", "checks: over", "released by a hole: let stand": the duty of a rule, and what is to be said of it besides. */
export function dutySays({ duty, role, stands }: Pick<RuleOutcome, 'duty' | 'role' | 'stands'>): string {
  if (stands) return `${DUTIES[duty]}: let stand`;
  if (role !== 'disagrees') return DUTIES[duty];
  return `${DUTIES[duty]}: ${duty === 'places' ? 'cannot hold' : 'over'}`;
}
