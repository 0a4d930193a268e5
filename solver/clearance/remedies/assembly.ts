/** Cures of an arbor that a part of the frame holds down: a smaller head, the post elsewhere on its circle, the wheel above it. */

import { asPoint } from '../../geometry/index.ts';
import type { Post } from '../../movement/schema.ts';
import type { PlacedMovement } from '../../planting/placed.ts';
import { CURE_STEP } from '../../tolerances.ts';
import type { Finding } from '../findings/finding.ts';
import { planGapOf } from '../gaps/planGap.ts';
import type { RingSolid, Solid } from '../solids/solid.ts';
import { solidsOf } from '../solids/solids.ts';
import type { Candidate } from './candidate.ts';
import { heightOwedFor } from './heightOwed.ts';
import { turnedPost } from './slidePost.ts';
import { levelShift } from './wheelChanges.ts';

/** Angles of the circle that are tried, degrees apart: finer than a maker sets a post by eye. */
const STEP_DEG = 1;

/** Candidates for each post that stands over the arbor. */
export function assemblyCandidates(placed: PlacedMovement, finding: Finding): Candidate[] {
  if (finding.kind !== 'assembly') return [];
  const solids = solidsOf(placed);
  const [arbor] = finding.parts;
  const lifted = solids.filter((solid): solid is RingSolid => solid.shape === 'ring' && solid.arbor === arbor);
  const posts = placed.movement.posts.filter(({ id }) => finding.parts.includes(id));
  return [
    ...posts.flatMap((post) => smallerHeads(post, lifted, solids)),
    ...posts.flatMap((post) => slid(placed, post, lifted, solids)),
    ...raised(placed, finding, lifted, solids),
  ];
}

const isOver = (upper: Solid, lower: Solid): boolean => upper.heights.from >= lower.heights.to - CURE_STEP / 10;

/** Heads that stand over something are turned down until it passes them. */
function smallerHeads(post: Post, lifted: readonly RingSolid[], solids: readonly Solid[]): Candidate[] {
  const { heads } = post;
  const own = solids.filter((solid): solid is RingSolid => solid.part === post.id && solid.shape === 'ring');
  if (!heads) return [];
  let least = Number.POSITIVE_INFINITY;
  const next = heads.map((head) => {
    const solid = own.find(({ heights, outer }) => heights.from === head.from && outer === head.diameter / 2);
    const gaps = lifted.filter((each) => solid && isOver(solid, each)).map((each) => planGapOf(each, solid as Solid)); // found above
    const short = Math.min(0, ...gaps.map((gap) => gap?.gap ?? 0));
    const diameter = short < 0 ? Math.floor((head.diameter + 2 * short) / CURE_STEP) * CURE_STEP : head.diameter;
    least = Math.min(least, diameter);
    return { ...head, diameter };
  });
  if (least <= post.diameter || next.every((head, i) => head.diameter === heads[i]?.diameter)) return [];
  return [
    {
      deed: { kind: 'turnHead', post: post.id, diameter: least },
      edit: { kind: 'change', id: post.id, set: { heads: next } },
    },
  ];
}

/** The nearest angle of the post's circle at which it stands over nothing of the arbor. */
function slid(placed: PlacedMovement, post: Post, lifted: readonly RingSolid[], solids: readonly Solid[]): Candidate[] {
  const own = solids.filter((solid): solid is RingSolid => solid.part === post.id && solid.shape === 'ring');
  for (let step = STEP_DEG; step <= 180; step += STEP_DEG) {
    for (const degrees of [step, -step]) {
      const turned = turnedPost(placed, post, degrees);
      if (!turned) return [];
      const clear = own.every((solid) =>
        lifted.every((each) => {
          const gap = isOver(solid, each) ? planGapOf({ ...solid, centre: asPoint(turned.at) }, each)?.gap : undefined;
          return gap === undefined || gap > CURE_STEP;
        }),
      );
      if (clear) return [turned.candidate];
    }
  }
  return [];
}

/** The wheels that are held down go above what holds them. */
function raised(
  placed: PlacedMovement,
  finding: Finding,
  lifted: readonly RingSolid[],
  solids: readonly Solid[],
): Candidate[] {
  const holding = solids.filter(
    (solid) =>
      solid.part !== finding.parts[0] &&
      finding.parts.includes(solid.part) &&
      lifted.some((each) => isOver(solid, each) && (planGapOf(solid, each)?.gap ?? 0) < 0),
  );
  const top = Math.max(...holding.map(({ heights }) => heights.to));
  if (!Number.isFinite(top)) return [];
  const owed = heightOwedFor(placed, solids);
  const held = new Set(
    lifted
      .filter((each) => holding.some((solid) => isOver(solid, each) && (planGapOf(solid, each)?.gap ?? 0) < 0))
      .map(({ part }) => part),
  );
  return placed.movement.wheels
    .filter(({ id }) => held.has(id))
    .map((wheel) => {
      const own = solids.filter(({ part }) => part === wheel.id);
      const gap = Math.max(...own.flatMap((solid) => holding.map((each) => owed(solid, each))));
      return levelShift(placed.movement, wheel, Math.ceil((top + gap - wheel.level) / CURE_STEP) * CURE_STEP);
    });
}
