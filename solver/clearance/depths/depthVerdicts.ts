/**
 * The verdict of a depth: the one answer to whether a pair runs where it stands, as a kind and numbers.
 *
 * Teeth of different size come first: no distance cures them. Then the window of the true forms at the distance in the
 * mesh, with the shake of both arbors, their lean and run-out. Check, command line, slip, strip and sheets all ask here.
 */
import type { RuleId } from '../../movement/ids.ts';
import type { RuleOf } from '../../movement/schema.ts';
import type { PlacedMovement, RuleOutcome } from '../../planting/placed.ts';
import { calculatedDepth } from '../../teeth/index.ts';
import { CURE_STEP, GAUGE } from '../../tolerances.ts';
import type { DepthCause, DepthUnderShakeWindow } from '../findings/cause.ts';
import type { Finding } from '../findings/finding.ts';
import { type DepthUnderShake, depthsUnderShake } from './depthsUnderShake.ts';

/** What keeps a pair from running well. */
export type DepthFault =
  | DepthCause
  /** Teeth of different size. */
  | { readonly kind: 'sizes'; readonly calculated: Extract<ReturnType<typeof calculatedDepth>, { kind: 'mismatch' }> };

/** How a pair runs where it stands. */
export interface JudgedDepth {
  readonly rule: RuleId;
  readonly wheels: DepthUnderShake['wheels'];
  /** What the depth is for in the planting. */
  readonly duty: RuleOutcome['duty'];
  /** The distance by the sizes, and the one that the rule asks for, mm. */
  readonly calculated: number;
  readonly wanted: number;
  /** Axis to axis where the teeth meet, mm. */
  readonly distance: number;
  readonly window: DepthUnderShakeWindow;
  /** Least, mean and greatest shake along the pitch line over a whole turn, mm; none where the teeth do not mesh. */
  readonly shake: readonly [least: number, mean: number, greatest: number] | undefined;
  /** None for a pair that runs. */
  readonly fault: DepthFault | undefined;
  readonly severity: Finding['severity'] | undefined;
  /** The nearest distance at which it would run, mm; none where no distance would do, or it runs. */
  readonly goodDistance: number | undefined;
}

const kept = new WeakMap<PlacedMovement, ReadonlyMap<RuleId, JudgedDepth>>();

/** The verdicts of all depths in use whose arbors stand somewhere, in the order of the rules. */
export function depthVerdicts(placed: PlacedMovement): ReadonlyMap<RuleId, JudgedDepth> {
  const known = kept.get(placed);
  if (known) return known;
  const found = new Map(depthsUnderShake(placed).map((depth) => [depth.rule.id, verdictOf(placed, depth)]));
  kept.set(placed, found);
  return found;
}

/** Misses of depths that only check below which nothing is asked in a drag, mm: what careful work leaves. */
const CAREFUL = 0.02;

/** Which depths do not place and miss what they ask: nothing else tells of them, so they are judged in a drag too. */
export function checksAndMisses({ rules }: PlacedMovement): (rule: RuleOf<'depth'>) => boolean {
  return ({ id }) => {
    const outcome = rules.get(id);
    return outcome !== undefined && outcome.duty !== 'places' && outcome.missBy > CAREFUL;
  };
}

/** The verdicts of some depths, in the order of the rules. */
export function verdictsOf(
  placed: PlacedMovement,
  isAsked: (rule: RuleOf<'depth'>) => boolean,
): readonly JudgedDepth[] {
  const known = kept.get(placed);
  if (!known) return depthsUnderShake(placed, isAsked).map((depth) => verdictOf(placed, depth));
  return placed.movement.rules.flatMap((rule) => {
    const verdict = rule.kind === 'depth' && isAsked(rule) ? known.get(rule.id) : undefined;
    return verdict ? [verdict] : [];
  });
}

function verdictOf(placed: PlacedMovement, depth: DepthUnderShake): JudgedDepth {
  const { rule, wheels, distance, window } = depth;
  const outcome = placed.rules.get(rule.id);
  const calculated = calculatedDepth(...wheels, placed.movement);
  const found: { severity: Finding['severity']; fault: DepthFault } | undefined =
    calculated.kind === 'mismatch' ? { severity: 'stops', fault: { kind: 'sizes', calculated } } : shakeFaultOf(depth);
  const turn = window.kind === 'window' ? window.turn : undefined;
  return {
    rule: rule.id,
    wheels,
    duty: outcome?.duty ?? 'places',
    calculated: calculated.distance,
    wanted: outcome?.length ?? calculated.distance,
    distance,
    window,
    shake: window.kind === 'window' && turn ? [turn.leastBacklash, window.backlash, turn.greatestBacklash] : undefined,
    fault: found?.fault,
    severity: found?.severity,
    goodDistance: found && found.fault.kind !== 'sizes' ? nearestGood(depth) : undefined,
  };
}

/** How a pair of equal teeth fails with the shake of its arbors. */
export function shakeFaultOf({
  window,
  distance,
  wheels,
}: DepthUnderShake): { severity: Finding['severity']; fault: DepthCause } | undefined {
  if (window.kind === 'none') return { severity: 'stops', fault: { kind: 'noMesh', window } };
  const open = window.internal ? -1 : 1;
  const { spread } = window.turn;
  // Positive: so much beyond the end of the window, in the sense in which play grows or shrinks.
  const tooDeep = open * (window.deepest - distance);
  const tooShallow = open * (distance - window.shallowest);
  const lost = open * (distance - window.lostAt);
  const by = window.deepestBy === 'bottoming' ? 'bottoming' : 'binding';
  // Run-out brings the axes nearer once a turn; only the play of the bearings gives way to it.
  const runOut = (wheels[0].runOut + wheels[1].runOut) / 2;
  const play = spread - runOut;
  const tooNear = tooDeep + runOut;
  if (tooNear > play + GAUGE) {
    return { severity: 'stops', fault: { kind: 'tooNear', by, tooNear, play, runOut: runOut > GAUGE } };
  }
  if (lost > -GAUGE) return { severity: 'stops', fault: { kind: 'losesContact', tooFar: lost } };
  if (by === 'bottoming' && tooDeep > GAUGE) {
    return { severity: 'warns', fault: { kind: 'bottomsAsPlanted', tooNear: tooDeep } };
  }
  if (lost + spread > -GAUGE) return { severity: 'warns', fault: { kind: 'canLoseContact', tooFar: lost + spread } };
  if (tooShallow > GAUGE) return { severity: 'notes', fault: { kind: 'uneven', distance, evenTo: window.shallowest } };
  return undefined;
}

/** The nearest distance with no fault, in steps that can be set: from the end of the window that is passed, inwards. */
function nearestGood(depth: DepthUnderShake): number | undefined {
  const { window, distance } = depth;
  if (window.kind === 'none') return undefined;
  const open = window.internal ? -1 : 1;
  const isTooNear = open * (distance - window.deepest) < open * (window.shallowest - distance);
  const inwards = isTooNear ? open : -open;
  const end = isTooNear ? window.deepest : window.shallowest;
  const first = (inwards > 0 ? Math.ceil(end / CURE_STEP) : Math.floor(end / CURE_STEP)) * CURE_STEP;
  const most = Math.abs(window.shallowest - window.deepest) / CURE_STEP;
  for (let n = 0; n <= most; n++) {
    const tried = first + inwards * n * CURE_STEP;
    if (!shakeFaultOf({ ...depth, distance: tried })) return tried;
  }
  return undefined;
}
