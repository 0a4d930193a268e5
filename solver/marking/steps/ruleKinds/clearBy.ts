/** A gap on the metal: an arc about the centre of the other part. */
import type { PointId } from '../../../movement/ids.ts';
import { arcBetween, type RuleGround } from '../metalLoci.ts';
import type { RuleKindOnMetal } from './kind.ts';

/** How one of its points is struck. */
export const clearByOnMetal: RuleKindOnMetal<'clearBy'> = {
  locus: (ground, { id, parts }, at) =>
    arcBetween(
      ground,
      id,
      parts.map((part) => centreOf(ground, part)),
      at,
    ),
};

function centreOf(ground: RuleGround, part: string): PointId | undefined {
  const arbor = ground.arborOfWheel.get(part);
  if (arbor !== undefined) return arbor;
  const id = part as PointId; // a part that is no wheel may be a point; one that is not has no place below
  return ground.placeOf(id) ? id : undefined;
}
