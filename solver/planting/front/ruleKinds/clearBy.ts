/** A gap between two outlines: the length follows from their radii, or the side of a wall. */
import type { Point } from '../../../geometry/index.ts';
import type { PartId, PointId } from '../../../movement/ids.ts';
import type { Movement, RuleOf, Wheel } from '../../../movement/schema.ts';
import { sizeOfWheel } from '../../../teeth/index.ts';
import type { NotKeptCause } from '../../disagreement.ts';
import { RuleKind } from '../../network.ts';
import { bodiesOf } from '../bodies.ts';
import { type GapRule, gapRule } from '../gapRules.ts';
import { networkPoints, refuse, sourceOf } from './asking.ts';
import type { DraftOf, Measured, RuleKindInPlanting, RuleValue, SettlingGround, Translation } from './kind.ts';
import { arcAbout, otherOf, towards } from './measuring.ts';

/** A wanted gap counts as calculated: a measured or typed length of the same axes places before it. */
export const clearByInPlanting: RuleKindInPlanting<'clearBy'> = {
  ask: askGap,
  measure: gapNow,
  struck: (now, { parts }, point, length) =>
    arcAbout(
      now,
      otherOf(
        parts.map((part) => centreOf(now.movement, part)),
        point,
      ),
      point,
      length,
    ),
  told: ({ id }) => ({ kind: 'gap', rule: id }),
  sets: ({ parts }, set) => {
    if (parts.some(set.isRound)) parts.forEach(set.place);
  },
  settles: ({ placed: { movement }, point, near }: SettlingGround) => {
    const own = widestPart(movement, point.id);
    return near.map((from) => ({
      rule: { kind: 'clearBy', parts: [own, widestPart(movement, from.id)], gap: 0 },
      across: towards(from, point),
    }));
  },
};

function askGap(to: Translation, rule: RuleOf<'clearBy'>): void {
  const [a, b] = rule.parts.map((part) => to.bodyOf(part));
  if (!a || !b) {
    refuse(to, rule, [], { kind: 'missing', what: 'part' });
    return;
  }
  const asked = gapRule([a, b], rule.gap, rule.edge, to.sketchOf);
  const { plusMinus } = rule;
  if (asked.kind === 'cannot') {
    const points = [a, b].flatMap((body) => (body.kind === 'round' ? [body.point] : []));
    refuse(to, rule, points, whyNoGap(asked, rule.gap), asked.lacking);
    return;
  }
  const points = gapPoints(to, rule, asked);
  if (!points) return;
  if (asked.kind === 'edge') {
    const values = [asked.normal.x, asked.normal.y, asked.offset];
    const made = to.builder.rule(sourceOf(rule), RuleKind.onLine, points, values, plusMinus ?? 0);
    to.builder.gapSides.set(made, 'outside');
  } else {
    const kind = asked.length === 0 ? RuleKind.samePlace : RuleKind.distance;
    const made = to.builder.rule(sourceOf(rule), kind, points, [asked.length], plusMinus ?? 0, 1);
    to.builder.gapSides.set(made, asked.inside ? 'inside' : 'outside');
  }
  to.builder.lengths.set(rule.id, { length: asked.length, ...(plusMinus === undefined ? {} : { plusMinus }) });
}

function gapPoints(
  to: Translation,
  rule: RuleOf<'clearBy'>,
  asked: Exclude<GapRule, { kind: 'cannot' }>,
): number[] | undefined {
  if (asked.kind === 'edge') return networkPoints(to, rule, [asked.point]);
  if (typeof asked.from === 'string') return networkPoints(to, rule, [asked.point, asked.from]);
  const points = networkPoints(to, rule, [asked.point]);
  return points && [...points, to.builder.casePoint(asked.from)];
}

function whyNoGap(asked: GapRule & { kind: 'cannot' }, gap: number): NotKeptCause {
  if (asked.why !== 'noRoom') return { kind: asked.why };
  const most = gap - asked.lacking;
  return most >= 0 ? { kind: 'noRoom', most } : { kind: 'tooLarge', by: -most };
}

/** The gap that is there: by the same side and the same radii as the rule would use. */
function gapNow({ movement, placeOf }: Measured, rule: DraftOf<'clearBy'>): RuleValue | undefined {
  const bodyOf = bodiesOf(movement);
  const a = bodyOf(rule.parts[0]);
  const b = bodyOf(rule.parts[1]);
  if (!a || !b) return undefined;
  const sketchOf = (id: PointId): Point => {
    const at = placeOf(id);
    return at ? { x: at.x, y: at.y } : { x: 0, y: 0 };
  };
  const touching = gapRule([a, b], 0, rule.edge, sketchOf);
  if (touching.kind === 'cannot') {
    return touching.why === 'noRoom' ? { kind: 'gap', value: -touching.lacking } : undefined;
  }
  const at = placeOf(touching.point);
  if (!at) return undefined;
  if (touching.kind === 'edge') {
    return { kind: 'gap', value: touching.normal.x * at.x + touching.normal.y * at.y - touching.offset };
  }
  const from = typeof touching.from === 'string' ? placeOf(touching.from) : { x: touching.from.x, y: touching.from.y };
  if (!from) return undefined;
  const apart = Math.hypot(at.x - from.x, at.y - from.y) - touching.length;
  return { kind: 'gap', value: touching.inside ? -apart : apart };
}

/** A wheel stands for its arbor; a part without one is a point or of the case, and that is looked up in vain. */
function centreOf(movement: Movement, part: PartId): PointId {
  return movement.wheels.find(({ id }) => id === part)?.arbor ?? (part as PointId);
}

function widestPart(movement: Movement, id: PointId): PartId {
  let widest: Wheel | undefined;
  let most = 0;
  for (const wheel of movement.wheels) {
    if (wheel.arbor !== id || wheel.internal) continue;
    const { tipRadius } = sizeOfWheel(wheel, movement);
    if (tipRadius <= most) continue;
    most = tipRadius;
    widest = wheel;
  }
  return widest?.id ?? id;
}
