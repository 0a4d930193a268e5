/**
 * The verdict on a placing: what holds, what is planted, loose or contested, which rules are spare, which disagree.
 *
 * Array kernel: indices come from the plan, hence the `!`.
 */
import { HOLDS, TOUCHING } from '../../tolerances.ts';
import { type Network, type NetworkResult, RuleKind } from '../network.ts';
import { PressureTrace } from './conflicts.ts';
import { markContested } from './contested.ts';
import { NO_LENGTH, shortArm } from './degenerate.ts';
import { disagreementsOf, rulesAgainst } from './disagreeing.ts';
import type { Placing } from './placing.ts';
import { factorOfTie } from './reduce.ts';
import { FIRST_EXACT_KIND, residualOf } from './residual.ts';
import { doubtsOf, markLoose, settlingOf, spread, spreadToMembers } from './settling.ts';
import { spareRules } from './spare.ts';
import { stepsOf } from './steps.ts';

/** Judges a placing. Places of merged points are filled in first. */
export function judge(placing: Placing): NetworkResult {
  const { ground } = placing;
  const { network, reduction, coords, work } = ground;
  if (reduction.points !== network.points) {
    spreadToMembers(reduction.root, coords);
    keepHeld(placing);
  }
  // No minus zero leaves the kernel.
  for (let k = 0; k < coords.length; k++) coords[k]! += 0;
  const missBy = missesOf(placing);
  const settling = settlingOf(placing, missBy);
  const { motions } = settling;
  const states = new Uint8Array(network.pointCount);
  markLoose(placing, motions, states);
  const failing = failingOf(placing, missBy);
  if (failing.length > 0) markContested(placing, failing, states);
  let disagreements: NetworkResult['disagreements'] | undefined = failing.length > 0 ? undefined : [];
  let spare: readonly number[] | undefined;
  let listed: ReturnType<typeof stepsOf> | undefined;
  let dense: Float64Array[] | undefined;
  return {
    coords,
    missBy,
    states,
    checks: placing.checks,
    against: (check) => rulesAgainst(placing, check),
    shares: (check) => new PressureTrace(ground, placing.plan).sharesOf(check),
    get steps() {
      listed ??= stepsOf(placing);
      return listed;
    },
    freeMotions: motions.length,
    get motions() {
      dense ??= motions.map((motion) => spread(placing, motion));
      return dense;
    },
    get spare() {
      spare ??= spareRules(placing, missBy);
      return spare;
    },
    doubts: doubtsOf(placing, settling, states),
    get disagreements() {
      disagreements ??= disagreementsOf(placing, failing, missBy);
      return disagreements;
    },
    work,
  };
}

/**
 * Rules that cannot hold: those that place, and ties, that miss by more than what counts as touching, and those that have
 * lost their meaning. Rules that check are judged by whoever knows what they may miss by.
 */
function failingOf(placing: Placing, missBy: Float64Array): number[] {
  const { network, reduction, coords } = placing.ground;
  // Of a block that does not close nothing proves that its points cannot move: no miss is small enough.
  const inStuck = new Set(
    placing.stuck.flatMap((s) => Array.from(placing.plan.groups[-1 - placing.plan.root[s]!]?.rules ?? [])),
  );
  const failing: number[] = [];
  for (let r = 0; r < network.ruleCount; r++) {
    if (placing.checks[r] || missBy[r]! <= HOLDS) continue;
    const isLost = shortArm(network.kinds[r]!, reduction.points, 4 * r, network.values, 3 * r, coords) > 0;
    if (isLost || missBy[r]! > TOUCHING || inStuck.has(r)) failing.push(r);
  }
  return failing;
}

/** What is held stays where it is held, whatever contradicts it. */
function keepHeld({ ground, sketch }: Placing): void {
  const { coords, network } = ground;
  for (let i = 0; i < network.pointCount; i++) {
    if (!network.held[i]) continue;
    coords[2 * i] = sketch[2 * i]!;
    coords[2 * i + 1] = sketch[2 * i + 1]!;
  }
}

/**
 * How far each rule is from holding at the final places, mm, exact rules included; held points keep the place they were
 * given. A rule without a direction there misses by what its arm lacks.
 */
function missesOf(placing: Placing): Float64Array {
  const { network, reduction, coords } = placing.ground;
  const { kinds, values, ruleCount } = network;
  const { points } = reduction;
  const misses = new Float64Array(ruleCount);
  for (let r = 0; r < ruleCount; r++) {
    const kind = kinds[r]!;
    if (kind === RuleKind.distance && values[3 * r]! > NO_LENGTH) {
      const p = 2 * points[4 * r]!;
      const a = 2 * points[4 * r + 1]!;
      const dx = coords[p]! - coords[a]!;
      const dy = coords[p + 1]! - coords[a + 1]!;
      misses[r] = Math.abs(Math.sqrt(dx * dx + dy * dy) - values[3 * r]!);
      continue;
    }
    misses[r] = Math.max(
      shortArm(kind, points, 4 * r, values, 3 * r, coords),
      kind < FIRST_EXACT_KIND
        ? Math.abs(residualOf(kind, points, 4 * r, values, 3 * r, coords))
        : exactMiss(network, r, coords, placing.sketch),
    );
  }
  return misses;
}

/** How far an exact rule is from holding, mm; more than rounding only where held places contradict it. */
function exactMiss(network: Network, r: number, coords: Float64Array, sketch: Float64Array): number {
  const [p, b, c] = [network.points[4 * r]!, network.points[4 * r + 1]!, network.points[4 * r + 2]!];
  const at = (i: number): [number, number] => {
    const from = network.held[i] ? sketch : coords;
    return [from[2 * i]!, from[2 * i + 1]!];
  };
  const [px, py] = at(p);
  const [bx, by] = at(b);
  if (network.kinds[r] === RuleKind.samePlace) return Math.hypot(px - bx, py - by);
  const turned = network.kinds[r] === RuleKind.turned;
  const [wr, wi] = factorOfTie(network.kinds[r]!, network.values[3 * r]!);
  // Turned lists p, q, c; the others p, c, q.
  const [[cx, cy], [qx, qy]] = turned ? [at(c), [bx, by]] : [[bx, by], at(c)];
  const [dx, dy] = [qx - cx, qy - cy];
  return Math.hypot(px - cx - (wr * dx - wi * dy), py - cy - (wi * dx + wr * dy));
}
