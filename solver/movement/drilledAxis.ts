/** The axis of a point that was drilled in two plates: the line through both places. Nothing is averaged. */
import { GAUGE } from '../tolerances.ts';
import type { Arbor, Made, Movement, Plate } from './schema.ts';

/** An axis by its place at the marked face (height 0), mm, and its slope, mm aside for each mm of height. */
export interface DrilledAxis {
  readonly place: { readonly x: number; readonly y: number };
  readonly slope: { readonly x: number; readonly y: number };
}

/**
 * The axis through the lowest and the highest hole of a point, each taken at the face that looks at the other.
 *
 * @param holes its drilled places, at most one a plate; those of which no plate is told are left aside
 * @returns undefined where it was drilled in one plate only
 */
export function drilledAxis(
  { plates }: Pick<Movement, 'plates'>,
  holes: readonly Made[],
  arbor?: Arbor,
): DrilledAxis | undefined {
  const passings = holes.flatMap((hole) => {
    const plate = plates.find(({ id }) => id === hole.plate);
    return plate && hole.at ? [{ at: hole.at, ends: endsOf(plate, arbor) }] : [];
  });
  const sorted = passings.sort((a, b) => a.ends[0] + a.ends[1] - b.ends[0] - b.ends[1]);
  const [low, high] = [sorted[0], sorted.at(-1)];
  if (!low || !high || low === high) return undefined;
  const facing = high.ends[0] - low.ends[1] > GAUGE;
  const [from, to] = facing ? [low.ends[1], high.ends[0]] : [middle(low.ends), middle(high.ends)];
  if (to - from < GAUGE) return undefined;
  const slope = { x: (high.at[0] - low.at[0]) / (to - from), y: (high.at[1] - low.at[1]) / (to - from) };
  return { place: { x: low.at[0] - slope.x * from, y: low.at[1] - slope.y * from }, slope };
}

const middle = ([from, to]: readonly [number, number]): number => (from + to) / 2;

/** Between which heights an arbor bears in a plate: by its bearing there, else through the plate. */
function endsOf(plate: Plate, arbor: Arbor | undefined): readonly [number, number] {
  const bearing = arbor?.bearings.find((each) => each.plate === plate.id);
  const from = bearing?.at ?? plate.levels.from;
  return bearing ? [from, from + bearing.length] : [plate.levels.from, plate.levels.to];
}
