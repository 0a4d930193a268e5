/**
 * What a pipe stands between, and the end shake that this leaves it: a shoulder, collar, wheel or plate below and one above.
 *
 * A pipe of its own turning is stopped by whatever of its axis overlaps it in plan and does not move with it: parts
 * of the arbor that it rides on, of other pipes, and plates round their bearings. Its end shake is the two gaps
 * together, its neighbours drawn in the middle of their own. The lengths between the faces each have an error of their
 * own; the distance of the two stops is one length where one body has both.
 */
import { asPoint, containsPoint, nearestOnOutline } from '../../geometry/index.ts';
import type { ArborId } from '../../movement/ids.ts';
import type { Arbor, Movement, Plate } from '../../movement/schema.ts';
import { TOUCH } from '../../tolerances.ts';
import { axisRoots } from '../gaps/pairTerms.ts';
import { arborSolids } from '../solids/arborSolids.ts';
import { type PartsIndex, solidBodyOf, solidPartsOf } from '../solids/partsIndex.ts';
import { type Piece, pieceOf } from '../solids/piece.ts';
import type { Heights, RingSolid } from '../solids/solid.ts';
import { wheelSolids } from '../solids/wheelSolids.ts';
import { type StackPiece, type StackTolerance, sumsOf } from './stackPiece.ts';

/** What stops a pipe on one side. */
export interface PipeStop extends Piece {
  /** The arbor that it moves with; none for a plate. */
  readonly arbor?: ArborId;
  /** Height of its face and of the pipe's face that meets it, mm; the room between them. */
  readonly at: number;
  readonly face: number;
  readonly gap: number;
  /** Radius from which its metal stands, mm. */
  readonly inner: number;
}

/** A pipe between its stops. */
export interface PipeStack {
  readonly kind: 'pipe';
  readonly arbor: ArborId;
  readonly below?: PipeStop;
  readonly above?: PipeStop;
  /** The pipe's own lengths between the faces that meet its stops. */
  readonly pieces: readonly StackPiece[];
  /** End shake that the stops leave, mm; undefined where nothing stops it on one side. */
  readonly room?: number;
  /** As the document states it, mm. */
  readonly endShake: number;
  /** So much the stops can move to or from each other by the end shake of their own arbors, mm. */
  readonly neighbours: number;
  /** The room when all errors add up, and within two standard deviations, mm: least and greatest. */
  readonly worst?: readonly [number, number];
  readonly statistical?: readonly [number, number];
}

/** A ring of the axis with the arbor that it moves with. */
interface AxisRing extends Heights, Piece {
  readonly body?: ArborId;
  readonly inner: number;
  readonly outer: number;
}

/** The stack of a pipe that is not fixed to what it rides on. */
export function pipeStackOf(movement: Movement, pipe: Arbor, tolerance: StackTolerance): PipeStack {
  const parts = solidPartsOf(movement);
  const rings = axisRings(movement, pipe, parts);
  const own = rings.filter(({ body }) => body === pipe.id);
  const others = rings.filter(({ body }) => body !== pipe.id);
  const below = nearestStop(own, others, 'below');
  const above = nearestStop(own, others, 'above');
  const pieces = below && above ? piecesBetween(pipe, own, { from: below.face, to: above.face }, parts) : [];
  const base = { kind: 'pipe', arbor: pipe.id, pieces, endShake: pipe.endShake } as const;
  if (!below || !above) return { ...base, neighbours: 0, ...(below ? { below } : {}), ...(above ? { above } : {}) };
  const room = below.gap + above.gap;
  const errors = [
    ...pieces.map(({ plusMinus = tolerance.piece }) => plusMinus),
    ...stopErrors(below, above, tolerance),
  ];
  return {
    ...base,
    below,
    above,
    room,
    neighbours: below.arbor === above.arbor ? 0 : shakeOfStop(below, parts) + shakeOfStop(above, parts),
    ...sumsOf(room, errors),
  };
}

/** Errors of where the stops stand: one length on one body, each its own on two. */
function stopErrors(below: PipeStop, above: PipeStop, { piece, plates }: StackTolerance): number[] {
  if (below.arbor === above.arbor) return [below.arbor === undefined ? plates : piece];
  return [below, above].map(({ arbor }) => (arbor === undefined ? plates : piece));
}

function shakeOfStop({ arbor }: PipeStop, { arbors }: PartsIndex): number {
  return arbor === undefined ? 0 : (arbors.get(arbor)?.endShake ?? 0) / 2;
}

/** Everything round on the pipe's axis, bushes and plates included. */
function axisRings(movement: Movement, pipe: Arbor, parts: PartsIndex): AxisRing[] {
  const roots = axisRoots(movement);
  const axis = movement.arbors.filter(({ id }) => roots.get(id) === roots.get(pipe.id));
  const turning = axis.flatMap((arbor): AxisRing[] => {
    const drafts = [
      ...arborSolids(arbor, { x: 0, y: 0 }, parts),
      ...(parts.wheelsOn.get(arbor.id) ?? []).flatMap((wheel) => wheelSolids(wheel, { x: 0, y: 0 }, parts)),
    ].filter((draft): draft is Omit<RingSolid, 'index'> => draft.shape === 'ring');
    const body = solidBodyOf(arbor.id, parts);
    const rings = drafts.map(
      ({ heights, inner, outer, ...solid }): AxisRing => ({ ...pieceOf(solid), body, inner, outer, ...heights }),
    );
    return [...rings, ...bushesIn(arbor, body)];
  });
  return [...turning, ...movement.plates.flatMap((plate) => plateRing(movement, plate, pipe, axis))];
}

/** A bush in a pipe stands farther in than the pipe's bore. */
function bushesIn(arbor: Arbor, body: ArborId): AxisRing[] {
  if (arbor.ridesOn === undefined) return [];
  return arbor.bearings.flatMap(({ plate, at, bore, length }): AxisRing[] => {
    if (plate !== undefined || at === undefined || bore >= arbor.diameter) return [];
    return [
      { part: arbor.id, piece: 'bush', body, inner: bore / 2, outer: arbor.diameter / 2, from: at, to: at + length },
    ];
  });
}

/** A plate round the axis: from its bearing, or from the edge of the opening that the axis stands in. */
function plateRing(movement: Movement, plate: Plate, pipe: Arbor, axis: readonly Arbor[]): AxisRing[] {
  const bores = axis.flatMap(({ bearings }) => bearings.filter((b) => b.plate === plate.id).map(({ bore }) => bore));
  const opening = movement.openings.find(
    (each) => each.plate === plate.id && containsPoint(each.outline, asPoint(pipe.at)),
  );
  const inner = Math.max(
    0,
    ...bores.map((bore) => bore / 2),
    opening ? nearestOnOutline(opening.outline, asPoint(pipe.at)).distance : 0,
  );
  // A plate that the axis passes through without a bearing has a hole of unknown size: it is not counted on.
  if (inner === 0 || !containsPoint(plate.outline, asPoint(pipe.at))) return [];
  return [{ part: plate.id, piece: 'whole', inner, outer: Number.POSITIVE_INFINITY, ...plate.levels }];
}

function nearestStop(
  own: readonly AxisRing[],
  others: readonly AxisRing[],
  side: 'below' | 'above',
): PipeStop | undefined {
  let best: PipeStop | undefined;
  for (const mine of own) {
    for (const other of others) {
      if (Math.min(mine.outer, other.outer) - Math.max(mine.inner, other.inner) < TOUCH) continue;
      const isBelow = other.from + other.to < mine.from + mine.to;
      if (isBelow !== (side === 'below')) continue;
      const [face, at] = isBelow ? [mine.from, other.to] : [mine.to, other.from];
      const gap = isBelow ? face - at : at - face;
      if (best && gap >= best.gap) continue;
      const { body, inner } = other;
      best = { ...pieceOf(other), at, face, gap, inner, ...(body === undefined ? {} : { arbor: body }) };
    }
  }
  return best;
}

/** The pipe's lengths from one face to the other: its wheels, hubs and collars, and what is bare between them. */
function piecesBetween(pipe: Arbor, own: readonly AxisRing[], { from, to }: Heights, parts: PartsIndex): StackPiece[] {
  const pieces: StackPiece[] = [];
  const solid = own
    .filter((ring) => ring.part !== pipe.id || ring.piece === 'collar')
    .filter((ring) => ring.to > from && ring.from < to)
    .sort((a, b) => a.from - b.from || a.to - b.to);
  let reached = from;
  const bare = (upTo: number): void => {
    if (upTo > reached + TOUCH) pieces.push({ part: pipe.id, kind: 'bare', from: reached, to: upTo });
  };
  for (const ring of solid) {
    bare(Math.min(ring.from, to));
    const kind = ring.part === pipe.id ? 'collar' : ring.piece === 'hub' ? 'hub' : 'wheel';
    const own = plusMinusOf(ring, kind, parts);
    pieces.push({
      part: ring.part,
      kind,
      from: ring.from,
      to: ring.to,
      ...(own === undefined ? {} : { plusMinus: own }),
    });
    reached = Math.max(reached, ring.to);
  }
  bare(to);
  return pieces;
}

/** The ± that is stated of one ring's own length, mm. */
function plusMinusOf(ring: AxisRing, kind: StackPiece['kind'], { movement, arbors }: PartsIndex): number | undefined {
  if (kind === 'collar') {
    const collars = [...arbors.values()].find(({ id }) => id === ring.part)?.collars ?? [];
    return collars.find(({ from, to }) => from === ring.from && to === ring.to)?.plusMinus;
  }
  const wheel = movement.wheels.find(({ id }) => id === ring.part);
  return kind === 'hub' ? wheel?.hub?.plusMinus : wheel?.thicknessPlusMinus;
}
