/**
 * Checks that are over, told so that one wrong number is one disagreement.
 *
 * A wrong length among true ones puts every check over that hangs on it. Of the rules that several of them have in common
 * the one is looked for whose number, put right by one of the checks, leaves none of them over: these checks are then told
 * together, with that number. What is left is told one by one, each with the rules that it cannot hold with.
 */
import type { PointId, RuleId } from '../../movement/ids.ts';
import type { Rule } from '../../movement/schema.ts';
import type { CheckOver, Disagreement } from '../disagreement.ts';
import { FIRST_EXACT_KIND } from '../kernel/residual.ts';
import { type CheckOutcome, checkOutcome } from './checksOver.ts';
import { CureTrial, canBe, hasNumber } from './cureTrial.ts';
import { failingRules, isUnsettled } from './failing.ts';
import { impliedBy } from './implied.ts';
import type { PlacementIndex } from './placementIndex.ts';
import { ruleValueAt } from './ruleValue.ts';
import { standingRules } from './standing.ts';

/** One check that is over, with the network rules that it hangs on. */
interface Over {
  readonly rule: Rule;
  readonly outcome: CheckOutcome;
  readonly against: readonly number[];
}

/** Rules that are tried as the wrong one: each is planted twice. */
const MOST_TRIED = 40;

/** All checks that are over, in the order of the movement. */
export function oversTold(index: PlacementIndex): readonly Disagreement[] {
  const standing = standingRules(index.ground.movement);
  let left = index.ground.movement.rules.flatMap((rule) => (standing.has(rule.id) ? [] : (overOf(index, rule) ?? [])));
  const told: Disagreement[] = [];
  while (left.length > 0) {
    const common = left.length > 1 ? commonCause(index, left) : undefined;
    if (!common) break;
    const [first, ...others] = common.overs;
    if (!first) break;
    told.push({
      ...tellOne(
        index,
        first,
        others.map(({ rule }) => rule.id),
      ),
      cure: { rule: common.rule.id, value: common.value },
    });
    left = left.filter((over) => !common.overs.includes(over));
  }
  return [...told, ...left.map((over) => tellOne(index, over, []))];
}

function overOf(index: PlacementIndex, rule: Rule): Over | undefined {
  if (rule.leaveOut) return undefined;
  const outcome = checkOutcome(index, rule);
  if (!outcome || outcome.missBy <= outcome.allowed || isUnsettled(index, outcome.worst)) return undefined;
  // What a hole leaves is a tie: the rules behind it are no part of it.
  const against = index.result.checks[outcome.worst] ? index.result.against(outcome.worst) : [];
  return { rule, outcome, against };
}

/** A rule whose number puts the most of several checks right. */
interface CommonCause {
  readonly rule: Rule;
  readonly value: number;
  readonly overs: readonly Over[];
  /** How many rules still fail with it. */
  readonly left: number;
}

/** The one that leaves the fewest rules failing. */
function commonCause(index: PlacementIndex, overs: readonly Over[]): CommonCause | undefined {
  const trial = new CureTrial(index);
  const before = new Set(failingRules(index));
  let best: CommonCause | undefined;
  let tried = 0;
  for (const rule of index.ground.movement.rules) {
    const part = rule.leaveOut ? undefined : trial.partOf(rule);
    if (part === undefined || index.result.checks[part]) continue;
    const hanging = overs.filter(({ against }) => against.includes(part));
    if (hanging.length < 2) continue;
    if (tried++ >= MOST_TRIED || best?.left === 0) break;
    const found = putRight({ index, trial, before }, rule, part, hanging);
    if (found && found.left < (best?.left ?? Number.POSITIVE_INFINITY)) best = found;
  }
  return best;
}

/** The number of a rule that the first of the checks hanging on it would give it, where it puts right more than that one. */
function putRight(
  { index, trial, before }: { index: PlacementIndex; trial: CureTrial; before: ReadonlySet<number> },
  rule: Rule,
  part: number,
  hanging: readonly Over[],
): CommonCause | undefined {
  const [first] = hanging;
  const { network } = index.ground;
  if (!first || (network.kinds[first.outcome.worst] ?? 0) >= FIRST_EXACT_KIND) return undefined;
  const value = trial.measuredWithout(part, [], first.outcome.worst);
  if (value === undefined || !canBe(rule, trial.numberOf(rule, part, value))) return undefined;
  const failing = trial.failingWith(part, value);
  if (!failing || failing.some((r) => !before.has(r))) return undefined;
  const still = new Set(failing);
  const overs = hanging.filter(({ outcome }) => !still.has(outcome.worst));
  if (overs.length < 2) return undefined;
  return { rule, value: trial.numberOf(rule, part, value), overs, left: failing.length };
}

function tellOne(index: PlacementIndex, { rule, outcome, against }: Over, also: readonly RuleId[]): Disagreement {
  const { movement } = index.ground;
  const rules = [rule.id, ...against.flatMap((each) => index.ruleIdOf(each) ?? [])];
  const points = index.pointsOfRule(outcome.worst).flatMap((point) => index.ground.pointIds[point] ?? []);
  const value = hasNumber(rule) ? ruleValueAt(movement, (id) => placeIn(index, id), rule) : undefined;
  const kind = value?.kind === 'angle' ? 'angle' : 'length';
  const measures: CheckOver['measures'] = value && value.kind !== 'off' ? { kind, value: value.value } : undefined;
  return {
    rules: [...new Set(rules)],
    points,
    gap: outcome.missBy,
    cause: {
      kind: 'over',
      check: rule.id,
      also,
      allowed: outcome.allowed,
      implied: impliedBy(index, against),
      ...(measures ? { measures } : {}),
    },
    ...(measures && canBe(rule, measures.value) ? { cure: { rule: rule.id, value: measures.value } } : {}),
  };
}

function placeIn({ ground, result }: PlacementIndex, id: PointId): { x: number; y: number } | undefined {
  const point = ground.indexOf.get(id);
  return point === undefined ? undefined : { x: result.coords[2 * point] ?? 0, y: result.coords[2 * point + 1] ?? 0 };
}
