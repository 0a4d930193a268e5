/** Places straight opposite on the bench: the image of a point through a centre. */
import { separation } from '../../solver/geometry/index.ts';
import type { SnapCandidate } from '../gestures/snap.ts';
import { type RuleKindOnBench, WEIGHT } from './kind.ts';

/** One of three opposite another about the third. */
export const oppositeOnBench: RuleKindOnBench = {
  ofThree: (centre, of, point) => ({ kind: 'opposite', point, centre, of }),
  snaps:
    ({ point, lines }) =>
    (question) =>
      // The image lies on the line through both.
      lines(question).flatMap(({ centre, other }): SnapCandidate[] => {
        const at = { x: 2 * centre.x - other.x, y: 2 * centre.y - other.y };
        if (separation(at, question.target) > 2 * question.reach) return [];
        return [
          {
            key: `opposite ${centre.id} ${other.id}`,
            locus: { kind: 'point', at },
            keeps: { kind: 'opposite', point, centre: centre.id, of: other.id },
            says: `straight opposite ${question.nameOf(other.id)}`,
            weight: WEIGHT.place,
          },
        ];
      }),
};
