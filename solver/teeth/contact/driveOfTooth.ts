/**
 * How far one tooth of the driver pushes the driven wheel.
 *
 * Frame: the driver's centre is the origin, the mesh lies on +x, the driver turns to the left. A tooth stands with its
 * centre line at φ. Each point (r₁, φ + half₁(r₁)) of its leading flank is taken to the driven wheel's polar frame
 * (r₂, b), b from the line of centres, positive the way the driven teeth go. The driven tooth in front, centred at β,
 * covers angles from β − half₂(r₂) on, so it must stand at β ≥ b + half₂(r₂): the push is the maximum of that along
 * the flank. The flank counts only where r₂ is within the driven tips; at that limit the driven tooth's own corner
 * touches, so tips against flanks count both ways. Nothing is assumed about the forms, the distance or conjugacy.
 *
 * Non-null assertions on typed arrays: every index runs within the length the array was made with.
 */
import { rootBetween } from '../forms/bracketed.ts';
import { halfAngleAt, type ToothForm } from '../forms/toothForm.ts';
import { climbHill, type HillTop } from './hill.ts';

export type Touch =
  | 'none'
  /** Flank on flank. */
  | 'flanks'
  /** The driver's tip on the driven flank, or the driven tip on the driver's flank. */
  | 'driverTip'
  | 'drivenTip';

/** Result of one question, written over at each call. */
export interface Push {
  /** Where the driven tooth in front must stand at least, radians. */
  angle: number;
  /** Radius on the driver's flank that touches. */
  radius: number;
  touch: Touch;
}

/** How one tooth of the driver pushes while it is within reach, by the driver's angle φ, radians. */
export interface ToothDrive {
  /** Angles φ between which the tooth is within reach of the driven wheel. */
  readonly from: number;
  readonly to: number;
  /** The push of the tooth at φ; the same object at every call. */
  readonly at: (phi: number) => Push;
}

/** Stations along a face or pin, and along a root corner or straight flank; fewer risk a missed hill. */
const STATIONS = 8;
const ROOT_STATIONS = 4;
/** Fineness in radius of a hill's top, × module: the push is level there, so it is right to the square of this. */
const FINE = 1e-6;
/** Length over which the slope at a tip is felt, × module: it decides whether the corner or the flank touches. */
const NUDGE = 2e-7;

/** Which side of the driver's centre the driven centre lies, and how x becomes the distance along the driven radius. */
interface Frame {
  readonly sign: number;
  readonly offset: number;
}

function frameOf(driver: ToothForm, driven: ToothForm, distance: number): Frame {
  // Outside each other: C − x. Driven ring: its centre lies at −C, x + C. Driver ring: driven centre at +C, x − C.
  if (driven.internal) return { sign: 1, offset: distance };
  return driver.internal ? { sign: 1, offset: -distance } : { sign: -1, offset: distance };
}

/** Radii at which the flank is looked at: ends of its pieces and cosine-spaced places between (pins turn over at their ends). */
function stationsOf(form: ToothForm, from: number, to: number): Float64Array {
  const radii: number[] = [];
  for (const piece of form.pieces) {
    const [low, high] = [Math.max(piece.from, from), Math.min(piece.to, to)];
    if (!(high > low)) continue;
    const steps = piece.kind === 'fillet' || piece.straight ? ROOT_STATIONS : STATIONS;
    for (let i = radii.length > 0 ? 1 : 0; i <= steps; i++) {
      radii.push(i === steps ? high : low + ((high - low) * (1 - Math.cos((Math.PI * i) / steps))) / 2);
    }
  }
  return Float64Array.from(radii);
}

/**
 * By how much the engagement of one tooth exceeds a pitch, in pitches of the driver: below zero some part of the pitch
 * is without any contact. −1 where the teeth do not reach each other at all.
 */
export function reachBeyondPitch(driver: ToothForm, driven: ToothForm, distance: number): number {
  const drive = driveOfTooth(driver, driven, distance);
  return drive ? ((drive.to - drive.from) * driver.teeth) / (2 * Math.PI) - 1 : -1;
}

/** Prepares the questions for a pair at a distance; `undefined` when the tip circles do not reach each other. */
export function driveOfTooth(driver: ToothForm, driven: ToothForm, distance: number): ToothDrive | undefined {
  const { sign, offset } = frameOf(driver, driven, distance);
  // Without rings: only radii that can come within the driven tips. Rings reach everywhere outside their tips.
  const low = Math.min(driver.tip, driver.root);
  const high = Math.max(driver.tip, driver.root);
  const reach = driver.internal || driven.internal ? low : Math.max(low, distance - driven.tip);
  if (!(reach < high)) return undefined;
  const radii = stationsOf(driver, reach, high);
  const halves = radii.map((radius) => halfAngleAt(driver, radius));
  const span = reachOf(driven, distance, radii, halves);
  if (!span) return undefined;
  const count = radii.length;
  const nudge = NUDGE * driver.module;
  const fine = FINE * driver.module;
  const tipStation = driver.internal ? 0 : count - 1;
  const far = Math.PI / driven.teeth / 2;
  // The stations within reach, with the crossings of the driven tip circle put in where the flank leaves it.
  const r = new Float64Array(2 * count);
  const v = new Float64Array(2 * count);
  const kind = new Uint8Array(2 * count);
  const push: Push = { angle: Number.NEGATIVE_INFINITY, radius: 0, touch: 'none' };
  const top: HillTop = { at: 0, height: 0 };
  let phi = 0;
  let driven2 = 0;

  const counts = driven.internal
    ? (r2: number) => r2 >= driven.tip
    : driven.open
      ? (r2: number) => r2 <= driven.tip && r2 >= driven.root
      : (r2: number) => r2 <= driven.tip;
  const pushAt = (radius: number, half: number): number => {
    const angle = phi + half;
    const dx = sign * radius * Math.cos(angle) + offset;
    const y = radius * Math.sin(angle);
    driven2 = Math.sqrt(dx * dx + y * y);
    return counts(driven2) ? Math.atan2(y, dx) + halfAngleAt(driven, driven2) : Number.NEGATIVE_INFINITY;
  };
  const pushOf = (radius: number): number => pushAt(radius, halfAngleAt(driver, radius));

  /** Radius between two stations where the flank crosses the driven tip circle (or the inner end of open pins). */
  const crossing = (outside: number, inside: number, outsideDriven: number): number => {
    const edge = driven.open && outsideDriven < driven.root ? driven.root : driven.tip;
    const over = (radius: number): number => {
      const angle = phi + halfAngleAt(driver, radius);
      const dx = sign * radius * Math.cos(angle) + offset;
      const y = radius * Math.sin(angle);
      return Math.sqrt(dx * dx + y * y) - edge;
    };
    let found = rootBetween(over, outside, inside, 1e-15);
    // Step the last rounding inwards until the place counts.
    for (let step = 1e-15 * Math.abs(inside); pushOf(found) === Number.NEGATIVE_INFINITY; step *= 2) {
      found = Math.abs(inside - found) > step ? found + Math.sign(inside - found) * step : inside;
    }
    return found;
  };

  /** Fills r, v, kind; gives how many. kind: 0 a station, 1 a crossing that opens a stretch, 2 one that closes it. */
  const collect = (): number => {
    let n = 0;
    let before = Number.NEGATIVE_INFINITY;
    let beforeDriven = 0;
    for (let i = 0; i < count; i++) {
      const value = pushAt(radii[i]!, halves[i]!);
      const here = driven2;
      const was = before > Number.NEGATIVE_INFINITY;
      const is = value > Number.NEGATIVE_INFINITY;
      if (i > 0 && was !== is) {
        const at = is ? crossing(radii[i - 1]!, radii[i]!, beforeDriven) : crossing(radii[i]!, radii[i - 1]!, here);
        r[n] = at;
        v[n] = pushOf(at);
        kind[n++] = is ? 1 : 2;
      }
      if (is) {
        r[n] = radii[i]!;
        v[n] = value;
        kind[n++] = i === 0 ? 1 : i === count - 1 ? 2 : 0;
      }
      before = value;
      beforeDriven = here;
    }
    return n;
  };

  /** Does the push rise from the end of a stretch inwards? Then the corner there is not what touches. */
  const risesFrom = (end: number, value: number, inwards: number): boolean => pushOf(end + inwards * nudge) > value;

  const touchAtEnd = (radius: number): Touch =>
    radius === radii[tipStation] ? 'driverTip' : radius === radii[count - 1 - tipStation] ? 'flanks' : 'drivenTip';

  const at = (angle: number): Push => {
    phi = angle;
    push.angle = Number.NEGATIVE_INFINITY;
    push.touch = 'none';
    const n = collect();
    let best = Number.NEGATIVE_INFINITY;
    for (let i = 0; i < n; i++) if (v[i]! > best) best = v[i]!;
    for (let i = 0; i < n; i++) {
      // Hills far below the best cannot win: stations differ by far less than a quarter of a tooth.
      if (v[i]! < best - far) continue;
      const opens = kind[i] === 1;
      const closes = kind[i] === 2;
      if ((!opens && v[i]! < v[i - 1]!) || (!closes && v[i]! < v[i + 1]!)) continue;
      const end = opens || closes;
      if (end && !risesFrom(r[i]!, v[i]!, opens ? 1 : -1)) {
        if (v[i]! > push.angle) {
          push.angle = v[i]!;
          push.radius = r[i]!;
          push.touch = touchAtEnd(r[i]!);
        }
        continue;
      }
      climbHill(pushOf, opens ? r[i]! : r[i - 1]!, r[i]!, v[i]!, closes ? r[i]! : r[i + 1]!, fine, top);
      if (top.height > push.angle) {
        push.angle = top.height;
        push.radius = top.at;
        push.touch = 'flanks';
      }
    }
    return push;
  };
  return { ...span, at };
}

/** Angles of the tooth between which any station of its leading flank lies within the driven tips. */
function reachOf(
  driven: ToothForm,
  distance: number,
  radii: Float64Array,
  halves: Float64Array,
): { readonly from: number; readonly to: number } | undefined {
  let [from, to] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (let i = 0; i < radii.length; i++) {
    const radius = radii[i]!;
    const plus = driven.internal
      ? driven.tip ** 2 - radius ** 2 - distance ** 2
      : radius ** 2 + distance ** 2 - driven.tip ** 2;
    const cos = plus / (2 * radius * distance);
    if (cos > 1) continue;
    const wide = cos < -1 ? Math.PI : Math.acos(cos);
    from = Math.min(from, -wide - halves[i]!);
    to = Math.max(to, wide - halves[i]!);
  }
  return from < to ? { from, to } : undefined;
}
