/** All checks of a placed movement in one ranked list. */
import type { PlacedMovement } from '../../planting/placed.ts';
import { checksAndMisses } from '../depths/depthVerdicts.ts';
import { type Finding, keyOfRules } from '../findings/finding.ts';
import { createGapChecker, type GapChecker } from '../gaps/gapChecker.ts';
import { checkAssembly } from './assemblyOrder.ts';
import { findingsOfBodies } from './checkBodies.ts';
import { checkCase } from './checkCase.ts';
import { checkContacts } from './checkContacts.ts';
import { checkDepths } from './checkDepths.ts';
import { checkDepthsUnderShake } from './checkDepthsUnderShake.ts';
import { checkHoles } from './checkHoles.ts';
import { checkOutside, checkPlatesInWalls } from './checkInCase.ts';
import { checkPosts } from './checkPosts.ts';
import { checkRingsClose } from './checkRingsClose.ts';
import { checkStacks } from './checkStacks.ts';
import { checkTeeth } from './checkTeeth.ts';
import { findingsOfTurning } from './checkTurning.ts';

const RANK: Record<Finding['severity'], number> = { stops: 0, warns: 1, notes: 2 };

/**
 * Everything that the maker should see before he cuts metal, worst first; findings that he has accepted and that
 * have not changed since are left out.
 */
export function checkMovement(placed: PlacedMovement, options: CheckOptions = {}): readonly Finding[] {
  return ranked(placed, createGapChecker(placed), options);
}

/** How thoroughly a movement is checked. */
export interface CheckOptions {
  /**
   * Also what takes longer or is no fault of a sound layout: every depth through the contact engine under shake.
   * For the command line, and for the window when it is idle.
   */
  readonly depths?: boolean;
}

/** A check that is kept up to date while points are dragged about. */
export interface MovementChecker {
  readonly findings: readonly Finding[];
  /** The check of another placing: of the same movement at the cost of what moved, else from the beginning. */
  readonly moved: (placed: PlacedMovement) => MovementChecker;
}

/** Starts a check that can follow a drag: `checker = checker.moved(drag.to(x, y))`. */
export function createChecker(placed: PlacedMovement): MovementChecker {
  return checkerOf(placed, createGapChecker(placed));
}

function checkerOf(placed: PlacedMovement, gaps: GapChecker): MovementChecker {
  const findings = ranked(placed, gaps);
  return { findings, moved: (next) => checkerOf(next, gaps.moved(next)) };
}

function ranked(placed: PlacedMovement, gaps: GapChecker, { depths = false }: CheckOptions = {}): readonly Finding[] {
  const findings = [
    ...checkPlanting(placed),
    ...unplacedFindings(placed),
    ...checkHoles(placed),
    ...checkPosts(placed),
    ...checkContacts(placed),
    ...checkOutside(placed),
    ...checkRingsClose(placed),
    ...gaps.findings(),
    ...checkDepthsUnderShake(placed, depths ? undefined : checksAndMisses(placed)),
    ...(depths ? checkAssembly(placed) : []),
  ];
  return findings.filter((finding) => !isAccepted(finding, placed)).sort(byRank);
}

const known = new WeakMap<PlacedMovement['movement'], readonly Finding[]>();

/** What follows from the document alone, wherever its points stand; movements are immutable, so each is asked once. */
function unplacedFindings(placed: PlacedMovement): readonly Finding[] {
  const old = known.get(placed.movement);
  if (old) return old;
  const findings = [
    ...checkDepths(placed),
    ...checkTeeth(placed.movement),
    ...findingsOfTurning(placed),
    ...checkStacks(placed.movement),
    ...checkCase(placed.movement),
    ...findingsOfBodies(placed.movement),
    ...checkPlatesInWalls(placed.movement),
  ];
  known.set(placed.movement, findings);
  return findings;
}

function checkPlanting(placed: PlacedMovement): Finding[] {
  return placed.disagreements.map((disagreement) => ({
    key: keyOfRules(disagreement.rules),
    kind: 'planting',
    severity: 'stops',
    parts: disagreement.points,
    gap: disagreement.gap,
    cause: { kind: 'disagreement', disagreement },
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

/** Rules that disagree come first of all: what stands where they leave it fouls or clears by accident. */
function byRank(a: Finding, b: Finding): number {
  const rank = RANK[a.severity] - RANK[b.severity] || Number(b.kind === 'planting') - Number(a.kind === 'planting');
  if (rank !== 0) return rank;
  const gap = shortfall(b) - shortfall(a);
  return gap !== 0 ? gap : a.key < b.key ? -1 : 1;
}

/** How far below its limit a gap is, mm. */
function shortfall(finding: Finding): number {
  return finding.gap === undefined ? 0 : (finding.wanted ?? 0) - finding.gap;
}
