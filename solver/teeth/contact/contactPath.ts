/**
 * Where the contact of one pair begins and ends, to the last digits.
 *
 * A pair is in contact while its push is the greatest. Two involute pairs push equally for a while; there a pair's
 * part ends where its flanks part and only a corner touches.
 *
 * Non-null assertions on typed arrays: every index runs within the length the array was made with.
 */
import { halfAngleAt, type ToothForm } from '../forms/toothForm.ts';
import type { Touch } from './driveOfTooth.ts';
import type { Engagement } from './engagement.ts';

/** The stretch of the driver's turn over which one pair of teeth touches, radians. */
export interface ContactPath {
  /** Driver's angles of the first start and the last end, from the moment when the pair touches on the line of centres. */
  readonly start: number;
  readonly end: number;
  /** Sum of the stretches in contact: more than one where the form lets go and takes up again. */
  readonly length: number;
  readonly touches: { readonly start: Touch; readonly end: Touch };
  /** Transmission error at the ends, where it has its corners. */
  readonly errorAtEnds: { readonly least: number; readonly greatest: number };
}

/** Halvings of a grid step: to a part in two million of it. */
const HALVINGS = 21;

/** Start, end and length of a pair's contact. */
export function contactPath(
  driver: ToothForm,
  driven: ToothForm,
  distance: number,
  engagement: Engagement,
): ContactPath {
  const { drive, steps, first, driverPitch, drivenPitch } = engagement;
  const gridAngle = (i: number) => ((first + i) * driverPitch) / steps;
  const stretches = stretchesOf(engagement);
  const edge = (inside: number, outside: number): number => {
    let [a, b] = [gridAngle(inside), gridAngle(outside)];
    for (let n = 0; n < HALVINGS; n++) {
      const middle = (a + b) / 2;
      if (inContact(engagement, middle)) a = middle;
      else b = middle;
    }
    return (a + b) / 2;
  };
  const ends = stretches.map(([from, to]) => [edge(from, from - 1), edge(to, to + 1)] as const);
  const centre = onLineOfCentres(driver, driven, distance);
  const errors = ends
    .flat()
    .map(
      (phi) =>
        Math.max(drive.at(phi).angle, rivalsAt(engagement, phi)) - drivenPitch / 2 - (phi * drivenPitch) / driverPitch,
    )
    .filter(Number.isFinite);
  const touchAt = (i: number | undefined): Touch => engagement.touch[i ?? -1] ?? 'none';
  return {
    start: Math.min(...ends.map(([start]) => start)) - centre,
    end: Math.max(...ends.map(([, end]) => end)) - centre,
    length: ends.reduce((sum, [start, end]) => sum + end - start, 0),
    touches: { start: touchAt(stretches[0]?.[0]), end: touchAt(stretches.at(-1)?.[1]) },
    errorAtEnds: { least: Math.min(...errors), greatest: Math.max(...errors) },
  };
}

/** The greatest push of the other teeth, seen from the tooth at φ. */
function rivalsAt({ drive, driverPitch, drivenPitch }: Engagement, phi: number): number {
  let others = Number.NEGATIVE_INFINITY;
  for (let k = -1; phi + k * driverPitch >= drive.from; k--) {
    others = Math.max(others, drive.at(phi + k * driverPitch).angle - k * drivenPitch);
  }
  for (let k = 1; phi + k * driverPitch <= drive.to; k++) {
    others = Math.max(others, drive.at(phi + k * driverPitch).angle - k * drivenPitch);
  }
  return others;
}

/** Pushes that differ by less are equal, radians: a hundred times what the search for a hill's top may leave. */
const ROUNDING = 1e-9;

const holds = (push: number, touch: Touch, others: number, together: number): boolean =>
  touch === 'flanks' ? push >= others - together : touch !== 'none' && push > others + ROUNDING;

function inContact(engagement: Engagement, phi: number): boolean {
  const { angle, touch } = engagement.drive.at(phi);
  return touch !== 'none' && holds(angle, touch, rivalsAt(engagement, phi), engagement.together);
}

/** The stretches of the grid over which the tooth is in contact, first and last index of each. */
function stretchesOf(engagement: Engagement): readonly (readonly [number, number])[] {
  const { angle, touch, steps, drivenPitch, together } = engagement;
  const length = angle.length;
  const found: [number, number][] = [];
  let begin = -1;
  for (let i = 0; i <= length; i++) {
    let others = Number.NEGATIVE_INFINITY;
    for (let j = i % steps; i < length && j < length; j += steps) {
      if (j !== i) others = Math.max(others, angle[j]! - ((j - i) / steps) * drivenPitch);
    }
    const now = i < length && holds(angle[i]!, touch[i]!, others, together);
    if (now && begin < 0) begin = i;
    if (!now && begin >= 0) {
      found.push([begin, i - 1]);
      begin = -1;
    }
  }
  return found;
}

/** Driver's tooth angle at which the operating pitch points of both flanks meet on the line of centres. */
function onLineOfCentres(driver: ToothForm, driven: ToothForm, distance: number): number {
  const apart = driver.internal
    ? driver.teeth - driven.teeth
    : driven.internal
      ? driven.teeth - driver.teeth
      : driver.teeth + driven.teeth;
  const radius = (distance * driver.teeth) / apart;
  const [low, high] = driver.tip > driver.root ? [driver.root, driver.tip] : [driver.tip, driver.root];
  return -halfAngleAt(driver, Math.min(high, Math.max(low, radius)));
}
