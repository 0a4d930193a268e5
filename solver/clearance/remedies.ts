/**
 * Remedies: changes that cure a finding, each tried out before it is offered.
 *
 * A candidate is a changed movement. It is planted and checked like any other; it is offered only when the finding
 * is gone, no new finding has come, and the planting is no worse. So no remedy is ever a guess.
 */
import type { PartId } from '../movement/index.ts';
import { type PlacedMovement, plantMovement } from '../planting/index.ts';
import { checkMovement } from './checkMovement.ts';
import type { Finding, Remedy } from './finding.ts';
import { gapBetween } from './gapBetween.ts';
import { lengthWords } from './lengthWords.ts';
import type { Candidate } from './remedies/candidate.ts';
import { crossingCandidates } from './remedies/crossing.ts';
import { postCandidates } from './remedies/slidePost.ts';
import { levelCandidates, thicknessCandidates, tipCandidates } from './remedies/wheelChanges.ts';

/** Remedies for one finding, the gentlest kind first; none where nothing simple cures it. */
export function remediesFor(placed: PlacedMovement, finding: Finding): readonly Remedy[] {
  const [first, second] = finding.parts;
  if (first === undefined || second === undefined || finding.gap === undefined) return [];
  const before = new Set(checkMovement(placed).map((known) => pairOf(known)));
  const candidates = [
    ...postCandidates(placed, finding),
    ...crossingCandidates(placed, finding),
    ...levelCandidates(placed, finding),
    ...thicknessCandidates(placed, finding),
    ...tipCandidates(placed, finding),
  ];
  return candidates.flatMap((candidate) => proven(candidate, finding, first, second, before, placed));
}

/** The findings with remedies tried out for the first `most` of them. */
export function withRemedies(placed: PlacedMovement, findings: readonly Finding[], most = 10): readonly Finding[] {
  return findings.map((finding, index) => {
    const remedies = index < most ? remediesFor(placed, finding) : [];
    return remedies.length > 0 ? { ...finding, remedies } : finding;
  });
}

function proven(
  candidate: Candidate,
  finding: Finding,
  first: PartId,
  second: PartId,
  before: ReadonlySet<string>,
  placed: PlacedMovement,
): Remedy[] {
  const after = plantMovement(candidate.movement);
  if (after.freeMotions !== placed.freeMotions || after.disagreements.length > placed.disagreements.length) return [];
  const findings = checkMovement(after);
  const cured = findings.every((found) => pairOf(found) !== pairOf(finding) && before.has(pairOf(found)));
  if (!cured) return [];
  const gapAfter = gapBetween(after, first, second)?.gap;
  if (gapAfter === undefined) return [];
  return [{ says: `${candidate.does}: gap ${lengthWords(gapAfter)}`, movement: candidate.movement, gapAfter }];
}

/** A finding by its parts only: the same pair may foul before and be too close after. */
function pairOf(finding: Finding): string {
  const kind = finding.gap === undefined ? finding.key : 'gap';
  return `${kind} ${[...finding.parts].sort().join(' ')}`;
}
