/** Radii on the bench: those that others have about a centre, and round ones. */
import type { PointId } from '../../solver/movement/ids.ts';
import type { Movement } from '../../solver/movement/schema.ts';
import type { Place } from '../../solver/planting/placed.ts';
import type { SnapCandidate } from '../gestures/snap.ts';
import type { SnapQuestion } from '../gestures/snapQuestion.ts';
import { type RuleKindOnBench, WEIGHT } from './kind.ts';
import { roundStep } from './roundStep.ts';

/** A point at a round length from a centre, or at that of another. */
export const radiusOnBench: RuleKindOnBench = {
  about: (point, centre) => ({ kind: 'radius', point, centre, length: 1 }),
  snaps: ({ placed, point, centres }) => {
    const lengths = radiiAbout(placed.movement, point);
    return (question) =>
      centres(question).flatMap((centre) => radiiNear(question, centre, lengths.get(centre.id) ?? []));
  },
};

/** Lengths of the radius rules about each centre that belong to other points. */
function radiiAbout(movement: Movement, point: PointId): ReadonlyMap<PointId, readonly number[]> {
  const radii = new Map<PointId, number[]>();
  for (const rule of movement.rules) {
    if (rule.kind !== 'radius' || rule.point === point) continue;
    radii.set(rule.centre, [...(radii.get(rule.centre) ?? []), rule.length]);
  }
  return radii;
}

function radiiNear(question: SnapQuestion, centre: Place, others: readonly number[]): SnapCandidate[] {
  const { point, target, reach, lengthSays, nameOf } = question;
  const away = Math.hypot(target.x - centre.x, target.y - centre.y);
  const lengths = new Map<number, number>();
  const step = roundStep(reach);
  lengths.set(Math.round(away / step) * step, WEIGHT.round);
  for (const length of others) lengths.set(length, WEIGHT.length);
  return [...lengths]
    .filter(([length]) => length > reach && Math.abs(length - away) <= 2 * reach)
    .map(([length, weight]) => ({
      key: `radius ${centre.id} ${length.toFixed(6)}`,
      locus: { kind: 'circle', centre, radius: length },
      keeps: { kind: 'radius', point, centre: centre.id, length: Number(length.toFixed(6)) },
      says: `radius ${lengthSays(length)} from ${nameOf(centre.id)}`,
      weight,
    }));
}
