/** Rules in reach: those that could be kept by what is chosen, each with the value that it would have now. */

import type { PartId, PointId } from '../../solver/movement/ids.ts';
import type { Edit } from '../../solver/movement/index.ts';
import type { Movement } from '../../solver/movement/schema.ts';
import { type DraftRule, ruleValueNow, settlingRules } from '../../solver/planting/index.ts';
import type { PlacedMovement } from '../../solver/planting/placed.ts';
import { calculatedDepth } from '../../solver/teeth/index.ts';
import { ruleSeen } from '../../solver/words/index.ts';
import { withIds } from '../gestures/ruleIds.ts';
import { pointOf } from '../state/derive/parts.ts';
import { draftsAmong } from './draftsAmong.ts';

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

function offer(
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
    return offersOf(placed, [{ kind: 'clearBy', parts: [beside, wall], gap: 0 }], [a], nameOf);
  }
  if (!a || !b || points.length < parts.length || new Set(points).size < points.length) return [];
  const drafts = points.length === 2 ? pairDrafts(placed, parts, [a, b]) : draftsAmong(placed, points);
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
  const kept = new Set(placed.movement.rules.flatMap((rule) => subjectOf(rule) ?? []));
  return drafts.flatMap((draft) => {
    // What is already a rule is edited on its card.
    if (kept.has(subjectOf(draft) ?? '')) return [];
    const value = ruleValueNow(placed.movement, placed, draft);
    if (!value || !a) return [];
    const kind = value.kind === 'angle' ? 'angle' : value.kind === 'off' ? 'none' : 'length';
    const told = offer(placed.movement, withNumber(draft, value.value), seenFrom(draft, a), nameOf, {
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
  return draft.kind === 'sameRadius' || draft.kind === 'evenSpacing' ? `${draft.points.map(nameOf).join(', ')}: ` : '';
}

/** What a rule between two speaks of, the same for two rules that would say the same. */
function subjectOf(rule: DraftRule | Movement['rules'][number]): string | undefined {
  const sorted = (ids: readonly string[]): string => `${rule.kind} ${[...ids].sort().join(' ')}`;
  if (rule.kind === 'depth') return sorted(rule.wheels);
  if (rule.kind === 'distance' || rule.kind === 'samePlace') return sorted(rule.points);
  if (rule.kind === 'clearBy') return sorted(rule.parts);
  if (rule.kind === 'radius') return `${rule.kind} ${rule.point} ${rule.centre}`;
  if (rule.kind === 'bearing') return `${rule.kind} ${rule.point} ${rule.centre} ${rule.reference ?? ''}`;
  if (rule.kind === 'sameRadius' || rule.kind === 'evenSpacing') return `${sorted(rule.points)} about ${rule.centre}`;
  if (rule.kind === 'inLine') return sorted([rule.point, ...rule.through]);
  if (rule.kind === 'opposite') return `${sorted([rule.point, rule.of])} about ${rule.centre}`;
  return undefined;
}

function pairDrafts(
  placed: PlacedMovement,
  parts: readonly PartId[],
  [a, b]: readonly [PointId, PointId],
): DraftRule[] {
  const { movement } = placed;
  const onArbor = (part: PartId | undefined, point: PointId) =>
    movement.wheels.filter(({ id, arbor }) => (id === part || part === point) && arbor === point);
  const depths: DraftRule[] = onArbor(parts[0], a).flatMap((one) =>
    onArbor(parts[1], b).flatMap((other): DraftRule[] => {
      const isMeeting = one.level < other.level + other.thickness && other.level < one.level + one.thickness;
      if (!isMeeting || calculatedDepth(one, other, movement).kind !== 'depth') return [];
      return [{ kind: 'depth', wheels: [one.id, other.id], use: 'calculated', allowance: 0 }];
    }),
  );
  return [
    ...depths,
    { kind: 'distance', points: [a, b], length: 1 },
    { kind: 'radius', point: b, centre: a, length: 1 },
    { kind: 'bearing', point: b, centre: a, angle: 0 },
    { kind: 'radius', point: a, centre: b, length: 1 },
    { kind: 'bearing', point: a, centre: b, angle: 0 },
    { kind: 'clearBy', parts: [parts[0] ?? a, parts[1] ?? b], gap: 0 },
    { kind: 'samePlace', points: [a, b] },
  ];
}

function withNumber(draft: DraftRule, value: number): DraftRule {
  if (draft.kind === 'distance' || draft.kind === 'radius') return { ...draft, length: Math.max(value, 1e-6) };
  if (draft.kind === 'bearing') return { ...draft, angle: value };
  if (draft.kind === 'clearBy') return { ...draft, gap: Math.max(0, value) };
  return draft;
}

/** The edit that keeps an offered rule. */
export function keepOffer(movement: Movement, { rule }: RuleOffer): Edit[] {
  return withIds([rule], movement).map((item): Edit => ({ kind: 'add', to: 'rules', item }));
}
