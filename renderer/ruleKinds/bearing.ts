/** Directions on the bench: the four quarters about a centre. */
import type { Place } from '../../solver/planting/placed.ts';
import type { SnapCandidate } from '../gestures/snap.ts';
import type { SnapQuestion } from '../gestures/snapQuestion.ts';
import { type RuleKindOnBench, WEIGHT } from './kind.ts';

/** Each of a pair about the other, and one of three from another. */
export const bearingOnBench: RuleKindOnBench = {
  about: (point, centre) => ({ kind: 'bearing', point, centre, angle: 0 }),
  ofThree: (centre, reference, point) => ({ kind: 'bearing', point, centre, reference, angle: 0 }),
  snaps:
    ({ centres }) =>
    (question) =>
      centres(question).flatMap((centre) => quartersNear(question, centre)),
};

const QUARTERS = [
  { angle: 90, along: { x: 0, y: 1 }, says: 'straight above' },
  { angle: -90, along: { x: 0, y: -1 }, says: 'straight below' },
  { angle: 0, along: { x: 1, y: 0 }, says: 'level with, to the right of' },
  { angle: 180, along: { x: -1, y: 0 }, says: 'level with, to the left of' },
] as const;

function quartersNear({ point, target, reach, nameOf }: SnapQuestion, centre: Place): SnapCandidate[] {
  return QUARTERS.filter(({ along }) => {
    const ahead = (target.x - centre.x) * along.x + (target.y - centre.y) * along.y;
    const off = Math.abs((target.x - centre.x) * along.y - (target.y - centre.y) * along.x);
    return ahead > 2 * reach && off <= 2 * reach;
  }).map(({ angle, along, says }) => ({
    key: `bearing ${centre.id} ${angle}`,
    locus: { kind: 'ray', through: centre, along },
    keeps: { kind: 'bearing', point, centre: centre.id, angle },
    says: `${says} ${nameOf(centre.id)}`,
    weight: WEIGHT.line,
  }));
}
