/**
 * The difference of several lengths of one point, shared by least squares.
 *
 * The sum of (miss / ±)² is least where the point is the weighted mean of the places at which each length would have it,
 * on its own line to the other end: Σ wᵢ·(P − Cᵢ) = 0 with Cᵢ at the length from Qᵢ towards P and wᵢ = 1 / ±ᵢ². So the
 * network gets a point for each Cᵢ (a distance from Qᵢ, in line with P), and P between them by a chain of weighted means,
 * which is exact. What the lengths miss by is told of each, as a check. ± and errors of the lengths reach P through the Cᵢ.
 */
import type { RuleId } from '../../../movement/ids.ts';
import type { RuleOf } from '../../../movement/schema.ts';
import { RuleKind } from '../../network.ts';
import { networkPoints, refuse, sourceOf } from './asking.ts';
import type { RuleKindInPlanting, Translation } from './kind.ts';

/** ± of a length that states none, mm: as for checks. Only its relation to the others counts. */
const UNSTATED = 0.02;

/** The named lengths then only check; how far each is from holding is told of it, so the share has no measure of its own. */
export const shareDifferenceInPlanting: RuleKindInPlanting<'shareDifference'> = {
  turn: 'shares',
  ask: askShare,
  measure: () => undefined,
  told: ({ point }) => ({ kind: 'lineFrom', from: point }),
  sets: ({ point }, set) => set.place(point),
};

/** One length: its other end, how long, and how well it is known. */
interface SharedLength {
  readonly rule: RuleId;
  readonly index: number;
  readonly from: number;
  readonly length: number;
  readonly plusMinus: number;
}

function askShare(to: Translation, rule: RuleOf<'shareDifference'>): void {
  const [point] = networkPoints(to, rule, [rule.point]) ?? [];
  if (point === undefined) return;
  const counting = rule.among.filter((id) => counts(to, id));
  const lengths = counting.flatMap((id) => lengthOf(to, id, point) ?? []);
  const wrong = counting.find((id) => !lengths.some((each) => each.rule === id));
  if (wrong !== undefined) {
    refuse(to, rule, [rule.point], { kind: 'noLengthOfPoint', rule: wrong });
    return;
  }
  if (lengths.length < 2) {
    refuse(to, rule, [rule.point], { kind: 'fewLengths' });
    return;
  }
  const { builder } = to;
  let mean = -1;
  let sum = 0;
  lengths.forEach((each, k) => {
    builder.tellToCheck(each.index);
    const end = endOf(to, rule, each, point);
    const weight = 1 / (each.plusMinus || UNSTATED) ** 2;
    sum += weight;
    if (k === 0) {
      mean = end;
      return;
    }
    const next = k === lengths.length - 1 ? point : builder.addPoint(undefined, builder.sketchOf(point));
    builder.rule(sourceOf(rule), RuleKind.between, [next, mean, end], [weight / sum], rule.plusMinus ?? 0);
    mean = next;
  });
}

/** Does a named rule count: neither left out nor told to check by itself, nor refused? */
function counts({ builder, movement }: Translation, id: RuleId): boolean {
  const rule = movement.rules.find((each) => each.id === id);
  if (rule === undefined || rule.leaveOut || rule.duty === 'checks') return false;
  return !builder.unusable.some((each) => each.rule === id);
}

/** A length between the point and something elsewhere; a gap to a straight side is none. */
function lengthOf({ builder, isOnePlace }: Translation, id: RuleId, point: number): SharedLength | undefined {
  const [index] = builder.networkRulesOf.get(id) ?? [];
  if (index === undefined) return undefined;
  const { kind, points, value, plusMinus } = builder.ruleAt(index);
  const others = points.filter((each) => !isOnePlace(each, point));
  const [from] = others;
  if (kind !== RuleKind.distance || from === undefined || others.length !== 1) return undefined;
  return { rule: id, index, from, length: value, plusMinus };
}

/** The place at which one length would have the point: on the line of both, at the length. */
function endOf(to: Translation, rule: RuleOf<'shareDifference'>, each: SharedLength, point: number): number {
  const { builder } = to;
  const [p, q] = [builder.sketchOf(point), builder.sketchOf(each.from)];
  const away = Math.hypot(p.x - q.x, p.y - q.y);
  const [ux, uy] = away > 0 ? [(p.x - q.x) / away, (p.y - q.y) / away] : [1, 0];
  const end = builder.addPoint(undefined, { x: q.x + each.length * ux, y: q.y + each.length * uy });
  const source = { kind: 'rule', rule: each.rule } as const;
  builder.rule(source, RuleKind.distance, [end, each.from], [each.length], each.plusMinus);
  builder.rule(sourceOf(rule), RuleKind.ray, [end, each.from, point], [0]);
  return end;
}
