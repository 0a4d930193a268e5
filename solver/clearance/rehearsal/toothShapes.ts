/**
 * Teeth as convex shapes for the rehearsal: points on the true flanks, joined by chords.
 *
 * Chords lie inside a rounded flank, so the teeth are thinner by at most s²/8r for a chord s on a curve of radius r.
 * A hollow flank (rings) is cut into slices, which follow it as closely. Root corners are left out: a tooth keeps its
 * width from where its flank begins down to the root circle, since a chord over the hollow corner would be too fat.
 */
import { halfAngleAt, type ToothForm } from '../../gearing/index.ts';
import { pointAtAngle, type XY } from '../../geometry/index.ts';
import { MOST_CORNERS, type TurningShape } from '../planckAdapter.ts';

/** Points on one flank, so that both flanks together are within planck's corners. */
const POINTS = MOST_CORNERS / 2;
/** A flank hollow by less is taken as straight, × module. */
const HOLLOW = 0.003;

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
      centre: pointAtAngle([0, 0], form.pitchRadius, angle),
      radius,
    });
    return { teeth: angles.map((angle) => [pin(angle)]), always: [] };
  }
  const { radii, halves } = flankPoints(form);
  const isSliced = isHollow(radii, halves, form);
  const teeth = angles.map((angle): readonly TurningShape[] =>
    isSliced ? slicesOf(radii, halves, angle) : [{ kind: 'polygon', corners: outlineOf(radii, halves, angle) }],
  );
  return { teeth, always: form.internal ? [] : [{ kind: 'circle', centre: [0, 0], radius: form.root }] };
}

/** Radii from the root outwards, and half of the angle that the tooth covers there. */
function flankPoints(form: ToothForm): { readonly radii: readonly number[]; readonly halves: readonly number[] } {
  const [low, high] = [Math.min(form.root, form.tip), Math.max(form.root, form.tip)];
  const corner = form.pieces.find(({ kind }) => kind === 'fillet');
  const begins = corner === undefined ? low : form.internal ? corner.from : corner.to;
  const [from, to] = form.internal ? [low, Math.min(begins, high)] : [Math.max(begins, low), high];
  const onFlank = Array.from({ length: POINTS - 1 }, (_, i) => from + ((to - from) * i) / (POINTS - 2));
  const halves = onFlank.map((radius) => halfAngleAt(form, radius));
  const root = form.internal ? high : low;
  const end = form.internal ? onFlank.length - 1 : 0;
  const width = (onFlank[end] ?? root) * Math.sin(halves[end] ?? 0);
  const atRoot = Math.asin(Math.min(1, width / root));
  return form.internal
    ? { radii: [...onFlank, root], halves: [...halves, atRoot] }
    : { radii: [root, ...onFlank], halves: [atRoot, ...halves] };
}

/** Up one flank and down the other. */
function outlineOf(radii: readonly number[], halves: readonly number[], angle: number): XY[] {
  const side = (sign: number): XY[] =>
    radii.map((radius, i) => pointAtAngle([0, 0], radius, angle + sign * Math.max(halves[i] ?? 0, LEAST_HALF)));
  return [...side(-1), ...side(1).reverse()];
}

/** A pointed tip keeps two corners, radians. */
const LEAST_HALF = 1e-4;

function slicesOf(radii: readonly number[], halves: readonly number[], angle: number): TurningShape[] {
  return radii.slice(1).map((_, i): TurningShape => {
    const corners = outlineOf(radii.slice(i, i + 2), halves.slice(i, i + 2), angle);
    return { kind: 'polygon', corners };
  });
}

/** Whether a point of the flank lies inside the chord of its neighbours, seen from the tooth's middle. */
function isHollow(radii: readonly number[], halves: readonly number[], form: ToothForm): boolean {
  const flank = radii.map((radius, i) => pointAtAngle([0, 0], radius, halves[i] ?? 0));
  return flank.some((point, i) => {
    const [before, after] = [flank[i - 1], flank[i + 1]];
    if (!before || !after) return false;
    const [dx, dy] = [after[0] - before[0], after[1] - before[1]];
    const inside = (dx * (point[1] - before[1]) - dy * (point[0] - before[0])) / Math.hypot(dx, dy);
    return -inside > HOLLOW * form.module;
  });
}
