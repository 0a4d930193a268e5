/** Sizes that are given where the maker has stated none: bearings from an arbor's diameter, pipes from what they ride on. */
import { containsPoint, type Point } from '../../geometry/index.ts';
import type { Arbor, Movement, Plate } from '../../movement/schema.ts';
import { heightsOfArbor } from './heights.ts';

/** Share of an arbor's diameter that its pivot keeps: leaves a shoulder, common practice; a working assumption. */
const PIVOT_SHARE = 0.6;
/** Side shake of a new bearing, mm: a usual running fit of small pivots; a working assumption, to be corrected. */
const SIDE_SHAKE = 0.03;
/** Thinnest pivot that is proposed, and length of a bearing in no plate, mm. */
const THINNEST = 0.5;
const FREE_LENGTH = 3;

type Bearing = Arbor['bearings'][number];

/** A plain bearing for an arbor, in a plate or in none yet. */
export function usualBearing({ diameter }: Pick<Arbor, 'diameter'>, plate?: Plate): Bearing {
  const wanted = Math.round(diameter * PIVOT_SHARE * 100) / 100;
  const pivot = Math.min(Math.max(THINNEST, wanted), diameter);
  const length = plate ? plate.levels.to - plate.levels.from : FREE_LENGTH;
  const bore = Math.round((pivot + SIDE_SHAKE) * 1000) / 1000;
  return { kind: 'plain', ...(plate ? { plate: plate.id } : {}), bore, pivot, length };
}

/** Play of a new pipe on what it rides on, mm on the diameter, and its wall, mm: usual for hands; working assumptions. */
const PIPE_PLAY = 0.05;
const PIPE_WALL = 0.75;

/** Bore and diameter of a pipe on an arbor or on another pipe: pipes size themselves outwards from what is inside. */
export function usualPipe({
  diameter,
}: Pick<Arbor, 'diameter'>): Pick<Arbor, 'diameter'> & { readonly pipeBore: number } {
  const pipeBore = diameter + PIPE_PLAY;
  return { pipeBore, diameter: pipeBore + 2 * PIPE_WALL };
}

/** Bearings in the two plates between which an arbor stands at its place; none where there are not two. */
export function usualBearings(arbor: Arbor, movement: Movement, at: Point): readonly Bearing[] {
  const here = movement.plates
    .filter(({ outline }) => containsPoint(outline, at))
    .sort((a, b) => a.levels.from - b.levels.from);
  const heights = heightsOfArbor(arbor, movement);
  const middle = heights ? (heights.from + heights.to) / 2 : undefined;
  const under = middle === undefined ? here[0] : here.findLast(({ levels }) => levels.to <= middle);
  const over = here.find(({ levels }) => under !== undefined && levels.from > under.levels.to);
  return under && over ? [usualBearing(arbor, under), usualBearing(arbor, over)] : [];
}
