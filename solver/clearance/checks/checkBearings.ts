/** Bearings that the metal around them cannot hold: outside their plate, over an opening, or into one another. */

import type { Point } from '../../geometry/index.ts';
import { signedDistanceToRegion } from '../../geometry/index.ts';
import type { Arbor, Plate } from '../../movement/schema.ts';
import type { PlacedMovement } from '../../planting/placed.ts';
import type { Finding } from '../findings/finding.ts';
import { axisRoots } from '../gaps/pairTerms.ts';
import { nearTreeOf } from '../planckAdapter.ts';
import { caseSolids } from '../solids/caseSolids.ts';

/** A bearing's hole, or the bush in it, where it is drilled. */
interface Hole {
  readonly arbor: Arbor;
  readonly plate: Plate;
  readonly at: Point;
  readonly radius: number;
}

/** Everything that is wrong with the bearings of a placed movement. */
export function checkBearings(placed: PlacedMovement): readonly Finding[] {
  const holes = holesOf(placed);
  return [...thickPivots(placed), ...brokenOut(placed, holes), ...overlapping(placed, holes)];
}

function holesOf({ movement, places }: PlacedMovement): Hole[] {
  const plates = new Map<string, Plate>(movement.plates.map((plate) => [plate.id, plate]));
  return movement.arbors.flatMap((arbor) =>
    arbor.bearings.flatMap((bearing): Hole[] => {
      const plate = bearing.plate === undefined ? undefined : plates.get(bearing.plate);
      const at = places.get(arbor.id);
      if (!plate || !at || bearing.kind === 'cock' || bearing.kind === 'collar') return [];
      return [{ arbor, plate, at, radius: Math.max(bearing.bore, bearing.outer ?? 0) / 2 }];
    }),
  );
}

function thickPivots({ movement }: PlacedMovement): Finding[] {
  return movement.arbors.flatMap((arbor): Finding[] => {
    const pivot = Math.max(0, ...arbor.bearings.map((bearing) => bearing.pivot));
    // A pipe's bearings run on what is inside it: their pivots are the inner arbor's.
    if (arbor.ridesOn !== undefined || pivot <= arbor.diameter) return [];
    const cause = { kind: 'pivotThick', arbor: arbor.id, pivot, diameter: arbor.diameter } as const;
    return [{ key: `bearing pivot ${arbor.id}`, kind: 'bearing', severity: 'warns', parts: [arbor.id], cause }];
  });
}

function brokenOut({ movement }: PlacedMovement, holes: readonly Hole[]): Finding[] {
  const regions = new Map(
    caseSolids(movement).flatMap((solid) =>
      solid.shape === 'region' ? [[solid.part as string, solid.region] as const] : [],
    ),
  );
  return holes.flatMap(({ arbor, plate, at, radius }): Finding[] => {
    const region = regions.get(plate.id);
    if (!region) return [];
    const near = signedDistanceToRegion(region, { x: at.x, y: at.y });
    const metal = -near.distance - radius;
    if (metal > 0) return [];
    return [
      {
        key: `bearing ${arbor.id} ${plate.id}`,
        kind: 'bearing',
        severity: 'stops',
        parts: [arbor.id, plate.id],
        gap: metal,
        at: [
          { x: at.x, y: at.y },
          { x: near.a.x, y: near.a.y },
        ],
        cause: { kind: 'breaksOut', arbor: arbor.id, plate: plate.id },
      },
    ];
  });
}

function overlapping({ movement }: PlacedMovement, holes: readonly Hole[]): Finding[] {
  const roots = axisRoots(movement);
  const boxes = holes.map(({ at, radius: r }) => [at.x - r, at.y - r, at.x + r, at.y + r] as const);
  const tree = nearTreeOf(boxes);
  const found: Finding[] = [];
  holes.forEach((first, index) => {
    const box = boxes[index];
    if (!box) return;
    tree.near(box, 0, (other) => {
      const second = holes[other];
      if (!second || other <= index || second.plate !== first.plate) return;
      if (roots.get(first.arbor.id) === roots.get(second.arbor.id)) return;
      const gap = Math.hypot(second.at.x - first.at.x, second.at.y - first.at.y) - first.radius - second.radius;
      if (gap > 0) return;
      const at = (hole: Hole): Point => ({ x: hole.at.x, y: hole.at.y });
      found.push({
        key: `bearing ${first.arbor.id} ${second.arbor.id} ${first.plate.id}`,
        kind: 'bearing',
        severity: 'stops',
        parts: [first.arbor.id, second.arbor.id],
        gap,
        at: [at(first), at(second)],
        cause: { kind: 'bearingsMeet', arbors: [first.arbor.id, second.arbor.id], plate: first.plate.id },
      });
    });
  });
  return found;
}
