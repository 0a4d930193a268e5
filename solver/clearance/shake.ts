/**
 * How far an arbor can move aside at a height, from the play of its bearings.
 *
 * An arbor is a straight stick x(z) = x₀ + s·z, small angles. Each bearing of bore B on a pivot P lets both ends of its
 * running length move by (B − P)/2 to any side: |x(zᵢ)| ≤ cᵢ. The greatest |x(z)| at a height is then a linear
 * programme in (x₀, s) whose best corner has two of these bounds active; with one short bearing it gives the lean
 * of a stick in a hole, with two it gives the lever between plates. A pipe adds the movement of what it rides on.
 */
import type { Arbor, ArborId, Movement } from '../movement/index.ts';
import type { Heights } from './solids.ts';

/** A bound on the sideways movement at one height, mm. */
export interface PlayBound {
  readonly z: number;
  readonly play: number;
}

/** Bounds closer in height than this are one bound: below it a lever means nothing, mm. */
const SAME_HEIGHT = 1e-9;

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
  if (!first || !second || Math.abs(second.z - first.z) < SAME_HEIGHT) return undefined;
  const slope = (side * second.play - first.play) / (second.z - first.z);
  const x0 = first.play - slope * first.z;
  const allowed = bounds.every((bound) => Math.abs(x0 + slope * bound.z) <= bound.play * (1 + 1e-12) + 1e-12);
  return allowed ? { x0, slope } : undefined;
}

/** Bounds that an arbor's own bearings set; a bearing with no height of its own takes its plate's lower face. */
export function playBoundsOf(arbor: Arbor, movement: Movement): readonly PlayBound[] {
  return arbor.bearings.flatMap((bearing) => {
    const plate = movement.plates.find((candidate) => candidate.id === bearing.plate);
    const from = bearing.at ?? plate?.levels.from;
    if (from === undefined) return [];
    const play = Math.max(0, bearing.bore - bearing.pivot) / 2;
    return [
      { z: from, play },
      { z: from + bearing.length, play },
    ];
  });
}

/** Sideways movement of every arbor at any height, and the range of its end shake. */
export interface Shake {
  /** Greatest sideways movement of the arbor at height z, mm. */
  readonly aside: (arbor: ArborId, z: number) => number;
  /** Movement up or down from the drawn height, mm: half the end shake each way. */
  readonly lengthwise: (arbor: ArborId) => number;
}

/** The shake of every arbor of a movement. */
export function shakeOf(movement: Movement): Shake {
  const arbors = new Map(movement.arbors.map((arbor) => [arbor.id, arbor]));
  const bounds = new Map(movement.arbors.map((arbor) => [arbor.id, playBoundsOf(arbor, movement)]));
  const aside = (id: ArborId, z: number): number => {
    let total = 0;
    let current = arbors.get(id);
    // A chain of pipes is no longer than the list of arbors.
    for (let step = 0; current && step <= movement.arbors.length; step++) {
      const own = bounds.get(current.id) ?? [];
      const inside = current.ridesOn === undefined ? undefined : arbors.get(current.ridesOn);
      total += own.length > 0 || !inside ? sideMovementAt(own, z) : pipePlay(current, inside);
      current = inside;
    }
    return total;
  };
  return { aside, lengthwise: (id) => (arbors.get(id)?.endShake ?? 0) / 2 };
}

/** Play of a pipe on what it rides on, mm; the running fit is not known without a bore. */
function pipePlay(pipe: Arbor, inside: Arbor): number {
  return pipe.pipeBore === undefined ? 0 : Math.max(0, pipe.pipeBore - inside.diameter) / 2;
}

/** Greatest sideways movement over a range of heights: it is convex in z, so an end has it. */
export function sideMovementOver(shake: Shake, arbor: ArborId, heights: Heights): number {
  return Math.max(shake.aside(arbor, heights.from), shake.aside(arbor, heights.to));
}
