/**
 * What stands between the plates on an arbor, and what is left of its end shake when every piece is a little off.
 *
 * The pieces are its wheels, hubs and collars and the bare lengths between them, each turned to a length of its own.
 * Their sum and the end shake are the distance of the plates. Worst case adds all errors; the statistical one is the
 * root of the sum of their squares (error propagation for independent errors, common practice in tolerancing).
 */

import type { ArborId } from '../../movement/ids.ts';
import type { Arbor, Movement, Plate } from '../../movement/schema.ts';
import { partsOf } from '../solids/partsIndex.ts';
import { type PipeStack, pipeStackOf } from './pipeStack.ts';
import type { StackPiece, StackTolerance } from './stackPiece.ts';

/** The pieces on an arbor with the end shake they leave, or why it cannot be told. */
export type Stack =
  | {
      readonly kind: 'stack';
      readonly arbor: ArborId;
      readonly between: readonly [Plate, Plate];
      /** Distance of the plates, and of the outermost shoulders: less by the end shake, mm. */
      readonly plateDistance: number;
      readonly length: number;
      readonly pieces: readonly StackPiece[];
      /** Room that wheels, hubs and collars as drawn leave between the plates, mm. */
      readonly room: number;
      readonly endShake: number;
      /** End shake when all errors add up, and within two standard deviations, mm: least and greatest. */
      readonly worst: readonly [number, number];
      readonly statistical: readonly [number, number];
      /** What stands in front of the upper plate, and behind the lower one. */
      readonly outside: readonly StackPiece[];
    }
  | PipeStack
  | { readonly kind: 'none'; readonly why: NoStack };

/** Why an arbor has no stack. */
export type NoStack =
  | { readonly kind: 'unknown' | 'notBetweenPlates'; readonly arbor: ArborId }
  | { readonly kind: 'fixed'; readonly arbor: ArborId; readonly on: ArborId };

/**
 * The stack of an arbor: between its two plates, or for a pipe between what stops it on its axis.
 *
 * @param tolerance  the movement's own when absent
 */
export function stackOf(movement: Movement, id: ArborId, tolerance: StackTolerance = movement.stackTolerance): Stack {
  const parts = partsOf(movement);
  const arbor = parts.arbors.get(id);
  if (!arbor) return { kind: 'none', why: { kind: 'unknown', arbor: id } };
  if (arbor.turns === 'withArbor') {
    return { kind: 'none', why: { kind: 'fixed', arbor: id, on: arbor.ridesOn ?? id } };
  }
  if (arbor.ridesOn !== undefined) return pipeStackOf(movement, arbor, tolerance);
  const plates = platesOf(arbor, parts.plates);
  const [lower, upper] = [plates[0], plates[plates.length - 1]];
  if (!lower || !upper || lower === upper || upper.levels.from <= lower.levels.to) {
    return { kind: 'none', why: { kind: 'notBetweenPlates', arbor: id } };
  }
  const [bottom, top] = [lower.levels.to, upper.levels.from];
  const standing = standingPieces(arbor, movement);
  const inside = standing.filter(({ from, to }) => to > bottom && from < top);
  const outside = standing.filter(({ from, to }) => to <= bottom || from >= top);
  const pieces = withBareLengths(arbor, inside, bottom, top);
  const span = inside.length === 0 ? 0 : Math.max(...inside.map((p) => p.to)) - Math.min(...inside.map((p) => p.from));
  const plateDistance = top - bottom;
  const { endShake } = arbor;
  const worst = tolerance.plates + pieces.length * tolerance.piece;
  const likely = Math.hypot(tolerance.plates, Math.sqrt(pieces.length) * tolerance.piece);
  return {
    kind: 'stack',
    arbor: id,
    between: [lower, upper],
    plateDistance,
    length: plateDistance - endShake,
    pieces,
    room: plateDistance - span,
    endShake,
    worst: [endShake - worst, endShake + worst],
    statistical: [endShake - likely, endShake + likely],
    outside,
  };
}

/** The plates that an arbor's bearings are in, lowest first. */
function platesOf(arbor: Arbor, plates: ReadonlyMap<string, Plate>): Plate[] {
  const found = new Set(arbor.bearings.flatMap(({ plate }) => (plate === undefined ? [] : (plates.get(plate) ?? []))));
  return [...found].sort((a, b) => a.levels.from - b.levels.from);
}

function standingPieces(arbor: Arbor, movement: Movement): StackPiece[] {
  const wheels = (partsOf(movement).wheelsOn.get(arbor.id) ?? []).flatMap((wheel): StackPiece[] => {
    const body = { part: wheel.id, kind: 'wheel', from: wheel.level, to: wheel.level + wheel.thickness } as const;
    const { hub } = wheel;
    return hub ? [body, { part: wheel.id, kind: 'hub', from: hub.from, to: hub.to }] : [body];
  });
  const collars = arbor.collars.map(({ from, to }): StackPiece => ({ part: arbor.id, kind: 'collar', from, to }));
  return [...wheels, ...collars].sort((a, b) => a.from - b.from || a.to - b.to);
}

/** The same with the bare lengths between, below and above, so that the pieces fill the distance of the plates. */
function withBareLengths(arbor: Arbor, pieces: readonly StackPiece[], bottom: number, top: number): StackPiece[] {
  const all: StackPiece[] = [];
  let reached = bottom;
  const bare = (to: number): void => {
    if (to > reached) all.push({ part: arbor.id, kind: 'bare', from: reached, to });
  };
  for (const piece of pieces) {
    bare(piece.from);
    all.push(piece);
    reached = Math.max(reached, piece.to);
  }
  bare(top);
  return all;
}
