/** Which size of which part: "wheel of 60 on Third, over the tips". */
import type { PartSize } from '../../made/index.ts';
import type { Speaker } from '../speaker.ts';

/** What of the part is measured: "over the tips", "pivot in Front plate". */
export function sizeOf({ field, part, bearing }: PartSize, speaker: Speaker): string {
  const { movement } = speaker;
  switch (field) {
    case 'tipDiameter':
      return movement.wheels.some(({ id, internal }) => id === part && internal) ? 'inside the tips' : 'over the tips';
    case 'thickness':
      return 'thick';
    case 'runOut':
      return 'run-out of the teeth';
    case 'endShake':
      return 'end shake';
    case 'diameter':
      return movement.posts.some(({ id }) => id === part) ? 'across' : 'body';
    case 'pivot':
      return `pivot ${whichBearing(part, bearing ?? 0, speaker)}`;
    case 'hole':
      return movement.posts.some(({ id }) => id === part) ? 'its hole in the plate' : 'its hole';
    case 'bore':
      return bearing === undefined ? 'bore' : `hole ${whichBearing(part, bearing, speaker)}`;
  }
}

/** A bearing by its plate, else by its number on the arbor. */
function whichBearing(arborId: string, bearing: number, { movement, name }: Speaker): string {
  const plate = movement.arbors.find(({ id }) => id === arborId)?.bearings[bearing]?.plate;
  return plate === undefined ? `of bearing ${bearing + 1}` : `in ${name(plate)}`;
}

/** The part and what of it is measured: "wheel of 60 on Third, over the tips". */
export function partSizeSays(size: PartSize, speaker: Speaker): string {
  return `${speaker.name(size.part)}, ${sizeOf(size, speaker)}`;
}
