/** Rules in reach: those that could be kept by what is chosen, each with the value that it would have now. */
import { calculatedDepth } from '../../solver/gearing/index.ts';
import type { Edit, Movement, PartId, PointId } from '../../solver/movement/index.ts';
import { type DraftRule, type PlacedMovement, ruleValueNow, settlingRules } from '../../solver/planting/index.ts';
import { pointOf } from '../bench/benchLettering.ts';
import { withIds } from '../gestures/ruleIds.ts';
import { ruleKindSays, ruleWithSays } from './ruleWords.ts';

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
  const says = `${ruleKindSays(rule.kind)} ${ruleWithSays(movement, whole, point, nameOf)}`;
  return { key: JSON.stringify(rule), rule, says, value };
}

/** Offers for two or three chosen parts: rules between just these. */
export function offersBetween(placed: PlacedMovement, parts: readonly PartId[], nameOf: NameOf): RuleOffer[] {
  const points = parts.map((part) => pointOf(placed, part));
  const [a, b, c, ...more] = points;
  if (!a || !b || more.length > 0) return [];
  const drafts: DraftRule[] =
    points.length === 2 ? pairDrafts(placed, parts, [a, b]) : c ? tripleDrafts([a, b, c]) : [];
  const kept = new Set(placed.movement.rules.flatMap((rule) => subjectOf(rule) ?? []));
  return drafts.flatMap((draft) => {
    // What is already a rule is edited on its card.
    if (kept.has(subjectOf(draft) ?? '')) return [];
    const value = ruleValueNow(placed.movement, placed, draft);
    if (!value) return [];
    const kind = value.kind === 'angle' ? 'angle' : value.kind === 'off' ? 'none' : 'length';
    return [offer(placed.movement, withNumber(draft, value.value), a, nameOf, { kind, value: value.value })];
  });
}

/** What a rule between two speaks of, the same for two rules that would say the same. */
function subjectOf(rule: DraftRule | Movement['rules'][number]): string | undefined {
  const sorted = (ids: readonly string[]): string => `${rule.kind} ${[...ids].sort().join(' ')}`;
  if (rule.kind === 'depth') return sorted(rule.wheels);
  if (rule.kind === 'distance' || rule.kind === 'samePlace') return sorted(rule.points);
  if (rule.kind === 'clearBy') return sorted(rule.parts);
  if (rule.kind === 'radius' || rule.kind === 'bearing') return `${rule.kind} ${rule.point} ${rule.centre}`;
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
    { kind: 'clearBy', parts: [parts[0] ?? a, parts[1] ?? b], gap: 0 },
    { kind: 'samePlace', points: [a, b] },
  ];
}

function tripleDrafts([a, b, c]: readonly [PointId, PointId, PointId]): DraftRule[] {
  return [
    { kind: 'inLine', point: c, through: [a, b] },
    { kind: 'opposite', point: c, centre: a, of: b },
    { kind: 'sameRadius', points: [b, c], centre: a },
    { kind: 'evenSpacing', points: [b, c], centre: a },
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
