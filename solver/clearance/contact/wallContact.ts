/**
 * Supports that touch a wall on purpose: how far they stand from it, the camber that their foot is given, and where along a
 * round wall they may slide.
 *
 * A foot of width w on a wall of radius R is cut to that radius; its arc is R − √(R² − (w/2)²) high (sagitta of a chord).
 */
import { type Point, signedDistanceToRegion } from '../../geometry/index.ts';
import type { PostId, WallId } from '../../movement/ids.ts';
import type { Movement, Post, Wall } from '../../movement/schema.ts';
import type { PlacedMovement } from '../../planting/placed.ts';

/** Gap that solder fills, or a screw draws up, where none is stated, mm: common practice. */
const USUAL_ALLOWANCE = 0.1;

/** A wall's round face that a support stands against. */
export interface RoundFace {
  readonly centre: Point;
  readonly radius: number;
  /** The support stands in the hollow of the wall, or outside it. */
  readonly inside: boolean;
}

/** A support against its wall. */
export interface WallContact {
  readonly post: PostId;
  readonly wall: WallId;
  readonly how: 'soldered' | 'screwed';
  /** mm; negative where it stands in the metal. */
  readonly gap: number;
  readonly allowance: number;
  /** The arc of its foot, where the wall is round there, mm. */
  readonly camber?: { readonly radius: number; readonly width: number; readonly height: number };
}

/** Height of the arc of a foot so wide on a circle so large, mm; undefined where the foot is wider than the circle. */
export function camberHeight(radius: number, width: number): number | undefined {
  const half = width / 2;
  return half > radius ? undefined : radius - Math.sqrt(radius * radius - half * half);
}

/** Every support that is fixed to a wall, as it stands. */
export function wallContacts({ movement, places }: PlacedMovement): readonly WallContact[] {
  return movement.posts.flatMap((post): WallContact[] => {
    const { fixedTo } = post;
    const at = places.get(post.id);
    const wall = wallOf(post, movement);
    if (!fixedTo || !at || !wall) return [];
    const region = { outer: wall.outline, holes: wall.inner ? [wall.inner] : [] };
    const gap = signedDistanceToRegion(region, at).distance - post.diameter / 2;
    const face = roundFaceOf(wall, at);
    const width = fixedTo.foot ?? post.diameter;
    const height = face && camberHeight(face.radius, width);
    return [
      {
        post: post.id,
        wall: wall.id,
        how: fixedTo.how,
        gap,
        allowance: fixedTo.allowance ?? USUAL_ALLOWANCE,
        ...(face && height !== undefined ? { camber: { radius: face.radius, width, height } } : {}),
      },
    ];
  });
}

/** The wall that a post is fixed to. */
export function wallOf({ fixedTo }: Post, { walls }: Movement): Wall | undefined {
  return fixedTo && walls.find(({ id }) => id === fixedTo.wall);
}

/** The face of a wall that looks at a place, where it is a whole circle. */
export function roundFaceOf({ outline, inner }: Wall, at: Point): RoundFace | undefined {
  for (const [face, inside] of [
    [inner, true],
    [outline, false],
  ] as const) {
    if (face?.kind !== 'circle') continue;
    const [x, y] = face.centre;
    const apart = Math.hypot(at.x - x, at.y - y);
    if (inside === apart < face.radius) return { centre: { x, y }, radius: face.radius, inside };
  }
  return undefined;
}
