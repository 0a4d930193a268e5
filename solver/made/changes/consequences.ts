/**
 * What a new measurement or a drilled hole changes: points before and after, depths with their shake from the contact
 * engine, findings that came and went. Both states are planted movements, so any two can be laid over each other.
 */

import { checkMovement, type Finding } from '../../clearance/index.ts';
import type { Point } from '../../geometry/index.ts';
import type { PointId, RuleId } from '../../movement/ids.ts';
import type { Movement } from '../../movement/schema.ts';
import type { PlacedMovement } from '../../planting/placed.ts';
import { contactOfPair } from '../../teeth/index.ts';
import { type PlayChange, playChanges } from '../fits/plays.ts';
import { type Shift, shiftOf } from '../holes/cure.ts';

/** A point that stands elsewhere than before, mm. */
export interface PointMove {
  readonly id: PointId;
  readonly from: Point;
  readonly to: Point;
  /** mm */
  readonly amount: number;
  readonly shift: Shift;
}

/** How a pair runs at its distance. */
export interface DepthState {
  /** Distance of the two arbors, mm. */
  readonly distance: number;
  /** Shake along the driven wheel's pitch circle, mm: mean over a pitch; undefined where the pair gives no contact. */
  readonly shake: number | undefined;
  readonly runs: 'free' | 'tight' | 'bottoms' | 'apart' | 'unknown';
}

/** How a depth ran before and runs after. */
export interface DepthChange {
  readonly rule: RuleId;
  readonly before: DepthState;
  readonly after: DepthState;
}

/** Everything that a measurement or a hole changes. */
export interface Consequences {
  /** Points that moved, farthest first. */
  readonly moves: readonly PointMove[];
  /** Depths whose distance or shake changed, or that run otherwise; the greatest change of distance first. */
  readonly depths: readonly DepthChange[];
  /** Arbors whose side shake or end shake changed. */
  readonly plays: readonly PlayChange[];
  /** Findings that stay, with another gap. */
  readonly gaps: readonly GapChange[];
  readonly findingsNew: readonly Finding[];
  readonly findingsGone: readonly Finding[];
}

/** A finding that stays while its gap changes. */
export interface GapChange {
  readonly finding: Finding;
  /** mm */
  readonly before: number;
  readonly after: number;
}

/** Movements below this are rounding of the planting, mm. */
export const MOVED = 1e-7;

/** Compares two plantings of the same movement or of a like one. */
export function consequencesOf(before: PlacedMovement, after: PlacedMovement): Consequences {
  const moves = movesBetween(before, after);
  const depths = depthChanges(before, after);
  const [old, now] = [checkMovement(before), checkMovement(after)];
  const keys = (findings: readonly Finding[]) => new Set(findings.map((finding) => finding.key));
  const [oldKeys, nowKeys] = [keys(old), keys(now)];
  const findingsNew = now.filter((finding) => !oldKeys.has(finding.key));
  const findingsGone = old.filter((finding) => !nowKeys.has(finding.key));
  const plays = playChanges(before.movement, after.movement);
  const gaps = gapChanges(old, now);
  return { moves, depths, plays, gaps, findingsNew, findingsGone };
}

/** Gaps that differ by less are the same to any gauge, mm. */
const SAME_GAP = 5e-4;

function gapChanges(old: readonly Finding[], now: readonly Finding[]): readonly GapChange[] {
  const were = new Map(old.map(({ key, gap }) => [key, gap]));
  return now.flatMap((finding): GapChange[] => {
    const was = were.get(finding.key);
    if (was === undefined || finding.gap === undefined || Math.abs(was - finding.gap) < SAME_GAP) return [];
    return [{ finding, before: was, after: finding.gap }];
  });
}

/** Points with a place in both, that moved. */
export function movesBetween(before: PlacedMovement, after: PlacedMovement): readonly PointMove[] {
  const moves: PointMove[] = [];
  for (const [id, to] of after.places) {
    const from = before.places.get(id);
    if (!from) continue;
    const shift = shiftOf(to.x - from.x, to.y - from.y);
    const { amount } = shift;
    if (amount > MOVED) moves.push({ id, from: { x: from.x, y: from.y }, to: { x: to.x, y: to.y }, amount, shift });
  }
  return moves.sort((a, b) => b.amount - a.amount);
}

function depthChanges(before: PlacedMovement, after: PlacedMovement): readonly DepthChange[] {
  const changes: DepthChange[] = [];
  for (const rule of after.movement.rules) {
    if (rule.kind !== 'depth') continue;
    if (isSamePair(before, after, rule.wheels)) continue;
    const [was, is] = [depthState(before, rule.wheels), depthState(after, rule.wheels)];
    if (!was || !is || isAlike(was, is)) continue;
    changes.push({ rule: rule.id, before: was, after: is });
  }
  return changes.sort(
    (x, y) => Math.abs(y.after.distance - y.before.distance) - Math.abs(x.after.distance - x.before.distance),
  );
}

/** The same wheels at the same distance: nothing to reckon. */
function isSamePair(before: PlacedMovement, after: PlacedMovement, pair: readonly [string, string]): boolean {
  const of = ({ movement, places }: PlacedMovement) => {
    const [a, b] = pair.map((id) => movement.wheels.find((wheel) => wheel.id === id));
    const [p, q] = [a && places.get(a.arbor), b && places.get(b.arbor)];
    return { a, b, distance: p && q ? Math.hypot(p.x - q.x, p.y - q.y) : undefined };
  };
  const [was, is] = [of(before), of(after)];
  const apart = was.distance === undefined || is.distance === undefined ? 0 : Math.abs(was.distance - is.distance);
  return was.a === is.a && was.b === is.b && apart <= MOVED;
}

const isAlike = (was: DepthState, is: DepthState): boolean =>
  Math.abs(was.distance - is.distance) <= MOVED &&
  was.runs === is.runs &&
  Math.abs((was.shake ?? 0) - (is.shake ?? 0)) <= MOVED;

/** How a pair of wheels runs where its arbors stand; undefined when a wheel or place is missing. */
export function depthState(
  placed: PlacedMovement,
  [driverId, drivenId]: readonly [string, string],
): DepthState | undefined {
  const { movement } = placed;
  const wheelOf = (id: string): Movement['wheels'][number] | undefined =>
    movement.wheels.find((wheel) => wheel.id === id);
  const [driver, driven] = [wheelOf(driverId), wheelOf(drivenId)];
  const [a, b] = [driver && placed.places.get(driver.arbor), driven && placed.places.get(driven.arbor)];
  if (!driver || !driven || !a || !b) return undefined;
  const distance = Math.hypot(a.x - b.x, a.y - b.y);
  const contact = contactOfPair(driver, driven, movement, distance);
  if (contact.kind === 'none') return { distance, shake: undefined, runs: 'unknown' };
  const runs = contact.bottoms ? 'bottoms' : contact.binds ? 'tight' : contact.pairsInContact < 1 ? 'apart' : 'free';
  return { distance, shake: contact.backlash.mean, runs };
}
