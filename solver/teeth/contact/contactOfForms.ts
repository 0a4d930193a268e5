/**
 * Contact of two tooth forms at a distance, over one pitch of the driver.
 *
 * The push of one tooth (driveOfTooth.ts) is worked out once over its whole engagement; teeth follow each other at
 * one pitch, so the driven wheel stands at the greatest of their pushes. Both wheels are symmetric: the limit the
 * other way is the mirror image, and the play is the sum of the two.
 *
 * Non-null assertions on typed arrays: every index runs within the length the array was made with.
 */
import type { ToothForm } from '../forms/toothForm.ts';
import type { NoContact, PairContact } from './contact.ts';
import { contactPath } from './contactPath.ts';
import { driveOfTooth } from './driveOfTooth.ts';
import { type Engagement, engagementOf, type Leading, leadingOf } from './engagement.ts';
import { pressureAngleAt } from './pressureAngle.ts';

/** Steps over a pitch unless the caller wants otherwise. */
const STEPS = 48;

/** Steps at the start and end of a tooth's engagement: a push there that stands out is a jump. */
function jumpsOf(engagement: Engagement, leading: Leading): { drop: number; butting: number } {
  const { angle, first, steps, drivenPitch, together } = engagement;
  const rivals = (i: number): number => {
    let best = Number.NEGATIVE_INFINITY;
    for (let j = ((i % steps) + steps) % steps; j < angle.length; j += steps) {
      if (j !== i) best = Math.max(best, angle[j]! - ((j - i) / steps) * drivenPitch);
    }
    return best;
  };
  const valid = (i: number) => i >= 0 && i < angle.length && angle[i]! > Number.NEGATIVE_INFINITY;
  let [drop, butting] = [0, 0];
  const even = drivenPitch / steps;
  for (let i = 0; i < angle.length; i++) {
    const step = (((first + i) % steps) + steps) % steps;
    if (!valid(i) || leading.entry[step] !== i) continue;
    // Where the engagement ends the others stand one step on: allow for the even advance of that step.
    if (!valid(i - 1)) butting = Math.max(butting, angle[i]! - rivals(i) - even);
    if (!valid(i + 1)) drop = Math.max(drop, angle[i]! - rivals(i) - even);
  }
  const clean = (jump: number) => (jump > 8 * together && jump < Number.POSITIVE_INFINITY ? jump : 0);
  return { drop: clean(drop), butting: clean(butting) };
}

/** Tip to root at a distance, mm: the driver's tips first. Open trundles have no root. */
export function clearancesOf(driver: ToothForm, driven: ToothForm, distance: number) {
  const root = (form: ToothForm) => (form.open ? 0 : form.root);
  if (driven.internal) {
    return { driver: driven.root - distance - driver.tip, driven: driven.tip - distance - root(driver) };
  }
  if (driver.internal) {
    return { driver: driver.tip - distance - root(driven), driven: driver.root - distance - driven.tip };
  }
  return { driver: distance - driver.tip - root(driven), driven: distance - driven.tip - root(driver) };
}

/** Distance of the centres beyond which the teeth cannot touch. */
export function farthestReach(driver: ToothForm, driven: ToothForm): number {
  if (driver.internal) return driver.root + driven.tip;
  if (driven.internal) return driven.root + driver.tip;
  return driver.tip + driven.tip;
}

/** Contact of the pair, the first form driving. */
export function contactOfForms(
  driver: ToothForm,
  driven: ToothForm,
  distance: number,
  steps = STEPS,
): PairContact | NoContact {
  const refused = refusalOf(driver, driven, distance);
  if (refused) return refused;
  const drive = driveOfTooth(driver, driven, distance);
  const operating = operatingRadius(driver, driven, distance);
  const apart: NoContact = {
    kind: 'none',
    why: { kind: 'loseEachOther', distance },
  };
  if (!drive || (drive.to - drive.from) * driver.teeth < 2 * Math.PI) return apart;
  const engagement = engagementOf(driver, driven, drive, steps, operating);
  const leading = leadingOf(engagement);
  if (leading.entry.includes(-1)) return apart;
  return assemble(driver, driven, distance, engagement, leading, operating);
}

/** Radius of the driven wheel's operating pitch circle: the distance shared out by the teeth. */
export function operatingRadius(driver: ToothForm, driven: ToothForm, distance: number): number {
  const apart = driver.internal
    ? driver.teeth - driven.teeth
    : driven.internal
      ? driven.teeth - driver.teeth
      : driver.teeth + driven.teeth;
  return (distance * driven.teeth) / apart;
}

function refusalOf(driver: ToothForm, driven: ToothForm, distance: number): NoContact | undefined {
  if (driver.internal && driven.internal) return { kind: 'none', why: { kind: 'bothRings' } };
  if ((driver.internal && driven.teeth >= driver.teeth) || (driven.internal && driver.teeth >= driven.teeth)) {
    return { kind: 'none', why: { kind: 'ringTooFew' } };
  }
  if (!(distance > 0 && distance < Number.POSITIVE_INFINITY)) {
    return { kind: 'none', why: { kind: 'noDistance', distance } };
  }
  const reach = farthestReach(driver, driven);
  if (distance < reach) return undefined;
  return { kind: 'none', why: { kind: 'outOfReach', distance, short: distance - reach } };
}

/** The curves over one pitch, with the steps that touch before the line of centres and those on corners. */
function curvesOf(driver: ToothForm, driven: ToothForm, distance: number, engagement: Engagement, leading: Leading) {
  const { steps, driverPitch, drivenPitch } = engagement;
  const numbers = () => new Float64Array(steps);
  const curves = {
    driverAngle: numbers(),
    error: numbers(),
    play: numbers(),
    pairs: leading.pairs,
    pressureAngle: numbers(),
    pointX: numbers(),
    pointY: numbers(),
  };
  let before = 0;
  let corners = 0;
  for (let i = 0; i < steps; i++) {
    curves.driverAngle[i] = (i * driverPitch) / steps;
    curves.error[i] = leading.at[i]! - (i * drivenPitch) / steps;
    const mirrored = i === 0 ? leading.at[0]! : leading.at[steps - i]! - drivenPitch;
    curves.play[i] = -mirrored - leading.at[i]!;
    const entry = leading.entry[i]!;
    const phi = ((engagement.first + entry) * driverPitch) / steps;
    const radius = engagement.radius[entry]!;
    const at = pressureAngleAt(driver, driven, distance, phi, radius, engagement.touch[entry]!);
    curves.pressureAngle[i] = at.pressureAngle;
    curves.pointX[i] = at.x;
    curves.pointY[i] = at.y;
    if (at.y < 0) before++;
    if (engagement.touch[entry] !== 'flanks') corners++;
  }
  return { curves, engaging: before / steps, onCorners: corners / steps };
}

/** Least, greatest and mean of a curve, each times `scale`. */
const summaryOf = (values: Float64Array, scale = 1) => ({
  least: scale * values.reduce((a, b) => Math.min(a, b), Number.POSITIVE_INFINITY),
  greatest: scale * values.reduce((a, b) => Math.max(a, b), Number.NEGATIVE_INFINITY),
  mean: (scale * values.reduce((a, b) => a + b, 0)) / values.length,
});

function assemble(
  driver: ToothForm,
  driven: ToothForm,
  distance: number,
  engagement: Engagement,
  leading: Leading,
  operating: number,
): PairContact {
  const { driverPitch } = engagement;
  const { curves, engaging, onCorners } = curvesOf(driver, driven, distance, engagement, leading);
  const path = contactPath(driver, driven, distance, engagement);
  const clearance = clearancesOf(driver, driven, distance);
  const errors = summaryOf(curves.error);
  const play = summaryOf(curves.play);
  const peak = Math.max(errors.greatest, path.errorAtEnds.greatest) - Math.min(errors.least, path.errorAtEnds.least);
  const angles = summaryOf(curves.pressureAngle);
  return {
    kind: 'contact',
    distance,
    internal: driver.internal || driven.internal,
    play,
    backlash: summaryOf(curves.play, operating),
    error: { angle: peak, along: peak * operating },
    pairsInContact: path.length / driverPitch,
    pairs: { least: Math.min(...leading.pairs), most: Math.max(...leading.pairs) },
    start: path.start,
    end: path.end,
    approach: Math.max(0, -path.start) / driverPitch,
    recess: Math.max(0, path.end) / driverPitch,
    engaging,
    onCorners,
    pressureAngle: { least: angles.least, greatest: angles.greatest },
    tipClearance: clearance,
    binds: play.least < -engagement.together,
    bottoms: clearance.driver < -1e-9 * driver.module || clearance.driven < -1e-9 * driver.module,
    ...jumpsOf(engagement, leading),
    touches: path.touches,
    curves,
  };
}
