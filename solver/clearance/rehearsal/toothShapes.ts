/**
 * Teeth as convex shapes for the rehearsal: points on the true flanks and root corners, joined by chords.
 *
 * Points are set as closely as it takes for a chord to leave its curve by no more than `SAG`: a rounded flank is thinner
 * by that much at most, a hollow one fatter. Neighbouring chords that bulge make one shape; where the flank turns
 * hollow (at root corners, undercuts and in rings) the next shape begins.
 */

import { type Point, pointAtAngle } from '../../geometry/index.ts';
import { halfAngleAt, type ToothForm } from '../../teeth/index.ts';
import { MOST_CORNERS, type TurningShape } from '../planckAdapter.ts';

/** Most points on one flank of a shape, so that both flanks together are within planck's corners. */
const POINTS = MOST_CORNERS / 2;
/** A chord may leave its curve by so much, × module: a tenth of the overlap that counts as force. */
const SAG = 0.003;
/** A stretch of a flank is halved at most so many times. */
const MOST_HALVINGS = 5;
/**
 * The last of a root corner, as a share of its height, where it runs out along the root circle: nothing reaches it that
 * the root circle does not stop, and to follow it would take many points.
 */
const RUN_OUT = 0.15;

/** The teeth of a wheel, each at its angle, and what is there between them: the root circle. */
export function toothShapes(
  form: ToothForm,
  phase: number,
): { readonly teeth: readonly (readonly TurningShape[])[]; readonly always: readonly TurningShape[] } {
  const step = (2 * Math.PI) / form.teeth;
  const angles = Array.from({ length: form.teeth }, (_, k) => phase + k * step);
  if (form.open) {
    const radius = (form.tip - form.root) / 2;
    const pin = (angle: number): TurningShape => ({
      kind: 'circle',
      centre: pointAtAngle({ x: 0, y: 0 }, form.pitchRadius, angle),
      radius,
    });
    return { teeth: angles.map((angle) => [pin(angle)]), always: [] };
  }
  const shapes = bulging(flankPoints(form));
  return {
    teeth: angles.map((angle) => shapes.map((points) => ({ kind: 'polygon', corners: outlineOf(points, angle) }))),
    always: form.internal ? [] : [{ kind: 'circle', centre: { x: 0, y: 0 }, radius: form.root }],
  };
}

/** A point of the flank: its radius, and half of the angle that the tooth covers there. */
interface FlankPoint {
  readonly radius: number;
  readonly half: number;
}

/** Points of one flank from the smallest radius to the largest. */
function flankPoints(form: ToothForm): readonly FlankPoint[] {
  const [low, high] = [Math.min(form.root, form.tip), Math.max(form.root, form.tip)];
  const at = (radius: number): FlankPoint => ({ radius, half: Math.max(halfAngleAt(form, radius), LEAST_HALF) });
  const points: FlankPoint[] = [];
  for (const { kind, from, to, straight } of form.pieces) {
    const runOut = kind === 'fillet' ? RUN_OUT * (to - from) : 0;
    const begin = at(Math.max(low, from + (form.internal ? 0 : runOut)));
    const end = at(Math.min(high, to - (form.internal ? runOut : 0)));
    if (begin.radius >= end.radius) continue;
    if (points.length === 0) points.push(begin);
    if (!straight) between(begin, end, at, SAG * form.module, MOST_HALVINGS, points);
    points.push(end);
  }
  return withRoot(points, form);
}

/** Adds the points that the curve wants between two of its points. */
function between(
  a: FlankPoint,
  b: FlankPoint,
  at: (radius: number) => FlankPoint,
  sag: number,
  halvings: number,
  points: FlankPoint[],
): void {
  const middle = at((a.radius + b.radius) / 2);
  if (halvings === 0 || Math.abs(bulgeOf(a, middle, b)) <= sag) return;
  between(a, middle, at, sag, halvings - 1, points);
  points.push(middle);
  between(middle, b, at, sag, halvings - 1, points);
}

/** Where the corner's run-out is left away, the tooth keeps its width down to the root circle. */
function withRoot(points: readonly FlankPoint[], form: ToothForm): readonly FlankPoint[] {
  const end = form.internal ? points[points.length - 1] : points[0];
  if (!end || Math.abs(end.radius - form.root) < 1e-9 * form.root) return points;
  const width = end.radius * Math.sin(end.half);
  const root = { radius: form.root, half: Math.asin(Math.min(1, width / form.root)) };
  return form.internal ? [...points, root] : [root, ...points];
}

const place = ({ radius, half }: FlankPoint): Point => pointAtAngle({ x: 0, y: 0 }, radius, half);

/** How far a point of the flank stands out of the chord of two others, mm; negative where the flank is hollow. */
function bulgeOf(before: FlankPoint, point: FlankPoint, after: FlankPoint): number {
  const [a, p, b] = [place(before), place(point), place(after)];
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  return (dx * (p.y - a.y) - dy * (p.x - a.x)) / Math.hypot(dx, dy);
}

/** Runs of points along which the flank bulges, each beginning where the one before it ends. */
function bulging(points: readonly FlankPoint[]): readonly (readonly FlankPoint[])[] {
  const runs: FlankPoint[][] = [];
  let run: FlankPoint[] = [];
  for (const point of points) {
    const [before, last] = run.slice(-2);
    const isFull = run.length === POINTS;
    if (before && last && (isFull || bulgeOf(before, last, point) < 0)) {
      runs.push(run);
      run = [last];
    }
    run.push(point);
  }
  return [...runs, run];
}

/** Up one flank and down the other. */
function outlineOf(points: readonly FlankPoint[], angle: number): Point[] {
  const side = (sign: number): Point[] =>
    points.map(({ radius, half }) => pointAtAngle({ x: 0, y: 0 }, radius, angle + sign * half));
  return [...side(-1), ...side(1).reverse()];
}

/** A pointed tip keeps two corners, radians. */
const LEAST_HALF = 1e-4;
