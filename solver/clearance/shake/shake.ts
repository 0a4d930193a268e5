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

import type { Point } from '../../geometry/index.ts';
import type { ArborId } from '../../movement/ids.ts';
import type { Arbor, Movement, Plate } from '../../movement/schema.ts';
import { HOLDS } from '../../tolerances.ts';
import { armsOf, type PartsIndex, solidPartsOf } from '../solids/partsIndex.ts';
import type { Heights } from '../solids/solid.ts';
import { type HoleLean, holeLeans, type PlayBound, steepest } from './lean.ts';

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

/** How every arbor can move: sideways at any height, by tilting, and along its end shake; arms take what they carry with them. */
export interface Shake {
  /** Greatest sideways distance of the arbor at height z from its upright place in the case, mm: its holes' lean and all play. */
  readonly aside: (arbor: ArborId, z: number) => number;
  /** Greatest sideways movement of two arbors at height z against each other, mm. */
  readonly between: (first: ArborId, second: ArborId, z: number) => number;
  /** How far each of two arbors moves aside at height z by play alone, mm; what carries both is left out. */
  readonly playsApart: (first: ArborId, second: ArborId, z: number) => readonly [number, number];
  /** Movement up or down from the drawn height, mm: half the end shake each way, and of all that carries it. */
  readonly lengthwise: (arbor: ArborId) => number;
  /** The same of two arbors against each other: what carries both moves neither. */
  readonly lengthwiseBetween: (first: ArborId, second: ArborId) => number;
  /** Steepest slope of the arbor to the upright, mm for each mm. */
  readonly tilt: (arbor: ArborId) => number;
  /** Greatest slope of two arbors against each other. */
  readonly tiltBetween: (first: ArborId, second: ArborId) => number;
  /** Where the arbor's holes alone make it stand at height z, mm from its place. */
  readonly standsOff: (arbor: ArborId, z: number) => Point;
}

/** What is known of one arbor: its own plays, the one that it rides on, and the lean of its holes. */
interface Play {
  readonly arbor: Arbor;
  readonly inside: Play | undefined;
  readonly inCase: readonly PlayBound[];
  readonly onArbor: readonly PlayBound[];
  readonly holes: HoleLean | undefined;
}

/** The shake of every arbor of a movement. */
export function shakeOf(movement: Movement): Shake {
  const parts = solidPartsOf(movement);
  const playOf = playsOf(movement, parts);
  const carriersOf = (id: ArborId): readonly ArborId[] => (parts.armOf.size === 0 ? [id] : [id, ...armsOf(id, parts)]);
  /** Those of each chain of carriers that the other does not share. */
  const apart = (first: ArborId, second: ArborId): readonly [readonly ArborId[], readonly ArborId[]] => {
    const [a, b] = [carriersOf(first), carriersOf(second)];
    return [a.filter((id) => !b.includes(id)), b.filter((id) => !a.includes(id))];
  };
  const sum = (ids: readonly ArborId[], of: (id: ArborId) => number): number =>
    ids.reduce((total, id) => total + of(id), 0);
  const asideAt = (z: number) => (id: ArborId) => asideOf(playOf(id), z) + offBy(playOf(id), z);
  const endShake = (id: ArborId): number => (parts.arbors.get(id)?.endShake ?? 0) / 2;
  const tilt = (id: ArborId): number => tiltOf(playOf(id)) + slopeOfHoles(playOf(id));
  return {
    aside: (id, z) => sum(carriersOf(id), asideAt(z)),
    between: (first, second, z) => {
      const along = alongAxis(playOf(first), playOf(second), (play) => onInside(play, z));
      const [a, b] = apart(first, second);
      const free = sum(a, asideAt(z)) + sum(b, asideAt(z));
      return along === undefined ? free : Math.min(free, along);
    },
    playsApart: (first, second, z) => {
      const [a, b] = apart(first, second);
      const play = (id: ArborId): number => asideOf(playOf(id), z);
      return [sum(a, play), sum(b, play)];
    },
    lengthwise: (id) => sum(carriersOf(id), endShake),
    lengthwiseBetween: (first, second) => {
      const [a, b] = apart(first, second);
      return sum(a, endShake) + sum(b, endShake);
    },
    tilt: (id) => sum(carriersOf(id), tilt),
    tiltBetween: (first, second) => {
      const along = alongAxis(playOf(first), playOf(second), tiltOnInside);
      const [a, b] = apart(first, second);
      const free = sum(a, tilt) + sum(b, tilt);
      return along === undefined ? free : Math.min(free, along);
    },
    standsOff: (id, z) => offsetAt(rootOf(playOf(id))?.holes, z),
  };
}

/** Looks the plays of arbors up, each made once. */
function playsOf(movement: Movement, { arbors, plates }: PartsIndex): (id: ArborId) => Play | undefined {
  const leans = movement.made.length === 0 ? undefined : holeLeans(movement);
  const plays = new Map<ArborId, Play>();
  // Pipes in a ring are refused on reading; the depth keeps a made-up document from hanging the check.
  const playOf = (id: ArborId, depth = 0): Play | undefined => {
    const known = plays.get(id);
    const arbor = arbors.get(id);
    if (known || !arbor || depth > arbors.size) return known;
    const inside = arbor.ridesOn === undefined ? undefined : playOf(arbor.ridesOn, depth + 1);
    const play = { arbor, inside, ...playBoundsOf(arbor, plates), holes: leans?.get(id) };
    plays.set(id, play);
    return play;
  };
  return playOf;
}

/** A pipe stands as the arbor at the bottom of it stands. */
function rootOf(play: Play | undefined): Play | undefined {
  let at = play;
  while (at?.inside) at = at.inside;
  return at;
}

function offsetAt(lean: HoleLean | undefined, z: number): Point {
  return lean ? { x: lean.at.x + lean.slope.x * z, y: lean.at.y + lean.slope.y * z } : { x: 0, y: 0 };
}

function offBy(play: Play | undefined, z: number): number {
  const { holes } = rootOf(play) ?? {};
  if (!holes) return 0;
  const { x, y } = offsetAt(holes, z);
  return Math.hypot(x, y);
}

function slopeOfHoles(play: Play | undefined): number {
  const { holes } = rootOf(play) ?? {};
  return holes ? Math.hypot(holes.slope.x, holes.slope.y) : 0;
}

/** Against the case: through the plates where the arbor runs in them, else through all that it rides on. */
function asideOf(play: Play | undefined, z: number): number {
  if (!play) return 0;
  const { inside, inCase } = play;
  if (!inside) return sideMovementAt(inCase, z);
  const riding = onInside(play, z) + asideOf(inside, z);
  return inCase.length > 0 ? Math.min(riding, sideMovementAt(inCase, z)) : riding;
}

/** Steepest slope by play alone, as `asideOf`. */
function tiltOf(play: Play | undefined): number {
  if (!play) return 0;
  const { inside, inCase } = play;
  if (!inside) return steepest(inCase);
  const riding = tiltOnInside(play) + tiltOf(inside);
  return inCase.length > 1 ? Math.min(riding, steepest(inCase)) : riding;
}

/** Of a pipe against the arbor inside it. */
function onInside({ arbor, inside, onArbor }: Play, z: number): number {
  if (!inside) return 0;
  return onArbor.length > 0 ? sideMovementAt(onArbor, z) : pipePlay(arbor, inside.arbor);
}

const tiltOnInside = ({ onArbor }: Play): number => steepest(onArbor);

/** What two arbors of one axis have between them, up to the one that both ride on; undefined for different axes. */
function alongAxis(first: Play | undefined, second: Play | undefined, own: (play: Play) => number): number | undefined {
  const upTo = new Map<Play, number>();
  let sum = 0;
  for (let play = first; play; play = play.inside) {
    upTo.set(play, sum);
    sum += own(play);
  }
  sum = 0;
  for (let play = second; play; play = play.inside) {
    const other = upTo.get(play);
    if (other !== undefined) return other + sum;
    sum += own(play);
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
