/**
 * Remedies: changes that cure a finding, each tried out before it is offered.
 *
 * A candidate is a changed movement. It is planted and checked like any other; it is offered only when the finding
 * is gone, no new finding has come, and the planting is no worse. So no remedy is ever a guess.
 */
import { applyEdit } from '../../movement/index.ts';
import { plantMovement } from '../../planting/index.ts';
import type { PlacedMovement } from '../../planting/placed.ts';
import { checkAssembly } from '../checks/assemblyOrder.ts';
import { checkMissing } from '../checks/checkMissing.ts';
import { checkMovement } from '../checks/checkMovement.ts';
import type { Finding, Remedy } from '../findings/finding.ts';
import { gapBetween } from '../gaps/gapBetween.ts';
import { adviceFor, isContested } from './advice.ts';
import { assemblyCandidates } from './assembly.ts';
import { bodyCandidates } from './bodies.ts';
import type { Candidate } from './candidate.ts';
import { crossingCandidates } from './crossing.ts';
import { isSameDeed } from './deed.ts';
import { depthCandidates } from './depths.ts';
import { ringCandidates } from './rings.ts';
import { meetingCandidates, notchCandidates, ruleCandidates, sizeCandidates } from './rulesAndSizes.ts';
import { sharedAxisCandidates } from './sharedAxes.ts';
import { postCandidates } from './slidePost.ts';
import { stackCandidates } from './stacks.ts';
import { sweptCandidates } from './sweptParts.ts';
import { turningCandidates } from './turning.ts';
import { levelCandidates, thicknessCandidates, tipCandidates } from './wheelChanges.ts';

/** Remedies for one finding, the gentlest kind first; none where nothing simple cures it, which `adviceFor` then says. */
export function remediesFor(placed: PlacedMovement, finding: Finding): readonly Remedy[] {
  // Where rules disagree a part stands by accident: what would clear it there means nothing.
  if (isOfPlaces(finding) && isContested(placed, finding)) return [];
  const candidates = isGap(finding) ? gapCandidates(placed, finding) : otherCandidates(placed, finding);
  if (candidates.length === 0) return [];
  // What only the slower checks find is only cured when they find it no more.
  const check = finding.cause.kind === 'underShake' ? slowCheck : isMissing(finding) ? wholeCheck : quickCheck;
  const before = new Set(check(placed).map((known) => pairOf(known)));
  const offered = candidates.flatMap((candidate) => proven(candidate, finding, before, placed, check));
  return offered.filter(({ deed }, index) => offered.findIndex((other) => isSameDeed(other.deed, deed)) === index);
}

function gapCandidates(placed: PlacedMovement, finding: Finding): Candidate[] {
  return [
    ...postCandidates(placed, finding),
    ...crossingCandidates(placed, finding),
    ...sweptCandidates(placed, finding),
    ...levelCandidates(placed, finding),
    ...thicknessCandidates(placed, finding),
    ...tipCandidates(placed, finding),
  ];
}

/** Each kind of candidate looks for the findings that it can do something about. */
function otherCandidates(placed: PlacedMovement, finding: Finding): Candidate[] {
  return [
    ...bodyCandidates(placed, finding),
    ...ruleCandidates(placed, finding),
    ...sizeCandidates(placed, finding),
    ...meetingCandidates(placed, finding),
    ...notchCandidates(placed, finding),
    ...depthCandidates(placed, finding),
    ...stackCandidates(placed, finding),
    ...assemblyCandidates(placed, finding),
    ...ringCandidates(placed, finding),
    ...turningCandidates(placed, finding),
    ...sharedAxisCandidates(placed, finding),
  ];
}

/** A cure must not hold an arbor down either; only one of a depth under shake is worth the contact of every pair. */
const quickCheck = (placed: PlacedMovement): readonly Finding[] => [...checkMovement(placed), ...checkAssembly(placed)];
const slowCheck = (placed: PlacedMovement): readonly Finding[] => checkMovement(placed, { depths: true });

const isMissing = ({ cause }: Finding): boolean => cause.kind === 'noBearing' || cause.kind === 'noEndShake';
const wholeCheck = (placed: PlacedMovement): readonly Finding[] => [
  ...quickCheck(placed),
  ...checkMissing(placed.movement),
];

/** Does a finding hang on where its parts stand? */
const isOfPlaces = (finding: Finding): boolean => isGap(finding) || finding.cause.kind === 'underShake';

function isGap({ kind }: Finding): boolean {
  return kind === 'fouls' || kind === 'tooClose';
}

/** With more findings than these a remedy helps nobody, and each one tried costs a check of them all. */
const CROWDED = 2000;

/**
 * The findings with remedies tried out for the first `most` of them, and what to try where there is none. A movement
 * with more than two thousand findings gets none: its parts lie on each other.
 */
export function withRemedies(placed: PlacedMovement, findings: readonly Finding[], most = 10): readonly Finding[] {
  if (findings.length > CROWDED) return findings;
  return findings.map((finding, index) => {
    if (index >= most) return finding;
    const remedies = remediesFor(placed, finding);
    return remedies.length > 0 ? { ...finding, remedies } : { ...finding, advice: adviceFor(placed, finding) };
  });
}

function proven(
  candidate: Candidate,
  finding: Finding,
  before: ReadonlySet<string>,
  placed: PlacedMovement,
  check: typeof quickCheck,
): Remedy[] {
  const edited = applyEdit(placed.movement, candidate.edit);
  if (edited.kind === 'refused') return [];
  const { movement } = edited;
  const after = plantMovement(movement);
  if (after.freeMotions > placed.freeMotions || after.disagreements.length > placed.disagreements.length) return [];
  const findings = check(after);
  const cured = findings.every((found) => pairOf(found) !== pairOf(finding) && before.has(pairOf(found)));
  if (!cured) return [];
  const { edit, deed } = candidate;
  const [first, second] = finding.parts;
  if (!isGap(finding) || first === undefined || second === undefined) return [{ deed, edit, movement }];
  const gapAfter = gapBetween(after, first, second)?.gap;
  if (gapAfter === undefined) return [];
  return [{ deed, edit, movement, gapAfter }];
}

/** A finding by its parts only: the same pair may foul before and be too close after. */
function pairOf(finding: Finding): string {
  const kind = isGap(finding) ? 'gap' : finding.key;
  return `${kind} ${[...finding.parts].sort().join(' ')}`;
}
