/** Where a support may slide along the round wall that it is fixed to: safe arcs as angles, and as lengths of wall. */
import type { PostId } from '../../movement/ids.ts';
import type { PlacedMovement } from '../../planting/placed.ts';
import { roundFaceOf, wallOf } from '../contact/wallContact.ts';
import { safeArcsOfPost } from '../remedies/slidePost.ts';

/** A stretch of wall where a support clears everything; angles radians, anticlockwise from +x about the wall's middle. */
export interface SafeStretch {
  readonly start: number;
  readonly sweep: number;
  /** Length of wall, mm. */
  readonly length: number;
}

/** All safe stretches of a support, and the angle at which it stands; undefined where it is fixed to no round wall. */
export function safeAlongWall(
  placed: PlacedMovement,
  id: PostId,
): { readonly angle: number; readonly stretches: readonly SafeStretch[] } | undefined {
  const post = placed.movement.posts.find((each) => each.id === id);
  const at = placed.places.get(id);
  const wall = post && wallOf(post, placed.movement);
  const face = wall && at && roundFaceOf(wall, at);
  const safe = post && face && safeArcsOfPost(placed, post);
  if (!safe) return undefined;
  const stretches = safe.arcs.map(({ start, sweep }) => ({ start, sweep, length: sweep * face.radius }));
  return { angle: safe.angle, stretches };
}
