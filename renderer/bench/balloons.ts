/** Where the numbered balloons of findings stand: in the open, led to their place, clear of each other. Pixels only. */

import type { Point } from '../../solver/geometry/index.ts';
import type { LabelBox } from './labelPlacement.ts';

/** A numbered balloon and the place that it is led to, CSS pixels. */
export interface Balloon {
  readonly key: string;
  readonly number: number;
  readonly at: Point;
  readonly to: Point;
}

/** Line work that a balloon would rather not stand across: a circle, CSS pixels. */
export interface BalloonRing {
  readonly at: Point;
  readonly radius: number;
}

/** What balloons are placed among. */
export interface BalloonGround {
  /** The middle of the work on screen: balloons stand on the far side from it. */
  readonly middle: Point;
  readonly window: LabelBox;
  /** Signs of places and the title block: no balloon stands on them. */
  readonly blocked: readonly LabelBox[];
  readonly rings: readonly BalloonRing[];
}

/** Radius of a balloon, and the distances tried from its place, CSS pixels. */
export const BALLOON_RADIUS = 11;
const REACHES = [44, 64, 92, 128, 176];
const TURNS = [0, 0.4, -0.4, 0.8, -0.8, 1.3, -1.3, 1.9, -1.9, 2.6, -2.6, Math.PI];
/** What a candidate costs for its length (per pixel), its turn from outward (per radian), a crossed ring, a lead over a sign. */
const COST = { reach: 1 / 40, turn: 0.6, ring: 1, sign: 2 };
/** Clear paper around a balloon, CSS pixels. */
const CLEAR = 4;

/**
 * Places balloons in order: the first finding chooses first. Leads cross no other lead and no other balloon.
 *
 * @param places  key, number and the pixel that each points at; those outside the window get no balloon
 */
export function placeBalloons(
  places: readonly { readonly key: string; readonly number: number; readonly to: Point }[],
  ground: BalloonGround,
): Balloon[] {
  const { window, middle } = ground;
  const placed: Balloon[] = [];
  for (const { key, number, to } of places) {
    if (to.x < window[0] || to.y < window[1] || to.x > window[2] || to.y > window[3]) continue;
    const outward = Math.atan2(to.y - middle.y, to.x - middle.x);
    const at = cheapest(to, outward, placed, ground);
    if (at) placed.push({ key, number, at, to });
  }
  return placed;
}

function cheapest(to: Point, outward: number, placed: readonly Balloon[], ground: BalloonGround): Point | undefined {
  let best: { readonly at: Point; readonly cost: number } | undefined;
  for (const reach of REACHES) {
    for (const turn of TURNS) {
      const least = COST.reach * reach + COST.turn * Math.abs(turn);
      if (best && least >= best.cost) continue;
      const at = { x: to.x + reach * Math.cos(outward + turn), y: to.y + reach * Math.sin(outward + turn) };
      if (!isFree(at, to, placed, ground)) continue;
      const cost = least + underneath(at, to, ground);
      if (!best || cost < best.cost) best = { at, cost };
    }
  }
  return best?.at;
}

function isFree(at: Point, to: Point, placed: readonly Balloon[], { window, blocked }: BalloonGround): boolean {
  const edge = BALLOON_RADIUS + CLEAR;
  if (at.x < window[0] + edge || at.y < window[1] + edge || at.x > window[2] - edge || at.y > window[3] - edge) {
    return false;
  }
  if (blocked.some((box) => distanceToBox(at, box) < BALLOON_RADIUS)) return false;
  return placed.every(
    (other) =>
      Math.hypot(other.at.x - at.x, other.at.y - at.y) > 2 * BALLOON_RADIUS + CLEAR &&
      distanceToLead(other.at, at, to) > BALLOON_RADIUS + 1 &&
      distanceToLead(at, other.at, other.to) > BALLOON_RADIUS + 1 &&
      !cross(at, to, other.at, other.to),
  );
}

/** What lies under a balloon and its lead, as a cost. */
function underneath(at: Point, to: Point, { rings, blocked }: BalloonGround): number {
  const crossed = rings.filter(
    (ring) => Math.abs(Math.hypot(ring.at.x - at.x, ring.at.y - at.y) - ring.radius) < BALLOON_RADIUS,
  ).length;
  const signs = blocked.filter((box) => {
    const sign = { x: (box[0] + box[2]) / 2, y: (box[1] + box[3]) / 2 };
    const reach = (box[2] - box[0]) / 2;
    // The sign that the lead ends at is meant to be met.
    return Math.hypot(sign.x - to.x, sign.y - to.y) > 2 * reach && distanceToLead(sign, at, to) < reach;
  }).length;
  return COST.ring * crossed + COST.sign * signs;
}

function distanceToBox(at: Point, box: LabelBox): number {
  const across = Math.max(box[0] - at.x, 0, at.x - box[2]);
  const up = Math.max(box[1] - at.y, 0, at.y - box[3]);
  return Math.hypot(across, up);
}

function distanceToLead(at: Point, from: Point, to: Point): number {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const along = ((at.x - from.x) * dx + (at.y - from.y) * dy) / (dx * dx + dy * dy || 1);
  const t = Math.min(Math.max(along, 0), 1);
  return Math.hypot(at.x - from.x - t * dx, at.y - from.y - t * dy);
}

/** Do two leads cross? Leads that end at the same place only touch. */
function cross(a: Point, b: Point, c: Point, d: Point): boolean {
  const side = (p: Point, q: Point, r: Point): number => (q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x);
  return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
}
