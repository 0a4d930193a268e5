/** The other crossing as a cure, in a sentence. */
import type { CrossingCure } from '../../planting/index.ts';
import { listed } from '../lists.ts';
import type { Speaker } from '../speaker.ts';

/** Points named in the sentence; the picture shows them all. */
const NAMED = 4;

/** "With the other crossing of P all of this holds: 3 points move, P the farthest, by 24.310 mm." */
export function crossingCureSays({ points, moves }: CrossingCure, speaker: Speaker): string {
  const names = points.slice(0, NAMED).map(({ id }) => speaker.name(id));
  const more = points.length > NAMED ? [`${points.length - NAMED} more`] : [];
  const which = points.length === 1 ? 'the other crossing' : 'the other crossings';
  const where =
    moves.farthest === undefined
      ? ''
      : `, ${speaker.name(moves.farthest)} the farthest, by ${speaker.length(moves.most)}`;
  const moved = moves.count === 1 ? '1 point moves' : `${moves.count} points move`;
  return `With ${which} of ${listed([...names, ...more])} all of this holds: ${moved}${where}.`;
}
