/**
 * Remedies: changes that cure a finding, each tried out before it is offered.
 *
 * A candidate is a changed movement. It is planted and checked like any other; it is offered only when the finding
 * is gone, no new finding has come, and the planting is no worse. So no remedy is ever a guess.
 */
import { applyEdit } from '../movement/index.ts';
import { type PlacedMovement, plantMovement } from '../planting/index.ts';
import { checkMovement } from './checkMovement.ts';
import type { Finding, Remedy } from './finding.ts';
import { gapBetween } from './gapBetween.ts';
import { lengthWords } from './lengthWords.ts';
import type { Candidate } from './remedies/candidate.ts';
import { crossingCandidates } from './remedies/crossing.ts';
import { meetingCandidates, ruleCandidates, sizeCandidates } from './remedies/rulesAndSizes.ts';
import { postCandidates } from './remedies/slidePost.ts';
import { levelCandidates, thicknessCandidates, tipCandidates } from './remedies/wheelChanges.ts';

/** Remedies for one finding, the gentlest kind first; none where nothing simple cures it. */
export function remediesFor(placed: PlacedMovement, finding: Finding): readonly Remedy[] {
  const candidates = isGap(finding)
    ? [
        ...postCandidates(placed, finding),
        ...crossingCandidates(placed, finding),
        ...levelCandidates(placed, finding),
        ...thicknessCandidates(placed, finding),
        ...tipCandidates(placed, finding),
      ]
    : [...ruleCandidates(placed, finding), ...sizeCandidates(placed, finding), ...meetingCandidates(placed, finding)];
  if (candidates.length === 0) return [];
  const before = new Set(checkMovement(placed).map((known) => pairOf(known)));
  return candidates.flatMap((candidate) => proven(candidate, finding, before, placed));
}

function isGap({ kind }: Finding): boolean {
  return kind === 'fouls' || kind === 'tooClose';
}

/** The findings with remedies tried out for the first `most` of them. */
export function withRemedies(placed: PlacedMovement, findings: readonly Finding[], most = 10): readonly Finding[] {
  return findings.map((finding, index) => {
    const remedies = index < most ? remediesFor(placed, finding) : [];
    return remedies.length > 0 ? { ...finding, remedies } : finding;
  });
}

function proven(candidate: Candidate, finding: Finding, before: ReadonlySet<string>, placed: PlacedMovement): Remedy[] {
  const edited = applyEdit(placed.movement, candidate.edit);
  if (edited.kind === 'refused') return [];
  const { movement } = edited;
  const after = plantMovement(movement);
  if (after.freeMotions > placed.freeMotions || after.disagreements.length > placed.disagreements.length) return [];
  const findings = checkMovement(after);
  const cured = findings.every((found) => pairOf(found) !== pairOf(finding) && before.has(pairOf(found)));
  if (!cured) return [];
  const { edit, does } = candidate;
  const [first, second] = finding.parts;
  if (!isGap(finding) || first === undefined || second === undefined) return [{ says: does, edit, movement }];
  const gapAfter = gapBetween(after, first, second)?.gap;
  if (gapAfter === undefined) return [];
  return [{ says: `${does}: gap ${lengthWords(gapAfter)}`, edit, movement, gapAfter }];
}

/** A finding by its parts only: the same pair may foul before and be too close after. */
function pairOf(finding: Finding): string {
  const kind = isGap(finding) ? 'gap' : finding.key;
  return `${kind} ${[...finding.parts].sort().join(' ')}`;
}
