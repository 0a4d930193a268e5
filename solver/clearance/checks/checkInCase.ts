/** Parts that stand outside the case, and plates that do not go into the wall round them. */
import {
  containsPoint,
  endsOf,
  nearestOfSegments,
  type OutlineShape,
  type Point,
  piecesOf,
  pointAtAngle,
  type Segment,
  signedDistanceToRegion,
} from '../../geometry/index.ts';
import type { Movement, Plate, Wall } from '../../movement/schema.ts';
import type { PlacedMovement } from '../../planting/placed.ts';
import { TOUCH } from '../../tolerances.ts';
import type { Finding } from '../findings/finding.ts';
import { pieceOf } from '../solids/piece.ts';
import { type RingSolid, sweptRing } from '../solids/solid.ts';
import { solidsOf } from '../solids/solids.ts';

/** Least play of a plate in its wall, mm all round: a close sliding fit, common practice. */
const LEAST_PLAY = 0.02;
/** Points along an arc that are asked how far they stand out: the figure is told, the fault itself is exact. */
const ALONG = 32;

/** Rings beside a wall that goes round the work, at its heights: they are out of the case altogether. */
export function checkOutside(placed: PlacedMovement): readonly Finding[] {
  const rounds = placed.movement.walls.filter(({ inner }) => inner !== undefined);
  if (rounds.length === 0) return [];
  const found = new Map<string, Finding>();
  for (const solid of solidsOf(placed)) {
    if (solid.shape !== 'ring') continue;
    const wall = wallMissed(solid, rounds, placed.movement);
    if (!wall || found.has(solid.part)) continue;
    const { x, y } = solid.centre;
    found.set(solid.part, {
      key: `case outside ${solid.part}`,
      kind: 'case',
      severity: 'stops',
      parts: [solid.part, wall.id],
      at: [
        { x, y },
        { x, y },
      ],
      cause: { kind: 'outsideCase', piece: pieceOf(solid), wall: wall.id },
    });
  }
  return [...found.values()];
}

/** A wall of the ring's heights that it stands outside of, where it stands inside of none. */
function wallMissed(solid: RingSolid, walls: readonly Wall[], { plates }: Movement): Wall | undefined {
  const { centre } = sweptRing(solid);
  // Work beside the wall on a plate that goes on beyond it is no part that fell out of the case.
  const onPlate = plates.some(({ outline }) => containsPoint(outline, centre));
  const { from, to } = solid.heights;
  const high = walls.filter(({ levels }) => Math.min(levels.to, to) - Math.max(levels.from, from) > TOUCH);
  if (onPlate || high.some(({ outline }) => containsPoint(outline, centre))) return undefined;
  return high[0];
}

/** Every plate against each wall of its heights that goes round it. */
export function checkPlatesInWalls({ plates, walls }: Movement): readonly Finding[] {
  return plates.flatMap((plate) =>
    walls.flatMap((wall): Finding[] => {
      const shares = Math.min(plate.levels.to, wall.levels.to) - Math.max(plate.levels.from, wall.levels.from) > TOUCH;
      if (!shares || !wall.inner) return [];
      const play = playIn(plate.outline, wall.inner);
      if (play === undefined || play >= LEAST_PLAY - TOUCH) return [];
      return [
        {
          key: `case plate ${plate.id} ${wall.id}`,
          kind: 'case',
          severity: 'stops',
          parts: [plate.id, wall.id],
          gap: play,
          wanted: LEAST_PLAY,
          cause: { kind: 'plateInWall', plate: plate.id, wall: wall.id, play },
        },
      ];
    }),
  );
}

const known = new WeakMap<OutlineShape, WeakMap<OutlineShape, number | undefined>>();

/** Outlines are immutable, so each two are measured once. */
function playIn(plate: Plate['outline'], inner: Plate['outline']): number | undefined {
  const ofPlate = known.get(plate) ?? new WeakMap<OutlineShape, number | undefined>();
  known.set(plate, ofPlate);
  if (!ofPlate.has(inner)) ofPlate.set(inner, findPlay(plate, inner));
  return ofPlate.get(inner);
}

/**
 * Least distance between a plate and the hollow that it stands in, mm; negative where it stands out of it, by as much as
 * the farthest of its corners and of points along its arcs does; undefined where it stands beside it.
 */
function findPlay(plate: Plate['outline'], inner: Plate['outline']): number | undefined {
  if (plate.kind === 'circle' && inner.kind === 'circle') {
    const [[x, y], [u, v]] = [plate.centre, inner.centre];
    const apart = Math.hypot(x - u, y - v);
    return apart >= plate.radius + inner.radius ? undefined : inner.radius - plate.radius - apart;
  }
  const region = { outer: inner, holes: [] };
  const pieces = piecesOf(plate);
  const farthest = Math.max(
    ...pieces.flatMap((piece) => along(piece).map((at) => signedDistanceToRegion(region, at).distance)),
  );
  const others = piecesOf(inner);
  const nearest = Math.min(
    ...pieces.flatMap((piece) => others.map((other) => nearestOfSegments(piece, other).distance)),
  );
  if (farthest <= 0) return nearest < TOUCH ? Math.min(0, -farthest) : nearest;
  const meets = nearest < TOUCH || pieces.some((piece) => containsPoint(inner, endsOf(piece)[0]));
  return meets || others.some((other) => containsPoint(plate, endsOf(other)[0])) ? -farthest : undefined;
}

/** Points of a piece: its ends, and of an arc enough between them to find where it stands out. */
function along(piece: Segment): readonly Point[] {
  if (piece.kind === 'line') return endsOf(piece);
  const { centre, radius, start, sweep } = piece;
  return Array.from({ length: ALONG + 1 }, (_, i) => pointAtAngle(centre, radius, start + (sweep * i) / ALONG));
}
