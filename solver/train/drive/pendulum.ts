/** Pendulum lengths, beats, and what amplitude and warmth do to them. */
import type { ArborId } from '../../movement/ids.ts';
import { multiply, type Rational, rational } from '../turning/rational.ts';
import type { Turning } from '../turning/turning.ts';
import { STANDARD_GRAVITY } from './gravity.ts';
import { checkNumbers, type Refusal } from './inputCheck.ts';

/** A pendulum with its beat and its errors. */
export interface Pendulum {
  readonly kind: 'pendulum';
  /** Length to the centre of oscillation, mm. */
  readonly length: number;
  readonly beatsPerHour: number;
  /** Time of one beat (half a swing there and back), seconds. */
  readonly beatSeconds: number;
  /** Loss against very small swings, seconds a day, at the stated amplitude. */
  readonly circularErrorPerDay: number;
  /** Loss for each degree Celsius of warmth, seconds a day, for the stated rod. */
  readonly lossPerDegreePerDay: number;
  /** Change of length that makes one second a day, mm. */
  readonly millimetresPerSecondADay: number;
  /** Swing to either side that the length is for, degrees. */
  readonly amplitudeDeg: number;
}

/** What decides the length of a pendulum. */
export interface PendulumOptions {
  readonly beatsPerHour: number;
  /** Acceleration of free fall, m/s² (default the standard 9.80665; 9.78 at the equator to 9.83 at the poles). */
  readonly gravity?: number;
  /** Swing to either side, degrees (default 2). */
  readonly amplitudeDeg?: number;
  /** Expansion of the rod, 1/K (default 11.5e-6, plain steel, from memory of handbook tables). */
  readonly expansion?: number;
}

const DAY = 86_400;

/** T/T₀ − 1 for a swing to `a` radians either side: the first two terms of the elliptic integral's series. */
export const circularError = (a: number): number => (a * a) / 16 + (11 * a ** 4) / 3072;

/**
 * The pendulum for so many beats an hour: L = g (t/π)² for a beat of t seconds (the law of the simple pendulum;
 * a seconds pendulum is 993.6 mm at standard gravity).
 */
export function pendulumFor(options: PendulumOptions): Pendulum | Refusal {
  const { beatsPerHour, gravity = STANDARD_GRAVITY, amplitudeDeg = 2, expansion = 11.5e-6 } = options;
  const problems = checkNumbers({
    beatsPerHour: { value: beatsPerHour, above: 0, upTo: 1e6 },
    gravity: { value: gravity, above: 0, upTo: 100 },
    amplitudeDeg: { value: amplitudeDeg, from: 0, upTo: 60 },
    expansion: { value: expansion, from: 0, upTo: 1e-3 },
  });
  if (problems.length > 0) return { kind: 'refused', problems };
  const beatSeconds = 3600 / beatsPerHour;
  const slow = circularError((amplitudeDeg * Math.PI) / 180);
  // The stated rate is the one at the stated amplitude, so the pendulum is shorter by twice the circular error.
  const length = (1000 * gravity * (beatSeconds / Math.PI) ** 2) / (1 + slow) ** 2;
  return {
    kind: 'pendulum',
    length,
    beatsPerHour,
    beatSeconds,
    circularErrorPerDay: DAY * slow,
    lossPerDegreePerDay: (DAY * expansion) / 2,
    millimetresPerSecondADay: (2 * length) / DAY,
    amplitudeDeg,
  };
}

/** Beats an hour of a pendulum of this length, mm, at very small swings. */
export const beatsOfLength = (length: number, gravity = STANDARD_GRAVITY): number =>
  3600 / (Math.PI * Math.sqrt(length / 1000 / gravity));

/** Exact beats an hour of an escape wheel with ordinary pallets: two for each tooth that passes. */
export function beatsOfEscape(turning: Turning, escapeArbor: ArborId, teeth: number): Rational | undefined {
  const turns = turning.arbors.get(escapeArbor)?.rate?.turns;
  if (!turns || !turning.drive || turns.n === 0n) return undefined;
  const perHour = multiply(
    turns.n < 0n ? rational(-turns.n, turns.d) : turns,
    rational(3600n * turning.drive.periodSeconds.d, turning.drive.periodSeconds.n),
  );
  return multiply(perHour, rational(2 * teeth));
}
