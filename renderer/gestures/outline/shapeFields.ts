/** What dragging or nudging a handle makes of a part of the case: the fields that an edit sets, and what to say of it. */

import type { Point } from '../../../solver/geometry/index.ts';
import type { Outline } from '../../../solver/movement/schema.ts';
import type { CasePart } from '../../state/derive/parts.ts';
import type { HandleRef } from '../../state/handleRef.ts';
import { outlineRingOf, ringsOf } from './handles.ts';
import { bowSide, clean, cornerAt, moveCorner, moveOutline, moveSide, outlineSideOf } from './reshape.ts';

/** The outlines that a part gets, with what was done. */
export interface Shaped {
  /** `outline`, `inner`, or both. */
  readonly set: Readonly<Record<string, Outline>>;
  readonly says: string;
}

/** How a handle follows: rounded to a step, drawn to places, or just as the pointer goes. */
export interface Manner {
  /** Coordinates and lengths fall on whole steps of this, mm; 0 for none. */
  readonly step: number;
  /** Coordinates nearer than this to one of `places` are drawn to it, mm. */
  readonly reach: number;
  /** Places whose x and y attract: other corners, arbors, posts. */
  readonly places: readonly Point[];
  readonly lengthSays: (mm: number) => string;
}

/** The part after its handle went by (dx, dy) mm; `grabbed` is where it was taken hold of. Undefined where the handle is gone. */
export function shapedBy(part: CasePart, ref: HandleRef, grabbed: Point, d: Point, manner: Manner): Shaped | undefined {
  const outline = outlineRingOf(part, ref.ring);
  if (!outline) return undefined;
  const { lengthSays } = manner;
  const only = (next: Outline, says: string): Shaped => ({ set: { [ref.ring]: next }, says });
  if (ref.kind === 'whole') return wholeMoved(part, d, manner);
  if (outline.kind === 'circle') {
    if (ref.kind !== 'rim') return undefined;
    const [x, y] = outline.centre;
    const out =
      Math.hypot(grabbed.x + d.x - x, grabbed.y + d.y - y) - Math.hypot(grabbed.x - x, grabbed.y - y) + outline.radius;
    const radius = clean(Math.max(onStep(out, manner.step), manner.step || 1e-3));
    return only({ ...outline, radius }, `Radius ${lengthSays(radius)}`);
  }
  if (ref.index >= outline.vertices.length) return undefined;
  if (ref.kind === 'corner') {
    const corner = cornerAt(outline, ref.index);
    const to = drawn({ x: corner.x + d.x, y: corner.y + d.y }, manner);
    return only(
      moveCorner(outline, ref.index, to),
      `Corner ${ref.index + 1} at ${lengthSays(to.x)}, ${lengthSays(to.y)}`,
    );
  }
  if (ref.kind !== 'side') return undefined;
  const { normal, from, rise } = outlineSideOf(outline, ref.index);
  const out = d.x * normal.x + d.y * normal.y;
  if (from.bulge !== 0) {
    const next = onStep(rise + out, manner.step);
    return only(bowSide(outline, ref.index, next), `Rise of the arc ${lengthSays(Math.abs(next))}`);
  }
  const by = onStep(out, manner.step);
  return only(
    moveSide(outline, ref.index, by * normal.x, by * normal.y),
    `Side from corner ${ref.index + 1} moved by ${lengthSays(Math.abs(by))}`,
  );
}

function wholeMoved(part: CasePart, d: Point, manner: Manner): Shaped {
  const lead = part.outline.kind === 'circle' ? part.outline.centre : undefined;
  const corner = part.outline.kind === 'path' ? cornerAt(part.outline, 0) : undefined;
  const at = { x: lead?.[0] ?? corner?.x ?? 0, y: lead?.[1] ?? corner?.y ?? 0 };
  const to = drawn({ x: at.x + d.x, y: at.y + d.y }, manner);
  const by = { x: to.x - at.x, y: to.y - at.y };
  const set = Object.fromEntries(
    ringsOf(part).map(([ring, outline]) => [ring, moveOutline(outline, by.x, by.y)] as const),
  );
  const what = lead ? 'Centre' : 'Corner 1';
  return { set, says: `${what} at ${manner.lengthSays(to.x)}, ${manner.lengthSays(to.y)}` };
}

const onStep = (value: number, step: number): number => (step > 0 ? Math.round(value / step) * step : value);

/** Each coordinate by itself: level or plumb with a place near it, else on a step. */
function drawn(at: Point, { places, reach, step }: Manner): Point {
  const along = (axis: 'x' | 'y'): number => {
    let best = reach;
    let to = onStep(at[axis], step);
    for (const place of places) {
      const away = Math.abs(place[axis] - at[axis]);
      if (away > best) continue;
      best = away;
      to = place[axis];
    }
    return clean(to);
  };
  return { x: along('x'), y: along('y') };
}
