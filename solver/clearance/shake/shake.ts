/**
 * How far an arbor can move aside at a height, from the play of its bearings.
 *
 * An arbor is a straight stick x(z) = x₀ + s·z, small angles. Each bearing of bore B on a pivot P lets both ends of its
 * running length move by (B − P)/2 to any side: |x(zᵢ)| ≤ cᵢ. The greatest |x(z)| at a height is then a linear
 * programme in (x₀, s) whose best corner has two of these bounds active; with one short bearing it gives the lean
 * of a stick in a hole, with two it gives the lever between plates.
 *
 * A pipe's bearings run on what it rides on, those with a plate run in the case. Against the case a pipe therefore
 * moves by its own play and by that of all inside it, but never more than a bearing in a plate lets it; against
 * another pipe of its axis only the plays between the two count.
 */

import type { ArborId } from '../../movement/ids.ts';
import type { Arbor, Movement, Plate } from '../../movement/schema.ts';
import { HOLDS } from '../../tolerances.ts';
import type { Heights } from '../solids/solid.ts';

/** A bound on the sideways movement at one height, mm. */
export interface PlayBound {
  readonly z: number;
  readonly play: number;
}

/**
 * Greatest sideways movement at height `z` under the bounds, mm; 0 without bounds (the drawing is taken at its word).
 * With bounds at one height only nothing stops the lean, and that height's play is returned.
 */
export function sideMovementAt(bounds: readonly PlayBound[], z: number): number {
  if (bounds.length === 0) return 0;
  let most: number | undefined;
  for (let i = 0; i < bounds.length; i++) {
    for (let j = i + 1; j < bounds.length; j++) {
      for (const side of [1, -1]) {
        const corner = cornerOf(bounds, i, j, side);
        if (corner === undefined) continue;
        const reach = Math.abs(corner.x0 + corner.slope * z);
        if (most === undefined || reach > most) most = reach;
      }
    }
  }
  return most ?? Math.min(...bounds.map((bound) => bound.play));
}

/** The stick that touches bound i on one side and bound j on the given side, if no other bound forbids it. */
function cornerOf(
  bounds: readonly PlayBound[],
  i: number,
  j: number,
  side: number,
): { readonly x0: number; readonly slope: number } | undefined {
  const first = bounds[i];
  const second = bounds[j];
  if (!first || !second || Math.abs(second.z - first.z) < HOLDS) return undefined;
  const slope = (side * second.play - first.play) / (second.z - first.z);
  const x0 = first.play - slope * first.z;
  const allowed = bounds.every((bound) => Math.abs(x0 + slope * bound.z) <= bound.play * (1 + 1e-12) + 1e-12);
  return allowed ? { x0, slope } : undefined;
}

/** Bounds that an arbor's bearings set, `inCase` those in plates, `onArbor` those of a pipe on the arbor inside it. */
export function playBoundsOf(
  arbor: Arbor,
  plates: ReadonlyMap<string, Plate>,
): { readonly inCase: readonly PlayBound[]; readonly onArbor: readonly PlayBound[] } {
  const inCase: PlayBound[] = [];
  const onArbor: PlayBound[] = [];
  for (const bearing of arbor.bearings) {
    const plate = bearing.plate === undefined ? undefined : plates.get(bearing.plate);
    // A bearing with no height of its own takes its plate's lower face.
    const from = bearing.at ?? plate?.levels.from;
    if (from === undefined) continue;
    const play = Math.max(0, bearing.bore - bearing.pivot) / 2;
    const isInside = arbor.ridesOn !== undefined && bearing.plate === undefined;
    (isInside ? onArbor : inCase).push({ z: from, play }, { z: from + bearing.length, play });
  }
  return { inCase, onArbor };
}

/** Sideways movement of every arbor at any height, and the range of its end shake. */
export interface Shake {
  /** Greatest sideways movement of the arbor at height z against the case, mm. */
  readonly aside: (arbor: ArborId, z: number) => number;
  /** Greatest sideways movement of two arbors at height z against each other, mm. */
  readonly between: (first: ArborId, second: ArborId, z: number) => number;
  /** Movement up or down from the drawn height, mm: half the end shake each way. */
  readonly lengthwise: (arbor: ArborId) => number;
}

/** What is known of one arbor: its own plays, and the one that it rides on. */
interface Play {
  readonly arbor: Arbor;
  readonly inside: Play | undefined;
  readonly inCase: readonly PlayBound[];
  readonly onArbor: readonly PlayBound[];
}

/** The shake of every arbor of a movement. */
export function shakeOf(movement: Movement): Shake {
  const arbors = new Map(movement.arbors.map((arbor) => [arbor.id, arbor]));
  const plates = new Map<string, Plate>(movement.plates.map((plate) => [plate.id, plate]));
  const plays = new Map<ArborId, Play>();
  // Pipes in a ring are refused on reading; the depth keeps a made-up document from hanging the check.
  const playOf = (id: ArborId, depth = 0): Play | undefined => {
    const known = plays.get(id);
    const arbor = arbors.get(id);
    if (known || !arbor || depth > arbors.size) return known;
    const inside = arbor.ridesOn === undefined ? undefined : playOf(arbor.ridesOn, depth + 1);
    const play = { arbor, inside, ...playBoundsOf(arbor, plates) };
    plays.set(id, play);
    return play;
  };
  const aside = (id: ArborId, z: number): number => asideOf(playOf(id), z);
  return {
    aside,
    between: (first, second, z) => {
      const apart = aside(first, z) + aside(second, z);
      const along = alongAxis(playOf(first), playOf(second), z);
      return along === undefined ? apart : Math.min(apart, along);
    },
    lengthwise: (id) => (arbors.get(id)?.endShake ?? 0) / 2,
  };
}

/** Against the case: through the plates where the arbor runs in them, else through all that it rides on. */
function asideOf(play: Play | undefined, z: number): number {
  if (!play) return 0;
  const { inside, inCase } = play;
  if (!inside) return sideMovementAt(inCase, z);
  const riding = onInside(play, z) + asideOf(inside, z);
  return inCase.length > 0 ? Math.min(riding, sideMovementAt(inCase, z)) : riding;
}

/** Of a pipe against the arbor inside it. */
function onInside({ arbor, inside, onArbor }: Play, z: number): number {
  if (!inside) return 0;
  return onArbor.length > 0 ? sideMovementAt(onArbor, z) : pipePlay(arbor, inside.arbor);
}

/** Plays between two arbors of one axis, up to the one that both ride on; undefined for different axes. */
function alongAxis(first: Play | undefined, second: Play | undefined, z: number): number | undefined {
  const upTo = new Map<Play, number>();
  let sum = 0;
  for (let play = first; play; play = play.inside) {
    upTo.set(play, sum);
    sum += onInside(play, z);
  }
  sum = 0;
  for (let play = second; play; play = play.inside) {
    const other = upTo.get(play);
    if (other !== undefined) return other + sum;
    sum += onInside(play, z);
  }
  return undefined;
}

/** Play of a pipe on what it rides on, mm; the running fit is not known without a bore. */
function pipePlay(pipe: Arbor, inside: Arbor): number {
  return pipe.pipeBore === undefined ? 0 : Math.max(0, pipe.pipeBore - inside.diameter) / 2;
}

/** Greatest sideways movement over a range of heights: it is convex in z, so an end has it. */
export function sideMovementOver(shake: Shake, arbor: ArborId, heights: Heights): number {
  return Math.max(shake.aside(arbor, heights.from), shake.aside(arbor, heights.to));
}

/** The same of two arbors against each other. */
export function sideMovementBetween(shake: Shake, first: ArborId, second: ArborId, heights: Heights): number {
  return Math.max(shake.between(first, second, heights.from), shake.between(first, second, heights.to));
}
