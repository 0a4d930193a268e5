/**
 * What stands between the plates on an arbor, and what is left of its end shake when every piece is a little off.
 *
 * The pieces are its wheels, hubs and collars and the bare lengths between them, each turned to a length of its own.
 * Their sum and the end shake are the distance of the plates. Worst case adds all errors; the statistical one is the
 * root of the sum of their squares (error propagation for independent errors, common practice in tolerancing).
 */

import type { ArborId } from '../../movement/ids.ts';
import type { Arbor, Movement, Plate } from '../../movement/schema.ts';
import { TOUCH } from '../../tolerances.ts';
import { solidPartsOf } from '../solids/partsIndex.ts';
import { type PipeStack, pipeStackOf } from './pipeStack.ts';
import { type Range, type StackPiece, type StackTolerance, sumsOf } from './stackPiece.ts';

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
      /** Room that wheels, hubs and collars leave between the plates, those that touch seated against each other, mm. */
      readonly room: number;
      /** As the document states it, mm. */
      readonly endShake: number;
      /** The end shake that results: what the shoulders are turned for, and never more than the room, mm. */
      readonly left: number;
      /** That when all errors add up, and within two standard deviations, mm: least and greatest. */
      readonly worst: Range;
      readonly statistical: Range;
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
  const parts = solidPartsOf(movement);
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
  const plateDistance = top - bottom;
  const { endShake } = arbor;
  const room = plateDistance - seatedLength(arbor, movement, bottom, top);
  const left = hasShoulders(arbor) ? Math.min(endShake, room) : room;
  const errors = [tolerance.plates, ...pieces.map(({ plusMinus = tolerance.piece }) => plusMinus)];
  return {
    kind: 'stack',
    arbor: id,
    between: [lower, upper],
    plateDistance,
    length: plateDistance - endShake,
    pieces,
    room,
    endShake,
    left,
    ...sumsOf(left, errors),
    outside,
  };
}

/** The plates that an arbor's bearings are in, lowest first. */
function platesOf(arbor: Arbor, plates: ReadonlyMap<string, Plate>): Plate[] {
  const found = new Set(arbor.bearings.flatMap(({ plate }) => (plate === undefined ? [] : (plates.get(plate) ?? []))));
  return [...found].sort((a, b) => a.levels.from - b.levels.from);
}

/** Shoulders are turned for the end shake that is stated; without them what stands on the arbor meets the plates. */
function hasShoulders({ bearings, diameter, endShake }: Arbor): boolean {
  return endShake > 0 && bearings.every(({ plate, pivot }) => plate === undefined || pivot < diameter - TOUCH);
}

function standingPieces(arbor: Arbor, movement: Movement): StackPiece[] {
  const wheels = (solidPartsOf(movement).wheelsOn.get(arbor.id) ?? []).flatMap((wheel): StackPiece[] => {
    const { hub, level, thickness, thicknessPlusMinus } = wheel;
    const body = pieceOf(wheel.id, 'wheel', { from: level, to: level + thickness, plusMinus: thicknessPlusMinus });
    return hub ? [body, pieceOf(wheel.id, 'hub', hub)] : [body];
  });
  const collars = arbor.collars.map((collar) => pieceOf(arbor.id, 'collar', collar));
  return [...wheels, ...collars].sort((a, b) => a.from - b.from || a.to - b.to);
}

function pieceOf(
  part: StackPiece['part'],
  kind: StackPiece['kind'],
  { from, to, plusMinus }: { readonly from: number; readonly to: number; readonly plusMinus?: number | undefined },
): StackPiece {
  return { part, kind, from, to, ...(plusMinus === undefined ? {} : { plusMinus }) };
}

/** A body on an arbor, with the height that its upper face had on the drawing. */
interface Body {
  readonly from: number;
  readonly to: number;
  readonly drawnTo: number;
}

/**
 * Length of everything on an arbor as it is put on: the bare lengths between stay as drawn, and of parts drawn against each
 * other each has its whole thickness, though one was found thicker than the drawing left room for.
 */
function seatedLength(arbor: Arbor, movement: Movement, bottom: number, top: number): number {
  let length = 0;
  let last: Body | undefined;
  for (const body of bodiesOf(arbor, movement)) {
    if (body.to <= bottom || body.from >= top) continue;
    const isSeated = last !== undefined && Math.abs(body.from - last.drawnTo) <= TOUCH;
    if (!last || isSeated) length += body.to - body.from;
    else if (body.to > last.to) length += body.to - last.to;
    if (!last || body.to > last.to) last = body;
  }
  return length;
}

/** Wheels, each one body with its hub, and collars, lowest first. */
function bodiesOf(arbor: Arbor, movement: Movement): readonly Body[] {
  const wheels = (solidPartsOf(movement).wheelsOn.get(arbor.id) ?? []).map((wheel): Body => {
    const { level, thickness, hub, asDrawn } = wheel;
    const [from, high] = [Math.min(level, hub?.from ?? level), hub?.to ?? level];
    const [to, drawnTo] = [thickness, asDrawn?.thickness ?? thickness].map((thick) => Math.max(level + thick, high));
    return { from, to: to ?? high, drawnTo: drawnTo ?? high };
  });
  const collars = arbor.collars.map(({ from, to }): Body => ({ from, to, drawnTo: to }));
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
