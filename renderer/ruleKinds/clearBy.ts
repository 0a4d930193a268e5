/** Gaps on the bench: what keeps something just clear of a wheel, an arbor, a post or a wall. */

import { planGapsOwed } from '../../solver/clearance/index.ts';
import type { Point } from '../../solver/geometry/index.ts';
import type { PartId, PointId } from '../../solver/movement/ids.ts';
import type { Movement, Wheel } from '../../solver/movement/schema.ts';
import { type Body, bodiesOf, gapRule } from '../../solver/planting/index.ts';
import type { PlacedMovement } from '../../solver/planting/placed.ts';
import type { SnapCandidate } from '../gestures/snap.ts';
import { isNear, type SnapQuestion } from '../gestures/snapQuestion.ts';
import type { SnapScene } from '../gestures/snapScene.ts';
import { type RuleKindOnBench, WEIGHT } from './kind.ts';

/** Offered with what the two owe each other; a wall has no point of its own, so a gap is all that can be kept with it. */
export const clearByOnBench: RuleKindOnBench = {
  beside: ({ parts }) => [{ kind: 'clearBy', parts, gap: 0 }],
  toWall: (part, wall) => ({ kind: 'clearBy', parts: [part, wall], gap: 0 }),
  snaps: (scene) => {
    const possible = possibleGaps(scene);
    return (question) => gapsNear(question, possible);
  },
};

/** Two bodies that could be kept apart, the first of them dragged. */
interface PossibleGap {
  readonly mine: PartId;
  readonly other: PartId;
  readonly bodies: readonly [Body & { readonly kind: 'round' }, Body];
  readonly gap: number;
}

/** Every pair of a dragged part and a still one that owe each other a gap, whose levels meet and whose gap no rule keeps yet. */
function possibleGaps({ placed: { movement }, point, moving, axis }: SnapScene): readonly PossibleGap[] {
  const bodyOf = bodiesOf(movement);
  const owedBy = planGapsOwed(movement);
  const known = new Set(movement.rules.flatMap((rule) => (rule.kind === 'clearBy' ? [rule.parts.join(' ')] : [])));
  const found: PossibleGap[] = [];
  for (const mine of ownBodies(movement, point, axis)) {
    for (const other of solids(movement, mine, moving)) {
      if (known.has(`${mine.id} ${other.id}`) || known.has(`${other.id} ${mine.id}`)) continue;
      const [a, b] = [bodyOf(mine.id), bodyOf(other.id)];
      const gap = owedBy(mine.id, other.id);
      if (!a || !b || a.kind !== 'round' || gap === undefined) continue;
      found.push({ mine: mine.id, other: other.id, bodies: [a, b], gap });
    }
  }
  return found;
}

/** Gaps to wheels, arbors, posts and walls that would otherwise be just touched. */
function gapsNear(question: SnapQuestion, possible: readonly PossibleGap[]): SnapCandidate[] {
  const { placed, point, moving, target, reach } = question;
  const found: SnapCandidate[] = [];
  const sketchOf = (id: PointId): Point => (id === point ? target : placed.places.get(id)) ?? { x: 0, y: 0 };
  for (const { mine, other, bodies, gap } of possible) {
    if (isFar(question, bodies, gap)) continue;
    const locus = locusOfGap(gapRule(bodies, gap, undefined, sketchOf), placed, moving);
    if (!locus || (locus.kind === 'circle' && !isNear(locus.centre, locus.radius, target, 2 * reach))) continue;
    found.push({
      key: `clearBy ${mine} ${other}`,
      locus,
      keeps: { kind: 'clearBy', parts: [mine, other], gap },
      says: `clear of ${question.nameOf(other)} by ${question.lengthSays(gap)}`,
      weight: WEIGHT.length,
    });
  }
  return found;
}

/** Are two solid discs so far apart that their gap cannot be near the target? */
function isFar({ placed, target, reach }: SnapQuestion, [a, b]: PossibleGap['bodies'], gap: number): boolean {
  if (b.kind !== 'round' || a.inner !== undefined || b.inner !== undefined) return false;
  const centre = placed.places.get(b.point);
  const most = a.outer + b.outer + gap + 2 * reach;
  return centre !== undefined && Math.hypot(centre.x - target.x, centre.y - target.y) > most;
}

/** A part that something may be kept clear of, with its heights in mm. */
interface Solid {
  readonly id: PartId;
  readonly from: number;
  readonly to: number;
}

const levelsOfWheel = (wheel: Wheel): Solid => ({
  id: wheel.id,
  from: wheel.level,
  to: wheel.level + wheel.thickness,
});

/** Parts of the dragged point that could touch something: its wheels, or the post itself. */
function ownBodies(movement: Movement, point: PointId, axis: ReadonlySet<PointId>): Solid[] {
  const post = movement.posts.find(({ id }) => id === point);
  if (post) return [{ id: post.id, from: post.levels?.from ?? -1e9, to: post.levels?.to ?? 1e9 }];
  return movement.wheels.filter(({ arbor }) => axis.has(arbor)).map(levelsOfWheel);
}

function solids(movement: Movement, mine: Solid, moving: ReadonlySet<PointId>): Solid[] {
  const everywhere = { from: -1e9, to: 1e9 };
  const meets = (wheel: Wheel): boolean => mine.from < wheel.level + wheel.thickness && wheel.level < mine.to;
  const all: Solid[] = [
    ...movement.wheels.filter((wheel) => meets(wheel) && !moving.has(wheel.arbor)).map(levelsOfWheel),
    ...movement.posts
      .filter(({ id }) => !moving.has(id))
      .map((post) => ({ ...everywhere, ...post.levels, id: post.id })),
    ...movement.walls.map((wall) => ({ id: wall.id, ...wall.levels })),
  ];
  return all.filter((other) => other.id !== mine.id && mine.from < other.to && other.from < mine.to);
}

function locusOfGap(
  asked: ReturnType<typeof gapRule>,
  { places }: PlacedMovement,
  moving: ReadonlySet<PointId>,
): SnapCandidate['locus'] | undefined {
  if (asked.kind === 'cannot') return undefined;
  if (asked.kind === 'edge') {
    const { x: nx, y: ny } = asked.normal;
    return {
      kind: 'line',
      through: { x: nx * asked.offset, y: ny * asked.offset },
      along: { x: -ny, y: nx },
    };
  }
  if (typeof asked.from !== 'string') {
    return { kind: 'circle', centre: { x: asked.from.x, y: asked.from.y }, radius: asked.length };
  }
  const fixed = moving.has(asked.from) ? asked.point : asked.from;
  const centre = places.get(fixed);
  return centre && !moving.has(fixed) ? { kind: 'circle', centre, radius: asked.length } : undefined;
}
