/** What of a chosen plate, wall or opening can be taken hold of: corners, sides, the rim of a circle, the whole. */

import type { Point } from '../../../solver/geometry/index.ts';
import { boundsOfOutline, nearestToPoint, piecesOf } from '../../../solver/geometry/index.ts';
import type { Outline, Wall } from '../../../solver/movement/schema.ts';
import type { CasePart } from '../../state/derive/parts.ts';
import type { HandleRef, Ring } from '../../state/handleRef.ts';
import { toScreen, toWorld, type View } from '../../state/view.ts';
import { cornerAt, outlineSideOf } from './reshape.ts';

/** A handle as it is drawn and told. */
export interface Handle extends HandleRef {
  readonly key: string;
  /** Where it is drawn and taken hold of, CSS pixels on the bench. */
  readonly pixel: Point;
  /** Direction of a side on the screen, radians. */
  readonly turn: number;
  /** "Corner 2", "Side from corner 2 to 3" */
  readonly says: string;
}

/** More handles than this are neither drawn nor reached by Tab: far more corners than a maker strikes. */
const MOST_HANDLES = 240;
/** The handle of the whole stands off the upper right of the part, CSS pixels. */
const OFF_PX = 18;
/** Sides shorter than this on screen have no handle of their own, CSS pixels: their corners are in the way. */
const SHORTEST_SIDE_PX = 26;
/** How near a handle is taken, CSS pixels; a finger is blunter. */
const REACH_PX = 9;
const FINGER_REACH_PX = 20;
const SIDE_REACH_PX = 5;
const FINGER_SIDE_REACH_PX = 12;

/** The outlines of a part, the outer first. */
export function ringsOf(part: CasePart): readonly (readonly [Ring, Outline])[] {
  const inner = 'inner' in part ? (part as Wall).inner : undefined; // only walls have one
  return inner
    ? ([['outline', part.outline] as const, ['inner', inner] as const] as const)
    : [['outline', part.outline]];
}

/** The outer or inner outline of a part of the case; none where it has no such ring. */
export const outlineRingOf = (part: CasePart, ring: Ring): Outline | undefined =>
  ringsOf(part).find(([name]) => name === ring)?.[1];

/** Names a handle uniquely within its part. */
export const keyOfHandle = ({ ring, kind, index }: HandleRef): string => `${ring} ${kind} ${index}`;

/** All handles of a part in the order in which Tab goes through them. */
export function handlesOf(part: CasePart, view: View): readonly Handle[] {
  const rings = ringsOf(part);
  const found: Handle[] = [];
  const add = (ref: HandleRef, pixel: Point, says: string, turn = 0): void => {
    const where = rings.length > 1 ? (ref.ring === 'inner' ? ', inside' : ', outside') : '';
    found.push({ ...ref, key: keyOfHandle(ref), pixel, turn, says: `${says}${where}` });
  };
  for (const [ring, outline] of rings) {
    if (outline.kind === 'circle') {
      const [x, y] = outline.centre;
      add({ ring, kind: 'rim', index: 0 }, toScreen(view, { x: x + outline.radius, y }), 'Radius', Math.PI / 2);
      continue;
    }
    const { length } = outline.vertices;
    for (let index = 0; index < length && found.length < MOST_HANDLES; index++) {
      const corner = cornerAt(outline, index);
      add({ ring, kind: 'corner', index }, toScreen(view, corner), `Corner ${index + 1}`);
      const { middle, from, to, length: chord } = outlineSideOf(outline, index);
      if (chord * view.scale < SHORTEST_SIDE_PX) continue;
      const turn = -Math.atan2(to.y - from.y, to.x - from.x);
      const says = `Side from corner ${index + 1} to ${((index + 1) % length) + 1}`;
      add({ ring, kind: 'side', index }, toScreen(view, middle), says, turn);
    }
  }
  add({ ring: 'outline', kind: 'whole', index: 0 }, wholeAt(part.outline, view), 'The whole');
  return found;
}

function wholeAt(outline: Outline, view: View): Point {
  const [, , maxX, maxY] = boundsOfOutline(outline);
  let corner = { x: maxX, y: maxY };
  if (outline.kind === 'circle') {
    const reach = outline.radius * Math.SQRT1_2;
    corner = { x: outline.centre[0] + reach, y: outline.centre[1] + reach };
  }
  const { x, y } = toScreen(view, corner);
  return { x: x + OFF_PX, y: y - OFF_PX };
}

/** The corner, rim or whole whose handle lies under a pixel. */
export function handleAt(handles: readonly Handle[], pixel: Point, finger = false): Handle | undefined {
  let best = finger ? FINGER_REACH_PX : REACH_PX;
  let found: Handle | undefined;
  for (const handle of handles) {
    // A corner is meant before the side whose middle is as near.
    const bias = handle.kind === 'side' ? 2 : 0;
    const away = Math.hypot(handle.pixel.x - pixel.x, handle.pixel.y - pixel.y) + bias;
    if (away <= best) {
      best = away;
      found = handle;
    }
  }
  return found;
}

/** The side or rim whose line lies under a pixel. */
export function lineAt(part: CasePart, view: View, pixel: Point, finger = false): HandleRef | undefined {
  const at = toWorld(view, pixel);
  let best = (finger ? FINGER_SIDE_REACH_PX : SIDE_REACH_PX) / view.scale;
  let found: HandleRef | undefined;
  for (const [ring, outline] of ringsOf(part)) {
    piecesOf(outline).forEach((piece, index) => {
      const { distance } = nearestToPoint(piece, { x: at.x, y: at.y });
      if (distance > best) return;
      best = distance;
      found = outline.kind === 'circle' ? { ring, kind: 'rim', index: 0 } : { ring, kind: 'side', index };
    });
  }
  return found;
}
