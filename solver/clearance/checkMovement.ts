/** All checks of a placed movement in one ranked list. */
import type { PlacedMovement } from '../planting/index.ts';
import { checkDepths } from './checkDepths.ts';
import { checkGaps } from './checkGaps.ts';
import { checkTurning } from './checkTurning.ts';
import type { Finding } from './finding.ts';

const RANK: Record<Finding['severity'], number> = { stops: 0, warns: 1, notes: 2 };

/**
 * Everything that the maker should see before he cuts metal, worst first; findings that he has accepted and that
 * have not changed since are left out.
 */
export function checkMovement(placed: PlacedMovement): readonly Finding[] {
  const findings = [...checkPlanting(placed), ...checkDepths(placed), ...checkTurning(placed), ...checkGaps(placed)];
  return findings.filter((finding) => !isAccepted(finding, placed)).sort(byRank);
}

function checkPlanting(placed: PlacedMovement): Finding[] {
  return placed.disagreements.map((disagreement) => ({
    key: `planting ${[...disagreement.rules].sort().join(' ')}`,
    kind: 'planting',
    severity: 'stops',
    parts: disagreement.points,
    gap: disagreement.gap,
    says: disagreement.says,
  }));
}

/** Gaps below this difference are the same gap, mm: a tenth of the last figure that is shown. */
const SAME_GAP = 0.001;

function isAccepted(finding: Finding, placed: PlacedMovement): boolean {
  return placed.movement.accepted.some(
    (accepted) =>
      accepted.finding === finding.kind &&
      accepted.parts.length === finding.parts.length &&
      accepted.parts.every((part) => finding.parts.includes(part)) &&
      Math.abs(accepted.gap - (finding.gap ?? 0)) <= SAME_GAP,
  );
}

function byRank(a: Finding, b: Finding): number {
  const rank = RANK[a.severity] - RANK[b.severity];
  if (rank !== 0) return rank;
  const gap = shortfall(b) - shortfall(a);
  return gap !== 0 ? gap : a.key < b.key ? -1 : 1;
}

/** How far below its limit a gap is, mm. */
function shortfall(finding: Finding): number {
  return finding.gap === undefined ? 0 : (finding.wanted ?? 0) - finding.gap;
}
