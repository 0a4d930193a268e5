/**
 * From where to where arbors and posts reach: as stated, each end for itself, or as far as they have to.
 *
 * An arbor reaches from its lowest bearing or part to its highest, and through the pipes that run on it. A post reaches
 * from the plate that it stands on to the next one over it.
 */
import { containsPoint, type Point } from '../../geometry/index.ts';
import type { Arbor, Movement, Plate, Post } from '../../movement/schema.ts';
import { type PartsIndex, solidPartsOf } from '../solids/partsIndex.ts';
import type { Heights } from '../solids/solid.ts';

/** Heights that an arbor spans, mm; undefined where an end is not stated and nothing that stands on it decides it. */
export function heightsOfArbor(arbor: Arbor, movement: Movement): Heights | undefined {
  return reachOf(arbor, solidPartsOf(movement), 0);
}

/** Pipes in a ring are refused on reading; `depth` keeps a made-up document from hanging this. */
function reachOf(arbor: Arbor, parts: PartsIndex, depth: number): Heights | undefined {
  const { from, to } = arbor.levels ?? {};
  if (from !== undefined && to !== undefined) return { from, to };
  const spans = depth > parts.arbors.size ? [] : spansOn(arbor, parts, depth);
  if (spans.length === 0) return undefined;
  const derived = { from: Math.min(...spans.map((s) => s.from)), to: Math.max(...spans.map((s) => s.to)) };
  const reach = { from: from ?? derived.from, to: to ?? derived.to };
  return reach.from < reach.to ? reach : undefined;
}

/** Heights of everything that an arbor has to reach. */
function spansOn(arbor: Arbor, parts: PartsIndex, depth: number): Heights[] {
  const { wheelsOn, pipesOn } = parts;
  const wheels = (wheelsOn.get(arbor.id) ?? []).flatMap((wheel): Heights[] => {
    const body = { from: wheel.level, to: wheel.level + wheel.thickness };
    return wheel.hub ? [body, wheel.hub] : [body];
  });
  const bearings = arbor.bearings.flatMap((bearing) => heightsOfBearing(bearing, parts) ?? []);
  const pipes = (pipesOn.get(arbor.id) ?? []).flatMap((pipe) => runOn(pipe, parts, depth + 1));
  return [...arbor.collars, ...(arbor.swept ?? []), ...wheels, ...bearings, ...pipes];
}

/** Where a pipe runs on what is inside it: its own bearings there, or the whole of it where it has none. */
function runOn(pipe: Arbor, parts: PartsIndex, depth: number): Heights[] {
  const own = pipe.bearings.filter(({ plate }) => plate === undefined);
  const runs = own.flatMap((bearing) => heightsOfBearing(bearing, parts) ?? []);
  if (runs.length > 0) return runs;
  const whole = reachOf(pipe, parts, depth);
  return whole ? [whole] : [];
}

/** Heights of a bearing's running length, mm; of one in a plate that states none, the plate's. */
export function heightsOfBearing(
  { at, plate, length }: Arbor['bearings'][number],
  { plates }: Pick<PartsIndex, 'plates'>,
): Heights | undefined {
  if (at !== undefined) return { from: at, to: at + length };
  return plate === undefined ? undefined : plates.get(plate)?.levels;
}

/**
 * Heights that a post spans at its place, mm: as stated, else from the upper face of the plate that it stands on (the
 * lowest where it names none) to the lower face of the next plate over it; hung from the last plate, down to the next.
 */
export function heightsOfPost(post: Post, at: Point, movement: Movement): Heights | undefined {
  const { from, to } = post.levels ?? {};
  if (from !== undefined && to !== undefined) return { from, to };
  const between = betweenPlates(post, at, movement) ?? spanBetweenPlates(movement);
  if (!between) return undefined;
  const reach = { from: from ?? between.from, to: to ?? between.to };
  return reach.from < reach.to ? reach : undefined;
}

function betweenPlates({ plate, levels }: Post, at: Point, movement: Movement): Heights | undefined {
  const here = movement.plates
    .filter(({ id, outline }) => id === plate || containsPoint(outline, at))
    .sort((a, b) => a.levels.from - b.levels.from);
  const nth = Math.max(0, plate === undefined ? standsOn(here, levels) : here.findIndex(({ id }) => id === plate));
  const [own, over, under] = [here[nth], here[nth + 1], here[nth - 1]];
  if (own && over && over.levels.from > own.levels.to) return { from: own.levels.to, to: over.levels.from };
  if (own && under && own.levels.from > under.levels.to) return { from: under.levels.to, to: own.levels.from };
  return undefined;
}

/** The highest plate that is still below the one end that is stated; the lowest of all where none is. */
function standsOn(plates: readonly Plate[], { from, to }: NonNullable<Post['levels']> = {}): number {
  const below = (plate: Plate): boolean =>
    from === undefined ? to !== undefined && plate.levels.to < to : plate.levels.to <= from;
  return plates.findLastIndex(below);
}

/** The clear height between the two outermost plates, or of the walls; undefined where there is neither. */
export function spanBetweenPlates(movement: Movement): Heights | undefined {
  const bodies = movement.plates.length > 1 ? movement.plates : movement.walls;
  if (bodies.length === 0) return undefined;
  const lowest = Math.min(...bodies.map((body) => body.levels.to));
  const highest = Math.max(...bodies.map((body) => body.levels.from));
  if (highest > lowest) return { from: lowest, to: highest };
  return { from: Math.min(...bodies.map((b) => b.levels.from)), to: Math.max(...bodies.map((b) => b.levels.to)) };
}
