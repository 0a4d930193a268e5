/**
 * Crossing out: the openings between the arms of a wheel, with rounded corners.
 *
 * Frame: wheel's centre at the origin, first arm along +x. Each opening lies between two arms and is symmetric about
 * their bisector; its corners are circles of the fillet radius that touch the arm's edge and the rim or the hub.
 */
import type { Point } from '../../geometry/index.ts';
import type { Vertex } from './arcFit.ts';
import { turned } from './toothPath.ts';

/** The arms of a wheel, lengths in mm. */
export interface Arms {
  readonly count: number;
  /** Width at the hub and at the rim, mm. */
  readonly width: number;
  readonly widthAtRim: number;
  /** Radius of the hub that is left, and inner radius of the rim, mm. */
  readonly hubRadius: number;
  readonly rimRadius: number;
  readonly fillet: number;
}

/** Why no openings can be made: the arms leave none, are as broad as their hub, or hub and rim leave no room. */
export type NoOpenings = { readonly arms: Arms } & (
  | { readonly kind: 'tooTight' }
  | { readonly kind: 'armsAsBroadAsHub' }
  | { readonly kind: 'noRoom' }
);

/** The openings between the arms with a place to pierce each, or why there is no room for them. */
export type CrossingOut =
  | {
      readonly kind: 'openings';
      readonly openings: readonly (readonly Vertex[])[];
      readonly pierce: readonly (readonly [number, number])[];
    }
  | { readonly kind: 'none'; readonly why: NoOpenings };

function bulgeAbout(centre: Point, from: Point, to: Point): number {
  const a = Math.atan2(from.y - centre.y, from.x - centre.x);
  const b = Math.atan2(to.y - centre.y, to.x - centre.x);
  const turn = (((b - a) % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI);
  return Math.tan(turn / 4);
}
function scaled(p: Point, radius: number): Point {
  const k = radius / Math.hypot(p.x, p.y);
  return { x: p.x * k, y: p.y * k };
}

/** The line of fillet centres along an arm's edge: p(s) = start + s·direction; `normal` points into the opening. */
function edgeOf(arms: Arms) {
  const [dx, dy] = [arms.rimRadius - arms.hubRadius, (arms.widthAtRim - arms.width) / 2];
  const length = Math.hypot(dx, dy);
  const direction: Point = { x: dx / length, y: dy / length };
  const normal: Point = { x: -direction.y, y: direction.x };
  const start: Point = { x: arms.hubRadius + arms.fillet * normal.x, y: arms.width / 2 + arms.fillet * normal.y };
  return { direction, normal, start };
}

/** Where the line of centres is at a radius: the farther crossing. */
function atRadius(start: Point, direction: Point, radius: number): Point | undefined {
  const b = start.x * direction.x + start.y * direction.y;
  const c = start.x ** 2 + start.y ** 2 - radius * radius;
  const root = b * b - c;
  if (root < 0) return undefined;
  const s = -b + Math.sqrt(root);
  return { x: start.x + s * direction.x, y: start.y + s * direction.y };
}

/** Where the line of centres crosses the bisector at angle β. */
function atAngle(start: Point, direction: Point, beta: number): Point {
  const [c, n] = [Math.cos(beta), Math.sin(beta)];
  const s = (start.x * n - start.y * c) / (direction.y * c - direction.x * n);
  return { x: start.x + s * direction.x, y: start.y + s * direction.y };
}

/** The openings between the arms, or why there is no room for them. */
export function crossingOut(arms: Arms): CrossingOut {
  const room = roomFault(arms);
  if (room) return { kind: 'none', why: { kind: room, arms } };
  const tooTight = { kind: 'none', why: { kind: 'tooTight', arms } } as const;
  const beta = Math.PI / arms.count;
  const { direction, normal, start } = edgeOf(arms);
  const rim = atRadius(start, direction, arms.rimRadius - arms.fillet);
  const hub = atRadius(start, direction, arms.hubRadius + arms.fillet);
  const angle = (p: Point) => Math.atan2(p.y, p.x);
  if (!rim || angle(rim) >= beta) return tooTight;
  const foot = (p: Point): Point => ({ x: p.x - arms.fillet * normal.x, y: p.y - arms.fillet * normal.y });
  const [c, s] = [Math.cos(2 * beta), Math.sin(2 * beta)];
  const mirror = (p: Point): Point => ({ x: c * p.x + s * p.y, y: s * p.x - c * p.y });
  const rimLine = foot(rim);
  const rimCircle = scaled(rim, arms.rimRadius);
  const path: Vertex[] = [];
  const add = (p: Point, bulge: number) => path.push({ x: p.x, y: p.y, bulge });
  const meetsHub = hub !== undefined && angle(hub) < beta;
  const low = meetsHub ? hub : atAngle(start, direction, beta);
  if ((rim.x - low.x) * direction.x + (rim.y - low.y) * direction.y <= 0) return tooTight;
  add(foot(low), 0);
  add(rimLine, bulgeAbout(rim, rimLine, rimCircle));
  add(rimCircle, bulgeAbout({ x: 0, y: 0 }, rimCircle, mirror(rimCircle)));
  add(mirror(rimCircle), bulgeAbout(mirror(rim), mirror(rimCircle), mirror(rimLine)));
  add(mirror(rimLine), 0);
  if (meetsHub) {
    const hubCircle = scaled(hub, arms.hubRadius);
    add(mirror(foot(hub)), bulgeAbout(mirror(hub), mirror(foot(hub)), mirror(hubCircle)));
    add(mirror(hubCircle), -bulgeAbout({ x: 0, y: 0 }, hubCircle, mirror(hubCircle)));
    add(hubCircle, bulgeAbout(hub, hubCircle, foot(hub)));
  } else {
    add(mirror(foot(low)), bulgeAbout(low, mirror(foot(low)), foot(low)));
  }
  const middle = (arms.rimRadius + Math.hypot(low.x, low.y)) / 2;
  const turns = Array.from({ length: arms.count }, (_, k) => 2 * beta * k);
  return {
    kind: 'openings',
    openings: turns.map((turn) => turned(path, turn)),
    pierce: turns.map((turn) => [middle * Math.cos(turn + beta), middle * Math.sin(turn + beta)]),
  };
}

function roomFault(arms: Arms): NoOpenings['kind'] | undefined {
  if (arms.rimRadius - arms.hubRadius > 2 * arms.fillet && arms.hubRadius > 0 && arms.width < 2 * arms.hubRadius) {
    return undefined;
  }
  return arms.width >= 2 * arms.hubRadius ? 'armsAsBroadAsHub' : 'noRoom';
}
