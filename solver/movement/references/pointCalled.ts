/** Points by what people call them, for programs that have a name or an id as text. */
import type { PointId } from '../ids.ts';
import type { Movement } from '../schema.ts';

/**
 * The arbor, post or mark of that id, else the one of that name.
 *
 * @returns undefined where there is none, or where several have the name
 */
export function pointCalled({ arbors, posts, marks }: Movement, called: string): PointId | undefined {
  const points: readonly { readonly id: PointId; readonly name?: string | undefined }[] = [
    ...arbors,
    ...posts,
    ...marks,
  ];
  const byId = points.find(({ id }) => id === called);
  if (byId) return byId.id;
  const named = points.filter(({ name }) => name === called);
  return named.length === 1 ? named[0]?.id : undefined;
}
