/**
 * How much room a placing leaves: the smallest surplus over what every pair owes, quickly and again and again.
 *
 * Pairs that can never meet in height are left out once and for all. What shake and run-out take does not depend on
 * the places, so each pair's want is one number. Parts must also stay inside the case: a gap to a wall alone would be
 * kept by an arbor outside it.
 */

import {
  containsPoint,
  nearestOnOutline,
  type OutlineShape,
  type Point,
  signedDistanceToRegion,
} from '../../geometry/index.ts';
import type { PlacedMovement } from '../../planting/placed.ts';
import { ONE_PLACE } from '../../tolerances.ts';
import { gapContextOf, heightGapOf, lengthwiseOfPair, takenAside } from '../gaps/gapReadings.ts';
import { pairTermsFor } from '../gaps/pairTerms.ts';
import { planGapOf } from '../gaps/planGap.ts';
import type { RegionSolid, RingSolid, Solid } from '../solids/solid.ts';
import { movedSolids, solidsOf } from '../solids/solids.ts';

/** How well a placing clears. */
export interface Room {
  /** Smallest surplus over all pairs that the placing can change, mm; negative where something is too near. */
  readonly surplus: number;
  /** Sum of all shortfalls, mm: tells a search how far it is from any answer. */
  readonly shortfall: number;
}

/** One want: a ring against another solid, against the hollow it must stay in, or a hole against its plate's edge. */
type Want =
  | { readonly kind: 'pair'; readonly first: number; readonly second: number; readonly wanted: number }
  | { readonly kind: 'inside'; readonly ring: number; readonly hollow: OutlineShape; readonly wanted: number }
  | { readonly kind: 'inPlate'; readonly ring: number; readonly plate: RegionSolid; readonly wanted: number };

/** Metal left round a hole at the edge of a plate, mm: habit of the trade. */
const EDGE = 0.5;

/** Measures room for every placing of one movement. */
export interface RoomMeasure {
  readonly of: (placed: PlacedMovement) => Room;
  /** From now on leaves out what came to the same in every placing so far: a depth's own distance, say. */
  readonly narrow: () => void;
}

/** A measure of room for the placings of one movement. */
export function roomMeasureOf(placed: PlacedMovement): RoomMeasure {
  const solids = solidsOf(placed);
  let wants = [...pairWants(placed, solids), ...caseWants(placed, solids)];
  const least = new Map<Want, number>();
  const most = new Map<Want, number>();
  return {
    of: (other) => {
      const now = movedSolids(solids, other).solids;
      let surplus = Number.POSITIVE_INFINITY;
      let shortfall = 0;
      for (const want of wants) {
        const left = leftOf(want, now);
        least.set(want, Math.min(left, least.get(want) ?? left));
        most.set(want, Math.max(left, most.get(want) ?? left));
        if (left < surplus) surplus = left;
        if (left < 0) shortfall -= left;
      }
      return { surplus, shortfall };
    },
    narrow: () => {
      const varied = wants.filter((want) => (most.get(want) ?? 0) - (least.get(want) ?? 0) > ONE_PLACE);
      if (varied.length > 0) wants = varied;
    },
  };
}

function leftOf(want: Want, solids: readonly Solid[]): number {
  if (want.kind === 'pair') {
    const [a, b] = [solids[want.first], solids[want.second]];
    return a && b ? (planGapOf(a, b)?.gap ?? Number.POSITIVE_INFINITY) - want.wanted : Number.POSITIVE_INFINITY;
  }
  const ring = solids[want.ring] as RingSolid; // wants of the case are made for rings only
  if (want.kind === 'inside') {
    const { distance } = nearestOnOutline(want.hollow, ring.centre);
    return (containsPoint(want.hollow, ring.centre) ? distance : -distance) - want.wanted;
  }
  return -signedDistanceToRegion(want.plate.region, ring.centre).distance - want.wanted;
}

/** Pairs on different points that share heights, with all that they owe. */
function pairWants(placed: PlacedMovement, solids: readonly Solid[]): Want[] {
  const termsOf = pairTermsFor(placed.movement);
  const context = gapContextOf(placed, solids);
  const canChange = changingPairs(placed);
  const wants: Want[] = [];
  solids.forEach((first, i) => {
    for (const second of solids.slice(i + 1)) {
      if (first.shape !== 'ring' && second.shape !== 'ring') continue;
      const terms = termsOf(first, second);
      if (!terms || !canChange(first, second)) continue;
      if (heightGapOf(first, second) - lengthwiseOfPair(first, second, context) >= terms.height) continue;
      const wanted = terms.plan + takenAside(first, second, context);
      wants.push({ kind: 'pair', first: first.index, second: second.index, wanted });
    }
  });
  return wants;
}

/** Pairs at one place, and pairs of planted points, keep their gap whatever the search does. */
function changingPairs({ places }: PlacedMovement): (first: Solid, second: Solid) => boolean {
  const moves = ({ arbor, part }: Solid): boolean => {
    const place = places.get(arbor ?? (part as never)); // a post's part is a point; other ids are no points, and not found
    return place?.state === 'loose';
  };
  return (first, second) => {
    if (first.shape === 'ring' && second.shape === 'ring' && first.arbor !== undefined && second.arbor !== undefined) {
      const [a, b] = [places.get(first.arbor), places.get(second.arbor)];
      if (a && b && a.x === b.x && a.y === b.y) return false;
    }
    return moves(first) || moves(second);
  };
}

/** Loose arbors and posts stay in the hollow of every wall, and their holes in their plates. */
function caseWants({ movement, places }: PlacedMovement, solids: readonly Solid[]): Want[] {
  const plates = solids.filter((solid): solid is RegionSolid => solid.role === 'plate' && solid.shape === 'region');
  const hollows = movement.walls.flatMap(({ inner }) => (inner ? [inner as OutlineShape] : []));
  const wants: Want[] = [];
  const done = new Set<string>();
  for (const solid of solids) {
    const id = solid.arbor ?? solid.part;
    if (solid.shape !== 'ring' || done.has(id) || places.get(id as never)?.state !== 'loose') continue; // as in `changingPairs`
    done.add(id);
    for (const hollow of hollows) wants.push({ kind: 'inside', ring: solid.index, hollow, wanted: 0 });
    const bearings = movement.arbors.find((arbor) => arbor.id === id)?.bearings ?? [];
    for (const bearing of bearings) {
      const plate = plates.find(({ part }) => part === bearing.plate);
      const wanted = Math.max(bearing.bore, bearing.outer ?? 0) / 2 + EDGE;
      if (plate) wants.push({ kind: 'inPlate', ring: solid.index, plate, wanted });
    }
  }
  return wants;
}

/** Bounds of the case, or of all that is planted, with some room: where places are first looked for. */
export function groundOf(placed: PlacedMovement): { readonly middle: Point; readonly reach: number } {
  const outlines = [
    ...placed.movement.walls.map(({ inner, outline }) => inner ?? outline),
    ...placed.movement.plates.map(({ outline }) => outline),
  ];
  const corners: Point[] = outlines.flatMap((outline): Point[] =>
    outline.kind === 'circle'
      ? [
          { x: outline.centre[0] - outline.radius, y: outline.centre[1] - outline.radius },
          { x: outline.centre[0] + outline.radius, y: outline.centre[1] + outline.radius },
        ]
      : outline.vertices.map(({ x, y }): Point => ({ x: x, y: y })),
  );
  const points = corners.length > 0 ? corners : [...placed.places.values()].map(({ x, y }): Point => ({ x: x, y: y }));
  const xs = points.map(({ x }) => x);
  const ys = points.map(({ y }) => y);
  const middle: Point = { x: (Math.min(...xs) + Math.max(...xs)) / 2, y: (Math.min(...ys) + Math.max(...ys)) / 2 };
  const reach = Math.max(Math.max(...xs) - middle.x, Math.max(...ys) - middle.y, 1);
  return { middle, reach };
}
