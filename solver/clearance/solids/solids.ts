/**
 * The solids of a placed movement: rings (wheels, hubs, collars, arbors, pipes, posts, what a hand sweeps) and filled
 * regions (walls, plates), each between two heights.
 *
 * Everything that turns is a ring, so a gap in plan is a difference of radii and distances, exact, over the whole
 * turn. Where a wheel, hub or collar surrounds its arbor, the arbor's own surface is inside it and is left out at
 * those heights.
 */
import type { Point } from '../../geometry/index.ts';
import type { ArborId, PointId } from '../../movement/ids.ts';
import type { Place, PlacedMovement } from '../../planting/placed.ts';
import { arborSolids } from './arborSolids.ts';
import { caseSolids, postSolids } from './caseSolids.ts';
import { armsOf, type PartsIndex, solidPartsOf } from './partsIndex.ts';
import type { CarryingArm, Draft, Solid } from './solid.ts';
import { wheelSolids } from './wheelSolids.ts';

/** Every solid of the placed movement, in the order of the document. */
export function solidsOf({ movement, places }: PlacedMovement): readonly Solid[] {
  const parts = solidPartsOf(movement);
  const drafts: Draft[] = [];
  const at = (id: PointId): Point | undefined => centreOf(places.get(id));
  for (const wheel of movement.wheels) {
    const centre = at(wheel.arbor);
    if (centre) drafts.push(...carried(wheelSolids(wheel, centre, parts), wheel.arbor, at, parts));
  }
  for (const arbor of movement.arbors) {
    const centre = at(arbor.id);
    if (centre) drafts.push(...carried(arborSolids(arbor, centre, parts), arbor.id, at, parts));
  }
  for (const post of movement.posts) {
    const centre = at(post.id);
    if (centre) drafts.push(...postSolids(post, centre, movement));
  }
  drafts.push(...caseSolids(movement));
  return drafts.map((draft, index) => ({ ...draft, index }));
}

function centreOf(place: Place | undefined): Point | undefined {
  return place && { x: place.x, y: place.y };
}

/** Notes the arms on solids whose arbor is carried round. */
function carried(
  drafts: readonly Draft[],
  arbor: ArborId,
  at: (id: PointId) => Point | undefined,
  parts: PartsIndex,
): readonly Draft[] {
  const arms = armsOf(arbor, parts).flatMap((arm): CarryingArm[] => {
    const about = at(arm);
    return about ? [{ arm, about }] : [];
  });
  return arms.length === 0 ? drafts : drafts.map((draft) => ({ ...draft, carried: arms }));
}

/** The same solids at other places of the same movement; `moved` tells which solid changed. */
export function movedSolids(
  solids: readonly Solid[],
  { movement, places }: PlacedMovement,
): { readonly solids: readonly Solid[]; readonly moved: readonly number[] } {
  const posts = new Set<string>(movement.posts.map((post) => post.id));
  const moved: number[] = [];
  const next = solids.map((solid) => {
    if (solid.shape === 'region') return solid;
    const id = solid.arbor ?? (posts.has(solid.part) ? (solid.part as PointId) : undefined); // the ids of posts are points
    const place = id === undefined ? undefined : places.get(id);
    if (!place) return solid;
    const arms = solid.carried?.map((each): CarryingArm => {
      const to = places.get(each.arm);
      return !to || (to.x === each.about.x && to.y === each.about.y) ? each : { ...each, about: { x: to.x, y: to.y } };
    });
    const armsStay = !arms || arms.every((each, i) => each === solid.carried?.[i]);
    if (place.x === solid.centre.x && place.y === solid.centre.y && armsStay) return solid;
    moved.push(solid.index);
    return { ...solid, centre: { x: place.x, y: place.y }, ...(arms ? { carried: arms } : {}) };
  });
  return { solids: moved.length === 0 ? solids : next, moved };
}
