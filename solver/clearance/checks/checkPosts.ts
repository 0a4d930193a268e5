/** Posts that are longer or shorter than the plates between which they stand are apart. */

import { containsPoint, type Point } from '../../geometry/index.ts';
import type { Plate, Post } from '../../movement/schema.ts';
import type { PlacedMovement } from '../../planting/placed.ts';
import { TOUCH } from '../../tolerances.ts';
import { heightsOfPost } from '../bodies/heights.ts';
import type { Finding } from '../findings/finding.ts';
import type { Heights } from '../solids/solid.ts';

/** A post of this share of the distance was meant to reach; a shorter one only where no other holds the plates apart. */
const MEANT_TO_REACH = 0.85;
const MAY_BE_MEANT = 0.5;

/** Every post whose stated heights do not fit between its plates. */
export function checkPosts({ movement, places }: PlacedMovement): readonly Finding[] {
  const standing = movement.posts.flatMap((post): Standing[] => {
    const at = places.get(post.id);
    const heights = at && heightsOfPost(post, at, movement);
    const between = at && heights && platesAbout(heights, at, movement.plates);
    return heights && between ? [{ post, heights, between }] : [];
  });
  return standing.flatMap((each) => faultOf(each, standing));
}

/** A post with its heights and the plates under and over it. */
interface Standing {
  readonly post: Post;
  readonly heights: Heights;
  readonly between: readonly [Plate, Plate];
}

/** The two plates at a place whose room the middle of some heights stands in. */
function platesAbout({ from, to }: Heights, at: Point, plates: readonly Plate[]): readonly [Plate, Plate] | undefined {
  const middle = (from + to) / 2;
  const here = plates.filter(({ outline }) => containsPoint(outline, at));
  const under = here.filter(({ levels }) => levels.to <= middle).sort((a, b) => b.levels.to - a.levels.to)[0];
  const over = here.filter(({ levels }) => levels.from >= middle).sort((a, b) => a.levels.from - b.levels.from)[0];
  return under && over ? [under, over] : undefined;
}

function faultOf(standing: Standing, all: readonly Standing[]): Finding[] {
  const { post, heights, between } = standing;
  const [under, over] = between;
  const apart = over.levels.from - under.levels.to;
  const length = heights.to - heights.from;
  const tells = (kind: 'postShort' | 'postLong'): Finding[] => [
    {
      key: `post ${post.id}`,
      kind: 'post',
      severity: 'stops',
      parts: [post.id, under.id, over.id],
      gap: length,
      wanted: apart,
      cause: { kind, post: post.id, plates: [under.id, over.id], length, apart },
    },
  ];
  if (isLong(standing)) return tells('postLong');
  const reached = Math.min(heights.to, over.levels.from) - Math.max(heights.from, under.levels.to);
  if (reached >= apart - TOUCH || reached < MAY_BE_MEANT * apart) return [];
  const isHeld = all.some((other) => other.between[0] === under && other.between[1] === over && reaches(other));
  return isHeld && reached < MEANT_TO_REACH * apart ? [] : tells('postShort');
}

function reaches({ heights, between: [under, over] }: Standing): boolean {
  return heights.from <= under.levels.to + TOUCH && heights.to >= over.levels.from - TOUCH;
}

/** Does an end stand in the metal of a plate whose fixing hole does not take it? */
function isLong({ post, heights, between: [under, over] }: Standing): boolean {
  const takes = (plate: Plate): boolean =>
    (post.plate === undefined || post.plate === plate.id) && post.hole >= post.diameter - TOUCH;
  const intoOver = heights.to > over.levels.from + TOUCH && heights.to <= over.levels.to + TOUCH;
  const intoUnder = heights.from < under.levels.to - TOUCH && heights.from >= under.levels.from - TOUCH;
  return (intoOver && !takes(over)) || (intoUnder && !takes(under));
}
