/**
 * What a new measurement or a drilled hole changes: points before and after, depths with their shake from the contact
 * engine, findings that came and went. Both states are planted movements, so any two can be laid over each other.
 */
import { checkMovement, type Finding } from '../../clearance/index.ts';
import { labelsOf } from '../../marking/index.ts';
import { fixed } from '../../movement/decimal.ts';
import type { PointId, RuleId } from '../../movement/ids.ts';
import type { Movement } from '../../movement/schema.ts';
import type { PlacedMovement, Point } from '../../planting/placed.ts';
import { contactOfPair } from '../../teeth/index.ts';
import { type PlayChange, playChanges, playSays } from '../fits/plays.ts';
import { shiftOf, shiftWords } from '../holes/cure.ts';

/** A point that stands elsewhere than before, mm. */
export interface PointMove {
  readonly id: PointId;
  readonly label: string;
  readonly from: Point;
  readonly to: Point;
  readonly amount: number;
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
  readonly label: string;
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
  /** A sentence each, of all but the findings; `saysElse` leaves the depths out, for where they stand in a table. */
  readonly says: readonly string[];
  readonly saysElse: readonly string[];
}

/** A finding that stays while its gap changes. */
export interface GapChange {
  readonly finding: Finding;
  /** mm */
  readonly before: number;
  readonly after: number;
}

/** Movements below this are rounding of the planting, mm. */
const MOVED = 1e-7;

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
  const moved = [
    ...moves.map(
      (move) => `${move.label} moves ${shiftWords(shiftOf(move.to.x - move.from.x, move.to.y - move.from.y))}.`,
    ),
  ];
  const rest = [...plays.map(playSays)];
  const all = [...moved, ...depths.map(depthSays), ...rest];
  const isQuiet = findingsNew.length + findingsGone.length + gaps.length === 0;
  const says = all.length > 0 || !isQuiet ? all : ['Nothing changes.'];
  const saysElse = depths.length > 0 ? [...moved, ...rest] : says;
  return { moves, depths, plays, gaps, findingsNew, findingsGone, says, saysElse };
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
  const label = labelsOf(after.movement);
  const moves: PointMove[] = [];
  for (const [id, to] of after.places) {
    const from = before.places.get(id);
    const amount = from ? Math.hypot(to.x - from.x, to.y - from.y) : 0;
    if (from && amount > MOVED) {
      moves.push({ id, label: label(id), from: { x: from.x, y: from.y }, to: { x: to.x, y: to.y }, amount });
    }
  }
  return moves.sort((a, b) => b.amount - a.amount);
}

function depthChanges(before: PlacedMovement, after: PlacedMovement): readonly DepthChange[] {
  const label = labelsOf(after.movement);
  const changes: DepthChange[] = [];
  for (const rule of after.movement.rules) {
    if (rule.kind !== 'depth') continue;
    if (isSamePair(before, after, rule.wheels)) continue;
    const [was, is] = [depthState(before, rule.wheels), depthState(after, rule.wheels)];
    if (!was || !is || isAlike(was, is)) continue;
    const [a, b] = rule.wheels.map((id) => after.movement.wheels.find((wheel) => wheel.id === id));
    const name = a && b ? `${label(a.arbor)} ${a.teeth} : ${b.teeth} ${label(b.arbor)}` : rule.id;
    changes.push({ rule: rule.id, label: name, before: was, after: is });
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

function depthSays({ label, before, after }: DepthChange): string {
  const change = after.distance - before.distance;
  const way = change > 0 ? 'shallower' : 'deeper';
  const moved =
    Math.abs(change) <= MOVED
      ? `as deep as before at ${fixed(after.distance, 3)}`
      : `${fixed(Math.abs(change), 3)} mm ${way}, now ${fixed(after.distance, 3)}`;
  const shake =
    before.shake === undefined || after.shake === undefined
      ? ''
      : `; shake ${fixed(before.shake, 3)} before, ${fixed(after.shake, 3)} after`;
  const state = after.runs === 'free' ? '' : `: ${STATE_WORDS[after.runs]}`;
  return `${label}: ${moved}${shake}${state}.`;
}

const STATE_WORDS: Readonly<Record<Exclude<DepthState['runs'], 'free'>, string>> = {
  tight: 'it binds',
  bottoms: 'tips strike the roots',
  apart: 'teeth let go before the next take up',
  unknown: 'contact cannot be told',
};
