/** What measured pivots, holes and end shakes do to the play of each arbor. */
import { shakeOf } from '../../clearance/index.ts';
import type { ArborId } from '../../movement/ids.ts';
import type { Arbor, Movement } from '../../movement/schema.ts';

/** Play of an arbor, mm: how far its parts can move to any side, and lengthwise in all. */
export interface Play {
  readonly side: number;
  readonly end: number;
}

/** The play of one arbor with the sizes as drawn and as measured. */
export interface PlayChange {
  readonly arbor: ArborId;
  readonly before: Play;
  readonly after: Play;
}

/** Plays that differ by less are the same, mm. */
export const SAME_PLAY = 1e-7;

/** Arbors that are in both, whose play changed, in the order of the file. */
export function playChanges(before: Movement, after: Movement): readonly PlayChange[] {
  if (before.arbors === after.arbors) return [];
  const old = new Map(before.arbors.map((arbor) => [arbor.id, arbor]));
  const [were, are] = [shakeOf(before), shakeOf(after)];
  return after.arbors.flatMap((arbor): PlayChange[] => {
    const was = old.get(arbor.id);
    if (!was || was === arbor) return [];
    const levels = [...levelsOf(arbor, after), ...levelsOf(was, before)];
    const side = (shake: typeof were) => Math.max(0, ...levels.map((z) => shake.aside(arbor.id, z)));
    const [a, b] = [
      { side: side(were), end: was.endShake },
      { side: side(are), end: arbor.endShake },
    ];
    if (Math.abs(a.side - b.side) <= SAME_PLAY && Math.abs(a.end - b.end) <= SAME_PLAY) return [];
    return [{ arbor: arbor.id, before: a, after: b }];
  });
}

/** Heights at which play matters: the wheels' middles, else where it runs. */
function levelsOf({ id, bearings }: Arbor, { wheels, plates }: Movement): readonly number[] {
  const own = wheels.filter(({ arbor }) => arbor === id).map(({ level, thickness }) => level + thickness / 2);
  if (own.length > 0) return own;
  return bearings.flatMap(({ at, plate }) => at ?? plates.find((each) => each.id === plate)?.levels.from ?? []);
}
