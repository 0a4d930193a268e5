/**
 * Keeps the gaps of a placed movement and brings them up to date when points move, so that a drag pays only for what moved.
 *
 * Candidate pairs come from a tree of boxes; for each pair of solids that falls short a finding is kept. When a point
 * moves, its solids' findings are dropped and their neighbours asked again. A whole check is the same with everything
 * moved, so the two cannot differ.
 */
import type { Bounds } from '../../geometry/index.ts';
import type { PlacedMovement } from '../../planting/placed.ts';
import type { Finding } from '../findings/finding.ts';
import { gapFinding } from '../findings/gapFinding.ts';
import { type NearTree, nearTreeOf } from '../planckAdapter.ts';
import { type Solid, sweptRing } from '../solids/solid.ts';
import { movedSolids, solidsOf } from '../solids/solids.ts';
import { type GapContext, gapContextOf } from './gapReadings.ts';
import { largestPlanLimit, pairKey, pairTermsFor, type TermsOf } from './pairTerms.ts';
import { boundsOfSolid } from './planGap.ts';

/** The gap findings of one placing, ready to follow the next. */
export interface GapChecker {
  /** Every pair of parts whose gap is below what it owes; for two parts that meet in several places, the worst. */
  readonly findings: () => readonly Finding[];
  /** The same for another placing of the same movement; of another movement it starts afresh. */
  readonly moved: (placed: PlacedMovement) => GapChecker;
}

/** A checker of one placed movement. */
export function createGapChecker(placed: PlacedMovement): GapChecker {
  return new KeptGaps(placed);
}

/** Keeps each short pair and looks again only at what moved. */
class KeptGaps implements GapChecker {
  private placed: PlacedMovement;
  private solids: readonly Solid[];
  private context: GapContext;
  private readonly termsOf: TermsOf;
  private readonly tree: NearTree;
  /** Gap beyond which nothing can fall short, mm. */
  private readonly farthest: number;
  /** Findings under both solids of their pair. */
  private readonly short: Map<number, Finding>[];

  constructor(placed: PlacedMovement) {
    this.placed = placed;
    this.solids = solidsOf(placed);
    this.context = gapContextOf(placed, this.solids);
    this.termsOf = pairTermsFor(placed.movement);
    this.farthest = largestPlanLimit(placed.movement);
    this.tree = nearTreeOf(this.solids.map(reachOf));
    this.short = this.solids.map(() => new Map());
    for (const solid of this.solids) this.ask(solid, (other) => other > solid.index);
  }

  moved(placed: PlacedMovement): GapChecker {
    if (placed.movement !== this.placed.movement) return new KeptGaps(placed);
    const { solids, moved } = movedSolids(this.solids, placed);
    this.solids = solids;
    this.placed = placed;
    this.context = { ...this.context, placed };
    for (const index of moved) {
      for (const other of this.short[index]?.keys() ?? []) this.short[other]?.delete(index);
      this.short[index]?.clear();
      const solid = solids[index];
      if (solid) this.tree.move(index, reachOf(solid));
    }
    const isMoved = new Set(moved);
    for (const index of moved) {
      const solid = solids[index];
      if (solid) this.ask(solid, (other) => !isMoved.has(other) || other > index);
    }
    return this;
  }

  findings(): readonly Finding[] {
    const worst = new Map<string, Finding>();
    this.short.forEach((pairs, index) => {
      for (const [other, finding] of pairs) {
        if (other < index) continue;
        const [a = '', b = ''] = finding.parts;
        const pair = pairKey(a, b);
        const known = worst.get(pair);
        if (!known || (finding.gap ?? 0) < (known.gap ?? 0)) worst.set(pair, finding);
      }
    });
    return [...worst.values()];
  }

  private ask(solid: Solid, isAsked: (other: number) => boolean): void {
    this.tree.near(reachOf(solid), this.farthest + this.context.margin, (index) => {
      const other = this.solids[index];
      if (!other || index === solid.index || !isAsked(index)) return;
      const [first, second] = index < solid.index ? [other, solid] : [solid, other];
      const terms = this.termsOf(first, second);
      const finding = terms && gapFinding(...asTheyMeet(first, second), terms, this.context);
      if (!finding) return;
      this.short[first.index]?.set(second.index, finding);
      this.short[second.index]?.set(first.index, finding);
    });
  }
}

/** Two solids as they pass each other: each in the whole ring that it is carried round, save by an arm that carries both. */
export function asTheyMeet(first: Solid, second: Solid): readonly [Solid, Solid] {
  if (!first.carried && !second.carried) return [first, second];
  return [sweptAgainst(first, second), sweptAgainst(second, first)];
}

/** A solid carried round by every arm that does not carry the other as well, or bear it. */
function sweptAgainst(solid: Solid, other: Solid): Solid {
  if (solid.shape !== 'ring' || !solid.carried) return solid;
  const common = solid.carried.findIndex(
    ({ arm }) => other.arbor === arm || other.carried?.some((each) => each.arm === arm),
  );
  return sweptRing(solid, common < 0 ? undefined : common);
}

function reachOf(solid: Solid): Bounds {
  return boundsOfSolid(solid.shape === 'ring' ? sweptRing(solid) : solid);
}
