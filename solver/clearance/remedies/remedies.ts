/**
 * Remedies: changes that cure a finding, each tried out before it is offered.
 *
 * A candidate is a changed movement. It is planted and checked like any other; it is offered only when the finding
 * is gone, no new finding has come, and the planting is no worse. So no remedy is ever a guess.
 */
import { applyEdit } from '../../movement/index.ts';
import type { RuleOf } from '../../movement/schema.ts';
import { plantMovement } from '../../planting/index.ts';
import type { PlacedMovement } from '../../planting/placed.ts';
import { TOUCH } from '../../tolerances.ts';
import { checkAssembly } from '../checks/assemblyOrder.ts';
import { checkDepthsUnderShake } from '../checks/checkDepthsUnderShake.ts';
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
import { longerBearingCandidates } from './longerBearing.ts';
import { ringCandidates } from './rings.ts';
import { meetingCandidates, notchCandidates, ruleCandidates, sizeCandidates } from './rulesAndSizes.ts';
import { sharedAxisCandidates } from './sharedAxes.ts';
import { postCandidates } from './slidePost.ts';
import { stackCandidates } from './stacks.ts';
import { sweptCandidates } from './sweptParts.ts';
import { toothCandidates } from './teeth.ts';
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
  const before = worstOf(check(placed));
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
    ...longerBearingCandidates(placed, finding),
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
    ...toothCandidates(placed, finding),
    ...depthCandidates(placed, finding),
    ...longerBearingCandidates(placed, finding),
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
  before: ReadonlyMap<string, number>,
  placed: PlacedMovement,
  check: typeof quickCheck,
): Remedy[] {
  const edited = applyEdit(placed.movement, candidate.edit);
  if (edited.kind === 'refused') return [];
  const { movement } = edited;
  const after = plantMovement(movement);
  if (after.freeMotions > placed.freeMotions || after.disagreements.length > placed.disagreements.length) return [];
  const isKnown = (found: Finding): boolean => SEVERITY[found.severity] <= (before.get(pairOf(found)) ?? -1);
  const cured = check(after).every((found) => pairOf(found) !== pairOf(finding) && isKnown(found));
  if (!cured || breaksDepth(placed, after)) return [];
  const { edit, deed } = candidate;
  const [first, second] = finding.parts;
  if (!isGap(finding) || first === undefined || second === undefined) return [{ deed, edit, movement }];
  const gapAfter = gapBetween(after, first, second)?.gap;
  if (gapAfter === undefined) return [];
  return [{ deed, edit, movement, gapAfter }];
}

/** How bad a finding is: a cure may leave what was there, and nothing that is worse. */
const SEVERITY: Readonly<Record<Finding['severity'], number>> = { notes: 0, warns: 1, stops: 2 };

/** Every pair that something is told of, with the worst of it. */
function worstOf(findings: readonly Finding[]): ReadonlyMap<string, number> {
  const worst = new Map<string, number>();
  for (const found of findings) {
    const pair = pairOf(found);
    worst.set(pair, Math.max(worst.get(pair) ?? 0, SEVERITY[found.severity]));
  }
  return worst;
}

/** Does a depth that a change reaches run worse than before it? Only those are worth the contact of their teeth. */
function breaksDepth(placed: PlacedMovement, after: PlacedMovement): boolean {
  const isReached = reachedDepths(placed, after);
  const now = checkDepthsUnderShake(after, isReached);
  if (now.length === 0) return false;
  const before = worstOf(checkDepthsUnderShake(placed, isReached));
  return now.some((found) => SEVERITY[found.severity] > (before.get(pairOf(found)) ?? -1));
}

/** Depths whose wheels, arbors or distance a change has touched; what it has not touched is the same object. */
function reachedDepths(placed: PlacedMovement, after: PlacedMovement): (rule: RuleOf<'depth'>) => boolean {
  const [was, is] = [placed, after].map(({ movement }) => ({
    wheels: new Map(movement.wheels.map((wheel) => [wheel.id, wheel])),
    arbors: new Map(movement.arbors.map((arbor) => [arbor.id, arbor])),
    rules: new Set(movement.rules),
  }));
  return (rule) =>
    !was?.rules.has(rule) ||
    rule.wheels.some((id) => {
      const [before, now] = [was.wheels.get(id), is?.wheels.get(id)];
      if (!now || before !== now || was.arbors.get(now.arbor) !== is?.arbors.get(now.arbor)) return true;
      const [a, b] = [placed.places.get(now.arbor), after.places.get(now.arbor)];
      return !a || !b || Math.hypot(a.x - b.x, a.y - b.y) > TOUCH;
    });
}

/** A finding by its parts only: the same pair may foul before and be too close after. */
function pairOf(finding: Finding): string {
  const kind = isGap(finding) ? 'gap' : finding.key;
  return `${kind} ${[...finding.parts].sort().join(' ')}`;
}
