/** Rules in reach: those that could be kept by what is chosen, each with the value that it would have now. */

import type { PartId, PointId } from '../../solver/movement/ids.ts';
import { type Edit, subjectOfRule, withRuleNumber } from '../../solver/movement/index.ts';
import type { Movement } from '../../solver/movement/schema.ts';
import { type DraftRule, ruleValueNow, settlingRules } from '../../solver/planting/index.ts';
import type { PlacedMovement } from '../../solver/planting/placed.ts';
import { ruleSeen } from '../../solver/words/index.ts';
import { withIds } from '../gestures/ruleIds.ts';
import { RULE_KINDS_ON_BENCH } from '../ruleKinds/ruleKinds.ts';
import { pointOf } from '../state/derive/parts.ts';
import { draftsAmong, pairDrafts } from './draftsAmong.ts';

/** A rule that could be added. */
export interface RuleOffer {
  readonly key: string;
  readonly rule: DraftRule;
  /** "Radius from Centre" */
  readonly says: string;
  /** What it measures now: a length or gap in mm, an angle in degrees, or nothing to tell. */
  readonly value: { readonly kind: 'length' | 'angle' | 'none'; readonly value: number };
}

type NameOf = (id: string) => string;

/** Offers for one loose point: what would settle it. */
export function offersFor(placed: PlacedMovement, point: PointId, nameOf: NameOf): RuleOffer[] {
  return settlingRules(placed, point).map(({ rule, value, calculated }) =>
    offer(placed.movement, rule, point, nameOf, {
      kind: value.kind === 'angle' ? 'angle' : value.kind === 'off' ? 'none' : 'length',
      value: calculated ?? value.value,
    }),
  );
}

/** A draft as an offer, in words seen from a point. */
export function offer(
  movement: Movement,
  rule: DraftRule,
  point: PointId,
  nameOf: NameOf,
  value: RuleOffer['value'],
): RuleOffer {
  const [withId] = withIds([rule], movement);
  // With its id and the default for leaving out it is a rule as the movement would hold it.
  const whole = { ...withId, leaveOut: false } as unknown as Movement['rules'][number];
  const { heading, rest } = ruleSeen(whole, point, { name: nameOf, movement });
  return { key: JSON.stringify(rule), rule, says: `${heading} ${rest}`, value };
}

/** Offers for two or more chosen parts: rules between just these. */
export function offersBetween(placed: PlacedMovement, parts: readonly PartId[], nameOf: NameOf): RuleOffer[] {
  const points = parts.flatMap((part) => pointOf(placed, part) ?? []);
  const [a, b] = points;
  const wall = placed.movement.walls.find(({ id }) => parts.includes(id))?.id;
  const beside = parts.find((part) => part !== wall);
  // A wall has no point of its own: all that can be kept with it is a gap.
  if (a && wall && beside && parts.length === 2) {
    const drafts = RULE_KINDS_ON_BENCH.flatMap(({ toWall }) => toWall?.(beside, wall) ?? []);
    return offersOf(placed, drafts, [a], nameOf);
  }
  if (!a || !b || points.length < parts.length || new Set(points).size < points.length) return [];
  const [one, other] = parts;
  const drafts =
    points.length === 2 && one && other
      ? pairDrafts({ placed, parts: [one, other], points: [a, b] })
      : draftsAmong(placed, points);
  return offersOf(placed, drafts, points, nameOf);
}

/** The drafts that are no rules yet, each with the value that it has now. */
function offersOf(
  placed: PlacedMovement,
  drafts: readonly DraftRule[],
  points: readonly PointId[],
  nameOf: NameOf,
): RuleOffer[] {
  const [a] = points;
  const kept = new Set(placed.movement.rules.flatMap((rule) => subjectOfRule(rule) ?? []));
  return drafts.flatMap((draft) => {
    // What is already a rule is edited on its card.
    if (kept.has(subjectOfRule(draft) ?? '')) return [];
    const value = ruleValueNow(placed.movement, placed, draft);
    if (!value || !a) return [];
    const kind = value.kind === 'angle' ? 'angle' : value.kind === 'off' ? 'none' : 'length';
    const told = offer(placed.movement, withRuleNumber(draft, value.value), seenFrom(draft, a), nameOf, {
      kind,
      value: value.value,
    });
    return [{ ...told, says: `${subjectSays(draft, points, nameOf)}${told.says}` }];
  });
}

/** The point whose rule it is, where it speaks of one. */
const seenFrom = (draft: DraftRule, first: PointId): PointId => ('point' in draft ? draft.point : first);

/** Who is meant, where that is not plain: in a pair it is the one chosen last. "Third: In line with …" */
function subjectSays(draft: DraftRule, points: readonly PointId[], nameOf: NameOf): string {
  if (points.length === 2) return 'point' in draft && draft.point === points[0] ? `${nameOf(draft.point)}: ` : '';
  if ('point' in draft) return `${nameOf(draft.point)}: `;
  return 'centre' in draft ? `${draft.points.map(nameOf).join(', ')}: ` : '';
}

/** The edit that keeps an offered rule. */
export function keepOffer(movement: Movement, { rule }: RuleOffer): Edit[] {
  return withIds([rule], movement).map((item): Edit => ({ kind: 'add', to: 'rules', item }));
}
