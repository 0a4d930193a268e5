/**
 * Releases: which rules give way where a point was drilled.
 *
 * A fact releases the rules that placed its own point, and no others. In a block, where points are placed together, only
 * rules that name the point are asked, and those are let go that leave the other points the stillest, wherever the hole
 * may be: judged at the drawn places, by the worst direction, so that measuring a hole again never changes them.
 *
 * With J the square Jacobian of the block and g_i the columns of its inverse, letting rows S go and moving the drilled
 * points P by d moves all others by G_X,S (G_P,S)⁻¹ d: one factorization serves every choice of S.
 * Array kernel: indices come from a plan, hence the `!`.
 */
import { inverse, Matrix, SVD, solve } from 'ml-matrix';
import { RuleKind } from '../../network.ts';
import type { Group, Plan } from '../planSteps.ts';
import { type Ground, System } from '../system.ts';

/** What facts let go, and how far others follow. */
export interface Releases {
  /** 1 for each rule that a fact releases. */
  readonly released: Uint8Array;
  /** For each fact, in the order asked: how far another point of its block moves at most, against the error of the hole; 0 where it is placed alone. */
  readonly factors: Float64Array;
}

/** Depths stay before directions as long as the others move no more than this many times as far. */
const PREFERENCE = 2;
/** More choices than this are not tried all at once: the facts then choose one after the other, round by round. */
const MOST_CHOICES = 20_000;
/** Rounds until no fact changes its choice; more are not needed where each round betters the worst movement. */
const MOST_ROUNDS = 8;

/**
 * What the facts at some roots release.
 *
 * @param ground the drawing as it is planted without facts: its coordinates are the drawn places
 * @param plan   the plan of the rules that place
 * @param facts  roots that were drilled; roots that no step places (held, derived, loose) release nothing here
 */
export function releasesAt(ground: Ground, plan: Plan, facts: readonly number[]): Releases {
  const released = new Uint8Array(ground.network.ruleCount);
  const factors = new Float64Array(facts.length);
  const wanted = new Set(facts);
  for (let s = 0; s < plan.stepCount; s++) {
    const root = plan.root[s]!;
    if (root >= 0) {
      if (wanted.has(root)) for (const r of [plan.ruleA[s]!, plan.ruleB[s]!]) released[r] = 1;
      continue;
    }
    const group = plan.groups[-1 - root]!;
    const inside = [...wanted].filter((u) => group.roots.includes(u)).sort((a, b) => a - b);
    if (inside.length === 0 || group.kind === 'under') continue;
    const chosen = chooseInBlock(ground, group, inside);
    if (!chosen) continue;
    for (const r of chosen.rules) released[r] = 1;
    for (const u of inside) factors[facts.indexOf(u)] = chosen.factor;
  }
  return { released, factors };
}

/** A block at its drawn places, factored once for every choice of rules. */
interface Block {
  readonly group: Group;
  /** Inverse of the block's Jacobian: a column a rule, two rows a root. */
  readonly inverse: Matrix;
  /** Local indices of the rules that name each fact, and the facts' local indices. */
  readonly naming: readonly (readonly number[])[];
  readonly facts: readonly number[];
  readonly isDirection: readonly boolean[];
}

/** Rules of a block that are let go together, and how far another point then moves at most. */
interface Choice {
  readonly rules: readonly number[];
  readonly factor: number;
}

function chooseInBlock(ground: Ground, group: Group, facts: readonly number[]): Choice | undefined {
  const block = blockOf(ground, group, facts);
  if (!block) return undefined;
  const pairs = block.naming.map(pairsOf);
  if (pairs.some((each) => each.length === 0)) return undefined;
  const count = pairs.reduce((product, each) => product * each.length, 1);
  const tried = count <= MOST_CHOICES ? allChoices(pairs) : roundByRound(block, pairs);
  let best: readonly number[] | undefined;
  let least = Number.POSITIVE_INFINITY;
  const judged = tried.map((rows) => ({ rows, factor: factorOf(block, rows) }));
  for (const { factor } of judged) least = Math.min(least, factor);
  let kept = -1;
  let factor = Number.POSITIVE_INFINITY;
  for (const each of judged) {
    if (!(each.factor <= PREFERENCE * least)) continue;
    // Letting a direction go keeps a depth.
    const directions = each.rows.filter((row) => block.isDirection[row]).length;
    if (directions < kept || (directions === kept && each.factor >= factor)) continue;
    kept = directions;
    best = each.rows;
    factor = each.factor;
  }
  return best && { rules: best.map((row) => group.rules[row]!), factor };
}

function blockOf(ground: Ground, group: Group, facts: readonly number[]): Block | undefined {
  const system = new System();
  system.load(ground, group.roots, group.rules);
  system.evaluate(true);
  const size = 2 * system.rootCount;
  if (system.ruleCount !== size) return undefined;
  const jacobian = Matrix.zeros(size, size);
  const local = facts.map((u) => group.roots.indexOf(u));
  const naming = facts.map((): number[] => []);
  for (let i = 0; i < size; i++) {
    for (let e = system.rowStart[i]!; e < system.rowStart[i + 1]!; e++) {
      const at = system.rowRoot[e]!;
      jacobian.set(i, 2 * at, system.jacobian[2 * e]!);
      jacobian.set(i, 2 * at + 1, system.jacobian[2 * e + 1]!);
      const fact = local.indexOf(at);
      if (fact >= 0) naming[fact]!.push(i);
    }
  }
  const isDirection = Array.from(group.rules, (r) => ground.network.kinds[r] !== RuleKind.distance);
  try {
    return { group, inverse: inverse(jacobian), naming, facts: local, isDirection };
  } catch {
    // A block that is singular as drawn is not planted, and nothing in it can be let go in the place of anything.
    return undefined;
  }
}

function pairsOf(rows: readonly number[]): (readonly [number, number])[] {
  return rows.flatMap((a, i) => rows.slice(i + 1).map((b) => [a, b] as const));
}

/** One pair for each fact, in every combination without a row taken twice. */
function allChoices(pairs: readonly (readonly (readonly [number, number])[])[]): number[][] {
  let choices: number[][] = [[]];
  for (const each of pairs) {
    choices = choices.flatMap((rows) =>
      each.filter(([a, b]) => !rows.includes(a) && !rows.includes(b)).map((pair) => [...rows, ...pair]),
    );
  }
  return choices;
}

/** With many facts in one block each betters its own pair in turn until none changes: from the first pairs that go together. */
function roundByRound(block: Block, pairs: readonly (readonly (readonly [number, number])[])[]): number[][] {
  const chosen: (readonly [number, number] | undefined)[] = pairs.map(() => undefined);
  const others = (without: number): number[] =>
    chosen.flatMap((pair, at) => (at === without || !pair ? [] : [...pair]));
  for (let round = 0; round < MOST_ROUNDS; round++) {
    let isChanged = false;
    pairs.forEach((each, at) => {
      const rest = others(at);
      const free = each.filter(([a, b]) => !rest.includes(a) && !rest.includes(b));
      const best = free.reduce<{ pair: readonly [number, number]; factor: number } | undefined>((least, pair) => {
        const factor = factorOf(block, [...rest, ...pair]);
        return !least || factor < least.factor ? { pair, factor } : least;
      }, undefined);
      if (best && best.pair !== chosen[at]) isChanged = true;
      chosen[at] = best?.pair;
    });
    if (!isChanged) break;
  }
  return chosen.every((pair) => pair !== undefined) ? [others(-1)] : [];
}

/** How far another point moves at most when the facts move by one, with these rows let go; infinite where that leaves it loose. */
function factorOf(block: Block, rows: readonly number[]): number {
  const facts = block.facts.slice(0, rows.length / 2);
  const own = facts.flatMap((at) => [2 * at, 2 * at + 1]);
  const own2 = block.inverse.selection(own, rows as number[]);
  const gains = new SVD(own2).diagonal;
  if (!(gains.at(-1)! > 1e-9 * gains[0]!)) return Number.POSITIVE_INFINITY;
  let worst = 0;
  const undone = solve(own2, Matrix.eye(own.length));
  for (let at = 0; at < block.group.roots.length; at++) {
    if (block.facts.includes(at)) continue;
    const follows = block.inverse.selection([2 * at, 2 * at + 1], rows as number[]).mmul(undone);
    worst = Math.max(worst, spectralNorm(follows));
  }
  return worst;
}

/** Greatest stretch of a matrix of two rows: the root of the larger eigenvalue of the 2 x 2 product with its transpose. */
function spectralNorm(matrix: Matrix): number {
  let [xx, xy, yy] = [0, 0, 0];
  for (let k = 0; k < matrix.columns; k++) {
    const [x, y] = [matrix.get(0, k), matrix.get(1, k)];
    xx += x * x;
    xy += x * y;
    yy += y * y;
  }
  return Math.sqrt((xx + yy + Math.hypot(xx - yy, 2 * xy)) / 2);
}
