/** Slide a post along its circle to the nearest place where it clears everything. */

import type { Point } from '../../geometry/index.ts';
import type { PointId, WallId } from '../../movement/ids.ts';
import type { Edit } from '../../movement/index.ts';
import type { Post } from '../../movement/schema.ts';
import type { PlacedMovement } from '../../planting/placed.ts';
import { TOUCH } from '../../tolerances.ts';
import { roundFaceOf, wallOf } from '../contact/wallContact.ts';
import type { Finding } from '../findings/finding.ts';
import { gapContextOf, heightGapOf, lengthwiseOfPair } from '../gaps/gapReadings.ts';
import { pairTermsFor } from '../gaps/pairTerms.ts';
import { nearestSafeAngle, type Obstacle, type SafeArc, type SlideCircle, safeArcs } from '../safe/safeArcs.ts';
import { sideMovementOver } from '../shake/shake.ts';
import { type RingSolid, sweptRing } from '../solids/solid.ts';
import { solidsOf } from '../solids/solids.ts';
import type { Candidate } from './candidate.ts';

/** The ± between two points changes as the post goes round; so much more is allowed for where it will stand. */
const MORE_ELSEWHERE = 1.5;
const TURN = 2 * Math.PI;

/** Where a sliding post may stand: its circle and the safe arcs of it; undefined for a post that no circle is stated for. */
export function safeArcsOfPost(
  placed: PlacedMovement,
  post: Post,
): { readonly slide: SlideCircle; readonly angle: number; readonly arcs: readonly SafeArc[] } | undefined {
  const at = placed.places.get(post.id);
  const centre = slideCentre(placed, post)?.centre;
  if (!at || !centre) return undefined;
  const radius = Math.hypot(at.x - centre.x, at.y - centre.y);
  const slide = { centre, radius, partRadius: post.diameter / 2 };
  const angle = Math.atan2(at.y - centre.y, at.x - centre.x);
  return { slide, angle, arcs: safeArcs(slide, obstaclesOf(placed, post)) };
}

/** Everything that the post and its heads could meet at their heights, each with the gap it is owed, shake included. */
function obstaclesOf(placed: PlacedMovement, post: Post): Obstacle[] {
  const solids = solidsOf(placed);
  const termsOf = pairTermsFor(placed.movement);
  const context = gapContextOf(placed, solids);
  const { shake } = context;
  const wheels = new Map<string, number>(placed.movement.wheels.map(({ id, runOut }) => [id, runOut / 2]));
  return solids
    .filter((own): own is RingSolid => own.part === post.id && own.shape === 'ring')
    .flatMap((own) =>
      solids.flatMap((other): Obstacle[] => {
        const terms = termsOf(own, other);
        if (!terms || heightGapOf(own, other) - lengthwiseOfPair(own, other, context) >= terms.height) return [];
        const solid = other.shape === 'ring' ? sweptRing(other) : other;
        const aside = solid.arbor === undefined ? 0 : sideMovementOver(shake, solid.arbor, solid.heights);
        const runOut = solid.role === 'wheel' ? (wheels.get(solid.part) ?? 0) : 0;
        const plusMinus = solid.arbor === undefined ? 0 : (placed.plusMinusBetween(post.id, solid.arbor) ?? 0);
        // A head reaches farther out than the post itself.
        const wider = own.outer - post.diameter / 2;
        return [{ solid, gap: terms.plan + wider + aside + runOut + plusMinus * MORE_ELSEWHERE + TOUCH }];
      }),
    );
}

/** A candidate for each post that the finding names and that stands on a circle about a point. */
export function postCandidates(placed: PlacedMovement, finding: Finding): Candidate[] {
  return placed.movement.posts.flatMap((post): Candidate[] => {
    const turned = finding.parts.includes(post.id) ? postSlidToSafe(placed, post) : undefined;
    return turned ? [turned.candidate] : [];
  });
}

/** The post at the nearest angle of its circle where it clears everything; undefined where nothing turns it, or nowhere is safe. */
export function postSlidToSafe(placed: PlacedMovement, post: Post): TurnedPost | undefined {
  const safe = safeArcsOfPost(placed, post);
  const angle = safe && nearestSafeAngle(safe.arcs, safe.angle);
  if (!safe || angle === undefined) return undefined;
  return turnedPost(placed, post, (signed(angle - safe.angle) * 180) / Math.PI);
}

/** A post at another angle of its circle: how it gets there, and where that is. */
export interface TurnedPost {
  readonly candidate: Candidate;
  readonly at: readonly [number, number];
}

/** The post turned by so many degrees about the centre of its circle; undefined where nothing simple turns it. */
export function turnedPost(placed: PlacedMovement, post: Post, degrees: number): TurnedPost | undefined {
  const slide = slideCentre(placed, post);
  const place = placed.places.get(post.id);
  if (!slide || !place) return undefined;
  const { about, centre } = slide;
  const radius = Math.hypot(place.x - centre.x, place.y - centre.y);
  const angle = Math.atan2(place.y - centre.y, place.x - centre.x) + (degrees * Math.PI) / 180;
  const at = [centre.x + radius * Math.cos(angle), centre.y + radius * Math.sin(angle)] as const;
  const deed = { kind: 'turnPost', post: post.id, about, by: (degrees * Math.PI) / 180 } as const;
  const edit = turningEdit(placed, post, about, degrees, at);
  return edit && { candidate: { deed, edit }, at };
}

/**
 * What moves the post round: the rule that settles its angle or its place gets another value; a loose post is sketched
 * elsewhere. A post that other kinds of rule settle cannot be turned by one number.
 */
function turningEdit(
  placed: PlacedMovement,
  post: Post,
  about: PointId | WallId,
  degrees: number,
  at: readonly [number, number],
): Edit | undefined {
  const move: Edit = { kind: 'move', places: [{ id: post.id, at }] };
  const used = placed.movement.rules.filter((rule) => !rule.leaveOut);
  const bearing = used.find((rule) => rule.kind === 'bearing' && rule.point === post.id && rule.centre === about);
  if (bearing?.kind === 'bearing') {
    return { kind: 'several', edits: [{ kind: 'setValue', rule: bearing.id, value: bearing.angle + degrees }, move] };
  }
  const held = used.find((rule) => rule.kind === 'held' && rule.point === post.id);
  if (held) return { kind: 'several', edits: [{ kind: 'setValue', rule: held.id, value: at }, move] };
  return placed.places.get(post.id)?.state === 'loose' ? move : undefined;
}

/** What a post goes round: a point of the drawing, or the middle of the round wall that it is fixed to. */
function slideCentre(
  placed: PlacedMovement,
  post: Post,
): { readonly about: PointId | WallId; readonly centre: Point } | undefined {
  const about = centreOf(placed, post);
  const centre = about === undefined ? undefined : placed.places.get(about);
  if (about !== undefined && centre) return { about, centre };
  const wall = wallOf(post, placed.movement);
  const at = placed.places.get(post.id);
  const face = wall && at && roundFaceOf(wall, at);
  return wall && face && { about: wall.id, centre: face.centre };
}

/** The point that the post stands on a circle about: as stated, or by a radius rule. */
function centreOf({ movement }: PlacedMovement, post: Post): PointId | undefined {
  if (post.slidesAbout !== undefined) return post.slidesAbout;
  const radius = movement.rules.find((rule) => rule.kind === 'radius' && !rule.leaveOut && rule.point === post.id);
  return radius?.kind === 'radius' ? radius.centre : undefined;
}

function signed(angle: number): number {
  const turned = ((angle % TURN) + TURN) % TURN;
  return turned > Math.PI ? turned - TURN : turned;
}
