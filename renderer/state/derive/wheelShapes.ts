/** The drawn shapes of all wheels: true teeth from the solver, as points for the tooth batch. */

import type { Movement, Wheel } from '../../../solver/movement/schema.ts';
import { formOfWheel, halfAngleAt, type ToothForm } from '../../../solver/teeth/index.ts';
import { crossingOut, statedArms } from '../../../solver/teeth/outlines/index.ts';
import { PROFILE_POINTS, type WheelShape } from './wheelShape.ts';

/** The drawn shape of each wheel, by id. */
export interface Shapes extends ReadonlyMap<string, WheelShape> {}

/** Points of the profile: half of the root space, a flank, the tip, the other flank, half of the next space. */
const ROOT_POINTS = 3;
const FLANK_POINTS = 11;
const TIP_POINTS = PROFILE_POINTS - 2 * (ROOT_POINTS + FLANK_POINTS);

/** One pitch of a tooth form as PROFILE_POINTS places, from the middle of one space to the middle of the next. */
export function profileOf(form: ToothForm): Float32Array {
  return form.open ? pinProfile(form) : toothProfile(form);
}

function toothProfile(form: ToothForm): Float32Array {
  const points = new Float32Array(2 * PROFILE_POINTS);
  const halfPitch = Math.PI / form.teeth;
  const atRoot = Math.min(halfPitch, halfAngleAt(form, form.root));
  const atTip = Math.max(0, halfAngleAt(form, form.tip));
  let at = 0;
  const put = (radius: number, angle: number): void => {
    points[at] = radius * Math.cos(angle);
    points[at + 1] = radius * Math.sin(angle);
    at += 2;
  };
  const between = (from: number, to: number, part: number): number => from + (to - from) * part;
  const flank = (index: number): number => between(form.root, form.tip, eased((index + 0.5) / FLANK_POINTS));
  for (let i = 0; i < ROOT_POINTS; i++) put(form.root, between(-halfPitch, -atRoot, i / (ROOT_POINTS - 1)));
  for (let i = 0; i < FLANK_POINTS; i++) put(flank(i), -halfAngleAt(form, flank(i)));
  for (let i = 0; i < TIP_POINTS; i++) put(form.tip, between(-atTip, atTip, i / (TIP_POINTS - 1)));
  for (let i = FLANK_POINTS - 1; i >= 0; i--) put(flank(i), halfAngleAt(form, flank(i)));
  for (let i = 0; i < ROOT_POINTS; i++) put(form.root, between(atRoot, halfPitch, i / (ROOT_POINTS - 1)));
  return points;
}

/** More points near the root and the tip, where flanks bend most. */
const eased = (part: number): number => part * part * (3 - 2 * part);

/** A round pin stands alone: the profile runs once round it. */
function pinProfile(form: ToothForm): Float32Array {
  const points = new Float32Array(2 * PROFILE_POINTS);
  const radius = (form.tip - form.root) / 2;
  const centre = (form.tip + form.root) / 2;
  for (let i = 0; i < PROFILE_POINTS; i++) {
    const angle = Math.PI + (2 * Math.PI * i) / (PROFILE_POINTS - 1);
    points[2 * i] = centre + radius * Math.cos(angle);
    points[2 * i + 1] = radius * Math.sin(angle);
  }
  return points;
}

/** The openings between the arms that a wheel states. */
function windowsOf(wheel: Wheel, movement: Movement): WheelShape['windows'] {
  const arms = statedArms(wheel, movement);
  const crossed = arms && crossingOut(arms);
  if (crossed?.kind !== 'openings') return [];
  return crossed.openings.map((vertices) => ({ kind: 'path', vertices }));
}

/** The parts of the movement that the shapes were made from. */
interface Known {
  readonly wheels: Movement['wheels'];
  readonly rules: Movement['rules'];
}
const madeFrom = new WeakMap<Shapes, Known>();

/** Shapes by wheel id; a shape that did not change stays the same object, and so does the whole map. */
export function shapesOf(movement: Movement, before?: Shapes): Shapes {
  const known = before && madeFrom.get(before);
  if (before && known?.wheels === movement.wheels && known.rules === movement.rules) return before;
  const shared = new Map<string, Float32Array>();
  for (const { profile } of before?.values() ?? []) shared.set(profile.join(' '), profile);
  const shapes = new Map<string, WheelShape>();
  const sources = new Map(known?.wheels.map((wheel) => [wheel.id, wheel]));
  for (const wheel of movement.wheels) {
    const form = formOfWheel(wheel, movement);
    if (form.kind === 'none') continue;
    const fresh = profileOf(form);
    const key = fresh.join(' ');
    const profile = shared.get(key) ?? fresh;
    shared.set(key, profile);
    const last = before?.get(wheel.id);
    const isSame = last?.profile === profile && sources.get(wheel.id) === wheel;
    shapes.set(wheel.id, isSame ? last : { profile, windows: windowsOf(wheel, movement) });
  }
  madeFrom.set(shapes, movement);
  return shapes;
}
