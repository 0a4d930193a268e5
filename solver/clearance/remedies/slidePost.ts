/** Slide a post along its circle to the nearest place where it clears everything. */
import type { Post } from '../../movement/index.ts';
import type { PlacedMovement } from '../../planting/index.ts';
import type { Finding } from '../finding.ts';
import { gapContextOf, heightGapOf } from '../gapReadings.ts';
import { pairTermsFor } from '../pairTerms.ts';
import { nearestSafeAngle, type Obstacle, type SafeArc, type SlideCircle, safeArcs } from '../safeArcs.ts';
import { sideMovementOver } from '../shake.ts';
import { solidsOf } from '../solids.ts';
import type { Candidate } from './candidate.ts';

/** Added to the stated gap so that the cured gap does not fall short by rounding, mm. */
const SPARE = 1e-6;
const TURN = 2 * Math.PI;

/** Where a sliding post may stand: its circle and the safe arcs of it; undefined for a post that may not slide. */
export function safeArcsOfPost(
  placed: PlacedMovement,
  post: Post,
): { readonly slide: SlideCircle; readonly angle: number; readonly arcs: readonly SafeArc[] } | undefined {
  const at = placed.places.get(post.id);
  const centre = post.slidesAbout === undefined ? undefined : placed.places.get(post.slidesAbout);
  if (!at || !centre) return undefined;
  const radius = Math.hypot(at.x - centre.x, at.y - centre.y);
  const slide = { centre: [centre.x, centre.y] as const, radius, partRadius: post.diameter / 2 };
  const angle = Math.atan2(at.y - centre.y, at.x - centre.x);
  return { slide, angle, arcs: safeArcs(slide, obstaclesOf(placed, post)) };
}

/** Everything that the post could meet at its heights, each with the gap it is owed, shake included. */
function obstaclesOf(placed: PlacedMovement, post: Post): Obstacle[] {
  const solids = solidsOf(placed);
  const own = solids.find((solid) => solid.part === post.id);
  if (!own) return [];
  const termsOf = pairTermsFor(placed.movement);
  const { shake } = gapContextOf(placed, solids);
  return solids.flatMap((solid): Obstacle[] => {
    const terms = termsOf(own, solid);
    if (!terms || heightGapOf(own, solid) >= terms.height) return [];
    const aside = solid.arbor === undefined ? 0 : sideMovementOver(shake, solid.arbor, solid.heights);
    return [{ solid, gap: terms.plan + aside + SPARE }];
  });
}

/** A candidate for each sliding post that the finding names. */
export function postCandidates(placed: PlacedMovement, finding: Finding): Candidate[] {
  const { movement } = placed;
  return movement.posts.flatMap((post): Candidate[] => {
    if (!finding.parts.includes(post.id)) return [];
    const safe = safeArcsOfPost(placed, post);
    const angle = safe && nearestSafeAngle(safe.arcs, safe.angle);
    if (!safe || angle === undefined || post.slidesAbout === undefined) return [];
    const turned = signed(angle - safe.angle);
    const { centre, radius } = safe.slide;
    const at = [centre[0] + radius * Math.cos(angle), centre[1] + radius * Math.sin(angle)] as const;
    const about = placed.movement.arbors.find((arbor) => arbor.id === post.slidesAbout)?.name ?? post.slidesAbout;
    const degrees = (turned * 180) / Math.PI;
    const does = `Turn ${post.name ?? `post ${post.id}`} by ${degrees > 0 ? '+' : '−'}${Math.abs(degrees).toFixed(1)}° about ${about}`;
    const posts = movement.posts.map((other) => (other.id === post.id ? { ...other, at } : other));
    return [{ does, movement: { ...movement, posts } }];
  });
}

function signed(angle: number): number {
  const turned = ((angle % TURN) + TURN) % TURN;
  return turned > Math.PI ? turned - TURN : turned;
}
