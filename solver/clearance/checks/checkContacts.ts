/** Supports that are said to touch their wall and do not, or that stand in its metal. */
import type { PlacedMovement } from '../../planting/placed.ts';
import { TOUCH } from '../../tolerances.ts';
import { wallContacts } from '../contact/wallContact.ts';
import type { Finding } from '../findings/finding.ts';

/** Every support whose gap to its wall is more than its allowance, either way. */
export function checkContacts(placed: PlacedMovement): readonly Finding[] {
  return wallContacts(placed).flatMap(({ post, wall, how, gap, allowance }): Finding[] => {
    if (Math.abs(gap) <= allowance + TOUCH) return [];
    return [
      {
        key: `post contact ${post} ${wall}`,
        kind: 'post',
        severity: 'stops',
        parts: [post, wall],
        gap,
        wanted: allowance,
        cause: { kind: 'noContact', post, wall, how, gap, allowance },
      },
    ];
  });
}
