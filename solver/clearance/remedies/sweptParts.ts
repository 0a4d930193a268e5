/** Cures of what a hand, arm, finger or pin meets in its turn: shorter, or at another height. */

import type { Arbor } from '../../movement/schema.ts';
import type { PlacedMovement } from '../../planting/placed.ts';
import { CURE_STEP, TOUCH } from '../../tolerances.ts';
import { type Finding, shortInPlan } from '../findings/finding.ts';
import { planGapOf } from '../gaps/planGap.ts';
import { pieceOf } from '../solids/piece.ts';
import type { Solid } from '../solids/solid.ts';
import { solidsOf } from '../solids/solids.ts';
import type { Candidate } from './candidate.ts';
import type { CureDeed } from './deed.ts';
import { heightOwedFor } from './heightOwed.ts';

/** A hand may lose this much of its length before it is another hand: habit of the trade. */
const MOST_SHORTENED = 0.5;

type Swept = NonNullable<Arbor['swept']>[number];

/** Shorter, higher or lower, for each swept part of the finding's arbors. */
export function sweptCandidates(placed: PlacedMovement, finding: Finding): Candidate[] {
  const { movement } = placed;
  const solids = solidsOf(placed);
  const owed = heightOwedFor(placed, solids);
  return movement.arbors
    .filter(({ id }) => finding.parts.includes(id))
    .flatMap((arbor) => {
      const own = solids.filter((solid) => solid.part === arbor.id && solid.role === 'swept');
      const others = solids.filter((solid) => solid.part !== arbor.id && finding.parts.includes(solid.part));
      return (arbor.swept ?? []).flatMap((swept, index): Candidate[] => {
        const solid = own[index];
        if (!solid || others.length === 0 || !isMeant(solid, others, finding)) return [];
        return [
          ...shorter(arbor, index, swept, solid, finding),
          ...elsewhere(arbor, index, swept, others, Math.max(...others.map((other) => owed(solid, other)))),
        ];
      });
    });
}

/** Does this part, of all on its arbor, come as near as the finding says? */
function isMeant(solid: Solid, others: readonly Solid[], finding: Finding): boolean {
  return others.some((other) => {
    const apart = Math.max(other.heights.from - solid.heights.to, solid.heights.from - other.heights.to);
    const plan = planGapOf(solid, other)?.gap ?? Number.POSITIVE_INFINITY;
    return apart < (finding.wanted ?? 0) + 1 && plan < (finding.wanted ?? 0) + 1;
  });
}

function changedTo(arbor: Arbor, index: number, set: Partial<Swept>, deed: CureDeed): Candidate {
  const swept = (arbor.swept ?? []).map((each, i) => (i === index ? { ...each, ...set } : each));
  return { deed, edit: { kind: 'change', id: arbor.id, set: { swept } } };
}

function shorter(arbor: Arbor, index: number, swept: Swept, solid: Solid, finding: Finding): Candidate[] {
  const short = shortInPlan(finding);
  const farthest = Math.floor((swept.farthest - short - TOUCH) / CURE_STEP) * CURE_STEP;
  const least = Math.max(swept.nearest, swept.farthest * MOST_SHORTENED);
  if (short <= 0 || farthest <= least) return [];
  return [changedTo(arbor, index, { farthest }, { kind: 'shortenSwept', piece: pieceOf(solid), farthest })];
}

/** Just above and just below what it meets, the nearer first. */
function elsewhere(arbor: Arbor, index: number, swept: Swept, others: readonly Solid[], gap: number): Candidate[] {
  const above = Math.max(...others.map(({ heights }) => heights.to)) + gap - swept.from;
  const below = Math.min(...others.map(({ heights }) => heights.from)) - gap - swept.to;
  const piece = { part: arbor.id, piece: 'swept', nth: index } as const;
  return [Math.ceil((above + TOUCH) / CURE_STEP) * CURE_STEP, Math.floor((below - TOUCH) / CURE_STEP) * CURE_STEP]
    .sort((a, b) => Math.abs(a) - Math.abs(b))
    .map((by) =>
      changedTo(arbor, index, { from: swept.from + by, to: swept.to + by }, { kind: 'moveSwept', piece, by }),
    );
}
