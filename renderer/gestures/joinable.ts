/** Which points may share the place of a dragged one. */

import type { PointId } from '../../solver/movement/ids.ts';
import type { Movement } from '../../solver/movement/schema.ts';

/** A mark may stand anywhere; an arbor at the place of an arbor or a mark; a post is solid, so only at a mark. */
export function joinableWith({ arbors, posts, marks }: Movement, point: PointId): ReadonlySet<string> {
  const ids = (parts: readonly { readonly id: PointId }[]): string[] => parts.map(({ id }) => id);
  if (posts.some(({ id }) => id === point)) return new Set(ids(marks));
  const isMark = marks.some(({ id }) => id === point);
  return new Set([...ids(arbors), ...ids(marks), ...(isMark ? ids(posts) : [])]);
}
