/** What a gap finding looks like on the bench: the round parts to hatch, and the gap as a dimension, in CSS pixels. */

import type { Finding } from '../../solver/clearance/index.ts';
import type { PartId } from '../../solver/movement/ids.ts';
import type { PlacedMovement } from '../../solver/planting/placed.ts';
import type { Sizes } from '../state/derive/sizes.ts';
import { toScreen, type View } from '../state/view.ts';

/** The sign of one finding, mm. */
export interface FindingMark {
  readonly key: string;
  readonly discs: readonly { readonly part: PartId; readonly x: number; readonly y: number; readonly r: number }[];
  /** Ends of the gap, and where its figure stands. */
  readonly from: { readonly x: number; readonly y: number };
  readonly to: { readonly x: number; readonly y: number };
  readonly figureAt: { readonly x: number; readonly y: number };
  readonly gap: number;
}

/** Room between the dimension and its figure, CSS pixels. */
const BESIDE = 16;

/** The mark of a finding that has a gap and a place; undefined for the others. */
export function findingMark(
  finding: Finding,
  placed: PlacedMovement,
  sizes: Sizes,
  view: View,
): FindingMark | undefined {
  if (!finding.at || finding.gap === undefined) return undefined;
  const [from, to] = [toScreen(view, finding.at[0]), toScreen(view, finding.at[1])];
  const discs = finding.parts.flatMap((part) => {
    const disc = discOf(part, placed, sizes);
    if (!disc) return [];
    const at = toScreen(view, disc);
    return [{ part, x: at.x, y: at.y, r: disc.radius * view.scale }];
  });
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  // The figure stands off the line, square to it; for a gap without length above it, clear of the balloon.
  const [nx, ny] = length > 0 ? [-(to.y - from.y) / length, (to.x - from.x) / length] : [0, -1];
  const middle = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
  const figureAt = { x: middle.x + nx * BESIDE, y: middle.y + ny * BESIDE };
  return { key: finding.key, discs, from, to, figureAt, gap: finding.gap };
}

/** Place and outer radius of a round part, mm. */
function discOf(
  part: PartId,
  { movement, places }: PlacedMovement,
  sizes: Sizes,
): { readonly x: number; readonly y: number; readonly radius: number } | undefined {
  const wheel = movement.wheels.find(({ id }) => id === part);
  const body = wheel ?? movement.arbors.find(({ id }) => id === part) ?? movement.posts.find(({ id }) => id === part);
  if (!body) return undefined;
  const place = [...places.values()].find(({ id }) => id === (wheel ? wheel.arbor : part));
  const radius = 'diameter' in body ? body.diameter / 2 : sizes.get(part)?.tipRadius;
  return place && radius !== undefined ? { x: place.x, y: place.y, radius } : undefined;
}
