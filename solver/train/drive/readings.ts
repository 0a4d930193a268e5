/** What the dials read after so many turns of the drive, or so much time. */
import type { IndicationId } from '../../movement/ids.ts';
import type { Sense } from '../turning/linkage.ts';
import { divide, exactly, multiply, type Rational, rational, toNumber } from '../turning/rational.ts';
import type { Turning } from '../turning/turning.ts';

/** What one hand shows at a moment. */
export interface DialReading {
  readonly id: IndicationId;
  /** Whole turns made (signed: + the drive's way), and the angle past them in the hand's own sense, degrees 0 to 360. */
  readonly wholeTurns: bigint;
  readonly angleDeg: number;
  /** The same angle, turns from 0 up to 1, exact; and which way it was turned. */
  readonly rest: Rational;
  readonly sense: Sense;
}

/** Whole turns and rest of a signed number of turns. */
function parted(turns: Rational): { readonly whole: bigint; readonly rest: Rational } {
  const size = turns.n < 0n ? -turns.n : turns.n;
  return { whole: (turns.n < 0n ? -1n : 1n) * (size / turns.d), rest: rational(size % turns.d, turns.d) };
}

const OTHER = { clockwise: 'anticlockwise', anticlockwise: 'clockwise', still: 'still' } as const;

/** Readings after a number of turns of the drive ("12.5", "27/2"); undefined where that is no number. */
export function readingsAfterTurns(
  turning: Turning,
  turns: number | string | Rational,
): readonly DialReading[] | undefined {
  const made = typeof turns === 'object' ? turns : exactly(turns);
  const { drive } = turning;
  if (!made || !drive) return undefined;
  return turning.indications.flatMap((indication) => {
    const rate = turning.arbors.get(indication.arbor)?.rate;
    if (!rate) return [];
    const total = multiply(rate.turns, made);
    const { whole, rest } = parted(total);
    const sense = total.n === 0n ? 'still' : total.n > 0n ? drive.sense : OTHER[drive.sense];
    const angleDeg = 360 * toNumber(rest);
    return [
      {
        id: indication.id,
        wholeTurns: whole,
        angleDeg,
        rest,
        sense,
      },
    ];
  });
}

/** Readings after so many seconds of running. */
export function readingsAfterSeconds(turning: Turning, seconds: number | string): readonly DialReading[] | undefined {
  const time = exactly(seconds);
  return time && turning.drive ? readingsAfterTurns(turning, divide(time, turning.drive.periodSeconds)) : undefined;
}
