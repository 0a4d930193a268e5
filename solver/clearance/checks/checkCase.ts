/** Openings that cannot be cut as drawn: across the edge of their plate, outside it, or across one another. */

import {
  boundsOfOutline,
  containsPoint,
  endsOf,
  nearestOfSegments,
  type OutlineShape,
  piecesOf,
} from '../../geometry/index.ts';
import type { PartId } from '../../movement/ids.ts';
import type { Movement } from '../../movement/schema.ts';
import { TOUCH } from '../../tolerances.ts';
import type { FindingCause } from '../findings/cause.ts';
import type { Finding } from '../findings/finding.ts';

/** Everything that is wrong with the openings of a movement; a notch is meant to cross its plate's edge. */
export function checkCase({ plates, openings }: Movement): readonly Finding[] {
  return plates.flatMap((plate): Finding[] => {
    const own = openings.filter((opening) => opening.plate === plate.id);
    const edges = own.flatMap((opening): Finding[] => {
      const crosses = meet(opening.outline, plate.outline);
      const isOut = !crosses && !isWithin(opening.outline, plate.outline);
      if (!isOut && (!crosses || opening.kind === 'notch')) return [];
      const kind = isOut ? 'openingOutside' : 'openingAcross';
      return [caseFinding([opening.id, plate.id], { kind, opening: opening.id, plate: plate.id })];
    });
    const pairs = own.flatMap((first, i) =>
      own.slice(i + 1).flatMap((second): Finding[] => {
        if (!meet(first.outline, second.outline)) return [];
        const openings = [first.id, second.id] as const;
        return [caseFinding(openings, { kind: 'openingsCross', openings, plate: plate.id })];
      }),
    );
    return [...edges, ...pairs];
  });
}

function caseFinding(parts: readonly [PartId, PartId], cause: FindingCause): Finding {
  return { key: `case ${parts.join(' ')}`, kind: 'case', severity: 'warns', parts, cause };
}

/** Outlines are immutable, so each two are looked at once, and an edit of something else costs nothing. */
const known = new WeakMap<OutlineShape, WeakMap<OutlineShape, boolean>>();

function meet(first: OutlineShape, second: OutlineShape): boolean {
  const ofFirst = known.get(first) ?? new WeakMap<OutlineShape, boolean>();
  known.set(first, ofFirst);
  const answer = ofFirst.get(second) ?? findMeeting(first, second);
  ofFirst.set(second, answer);
  return answer;
}

function findMeeting(first: OutlineShape, second: OutlineShape): boolean {
  const [a, b] = [boundsOfOutline(first), boundsOfOutline(second)];
  if (a[0] > b[2] || b[0] > a[2] || a[1] > b[3] || b[1] > a[3]) return false;
  const others = piecesOf(second);
  return piecesOf(first).some((piece) => others.some((other) => nearestOfSegments(piece, other).distance < TOUCH));
}

/** Of two outlines that do not meet: is the first inside the second? */
function isWithin(first: OutlineShape, second: OutlineShape): boolean {
  const [piece] = piecesOf(first);
  return piece !== undefined && containsPoint(second, endsOf(piece)[0]);
}
