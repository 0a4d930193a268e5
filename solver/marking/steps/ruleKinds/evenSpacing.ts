/** Points evenly spaced on the metal: the circle, and chords from one to the next. */
import { type Point, separation } from '../../../geometry/index.ts';
import type { PointId } from '../../../movement/ids.ts';
import type { RuleOf } from '../../../movement/schema.ts';
import { ONE_PLACE } from '../../../tolerances.ts';
import { metalPointAt } from '../metal.ts';
import { arcFrom, circleAbout, type RuleGround } from '../metalLoci.ts';
import { soundStrike } from '../soundStrike.ts';
import type { RuleKindOnMetal, Strike } from './kind.ts';

/** How one of its points is struck. */
export const evenSpacingOnMetal: RuleKindOnMetal<'evenSpacing'> = {
  locus: (ground, { id, centre }, at) => circleAbout(ground, id, centre, at),
  strike: byChord,
};

/** The circle, and a chord from a neighbour that is there. */
function byChord(ground: RuleGround, rule: RuleOf<'evenSpacing'>, at: Point): Strike | undefined {
  const circle = circleAbout(ground, rule.id, rule.centre, at);
  for (const id of neighbours(rule.points, ground, at)) {
    const from = ground.placeOf(id);
    const known = from && metalPointAt(ground.metal, from);
    const strike = known && soundStrike('spacing', circle, arcFrom(known, at, rule.id), at);
    if (strike) return strike;
  }
  return undefined;
}

/** The points of an even spacing, the nearest in the list first. */
function neighbours(points: readonly PointId[], ground: RuleGround, at: Point): readonly PointId[] {
  const own = points.findIndex((id) => {
    const place = ground.placeOf(id);
    return place !== undefined && separation(place, at) < ONE_PLACE;
  });
  const away = (index: number) => Math.min(Math.abs(index - own), points.length - Math.abs(index - own));
  return points
    .map((id, index) => ({ id, away: away(index) }))
    .filter((each) => each.away > 0)
    .sort((a, b) => a.away - b.away)
    .map((each) => each.id);
}
