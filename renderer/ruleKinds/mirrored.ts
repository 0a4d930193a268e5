/** Mirror images on the bench: the image of a point in a centre line that the document states. */
import { separation } from '../../solver/geometry/index.ts';
import { centreLineOf } from '../../solver/movement/index.ts';
import type { SnapCandidate } from '../gestures/snap.ts';
import { type RuleKindOnBench, WEIGHT } from './kind.ts';

/** Offered for any two, and settled on where the document states its centre line. */
export const mirroredOnBench: RuleKindOnBench = {
  beside: ({ points: [of, point] }) => [{ kind: 'mirrored', point, of }],
  snaps: ({ placed: { movement }, point, still }) => {
    if (!movement.centreLine) return () => [];
    const { through, along } = centreLineOf(movement);
    return (question) =>
      still(question).flatMap((other): SnapCandidate[] => {
        const off = (other.x - through.x) * along.y - (other.y - through.y) * along.x;
        const at = { x: other.x - 2 * off * along.y, y: other.y + 2 * off * along.x };
        const isItself = Math.abs(off) <= question.reach;
        if (isItself || separation(at, question.target) > 2 * question.reach) return [];
        return [
          {
            key: `mirrored ${other.id}`,
            locus: { kind: 'point', at },
            keeps: { kind: 'mirrored', point, of: other.id },
            says: `mirrored from ${question.nameOf(other.id)}`,
            weight: WEIGHT.place,
          },
        ];
      });
  },
};
