/** Shared places on the bench: what may stand where another does. */
import { separation } from '../../solver/geometry/index.ts';
import { joinableWith } from '../gestures/joinable.ts';
import { type RuleKindOnBench, WEIGHT } from './kind.ts';

/** Taken before all others well inside its reach: a place that was plainly meant. */
export const samePlaceOnBench: RuleKindOnBench = {
  beside: ({ points }) => [{ kind: 'samePlace', points }],
  snaps: ({ placed, point, still }) => {
    const joinable = joinableWith(placed.movement, point);
    return (question) =>
      still(question)
        .filter((place) => joinable.has(place.id) && separation(place, question.target) <= 2 * question.reach)
        .map((place) => ({
          key: `samePlace ${place.id}`,
          locus: { kind: 'point', at: place },
          keeps: { kind: 'samePlace', points: [point, place.id] },
          says: `same place as ${question.nameOf(place.id)}`,
          weight: WEIGHT.place,
          first: true,
        }));
  },
};
