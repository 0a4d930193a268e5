/** What each hand, ring or ball shows against what it should. */
import type { Movement } from '../../movement/schema.ts';
import {
  digitsOf,
  divide,
  exactly,
  fractionText,
  isZero,
  magnitude,
  ONE,
  type Rational,
  subtract,
  toNumber,
} from './rational.ts';
import { errorInWords, periodText, roundText, secondsOf } from './tradeWords.ts';
import type { IndicationTurning, Turning, TurningProblem } from './turning.ts';

type Indication = Movement['indications'][number];
type Drive = NonNullable<Turning['drive']>;

/** Wanted turns for one turn of the drive, with the sense where the ratio's sign states it. */
function wantedOf(indication: Indication, drive: Drive): Rational | string {
  if (indication.period && indication.ratio !== undefined) {
    return 'both a period and a ratio are given; keep one of the two';
  }
  if (indication.period) {
    const seconds = secondsOf(indication.period);
    return seconds ? divide(drive.periodSeconds, seconds) : `the period ${indication.period.value} must be more than 0`;
  }
  if (indication.ratio === undefined) return 'neither a period nor a ratio is given; add one of the two';
  const ratio = exactly(indication.ratio);
  if (!ratio || isZero(ratio)) return `the ratio ${indication.ratio} must be a number other than 0, such as 27/2`;
  return ratio;
}

const otherSense = { clockwise: 'anticlockwise', anticlockwise: 'clockwise' } as const;

/** The indications of a movement whose arbors' rates are known. */
export function indicationsOf(
  movement: Movement,
  drive: Drive | undefined,
  arbors: Turning['arbors'],
): { readonly indications: readonly IndicationTurning[]; readonly problems: readonly TurningProblem[] } {
  const problems: TurningProblem[] = [];
  const indications = movement.indications.map((indication): IndicationTurning => {
    const name = indication.name ?? indication.id;
    const base = { id: indication.id, arbor: indication.arbor, name, senseIsWrong: false };
    const fail = (why: string, severity: TurningProblem['severity'] = 'stops'): IndicationTurning => {
      const says = `${name}: ${why}.`;
      problems.push({ kind: 'indication', severity, parts: [indication.arbor], says });
      return { ...base, says };
    };
    const turning = arbors.get(indication.arbor);
    if (!turning) return fail(`its arbor ${indication.arbor} is not in the movement`);
    if (!drive) return fail('nothing drives the movement, so it shows nothing');
    const wanted = wantedOf(indication, drive);
    if (typeof wanted === 'string') return fail(wanted);
    const wantedPeriodSays = periodText(divide(drive.periodSeconds, magnitude(wanted)));
    if (turning.rate === undefined || isZero(turning.rate.turns)) {
      return {
        ...fail(`${indication.arbor} does not turn (${reasonOf(turning.state)}); wanted ${wantedPeriodSays}`),
        wantedTurns: magnitude(wanted),
        wantedPeriodSays,
      };
    }

    const achieved = magnitude(turning.rate.turns);
    const error = subtract(divide(magnitude(wanted), achieved), ONE);
    const words = errorInWords(error);
    const achievedPeriodSays = periodText(divide(drive.periodSeconds, achieved));
    const wantedSense =
      indication.sense ??
      (wanted.n < 0n ? otherSense[drive.sense === 'clockwise' ? 'clockwise' : 'anticlockwise'] : undefined);
    const senseIsWrong = wantedSense !== undefined && turning.rate.sense !== wantedSense;
    const { tolerancePpm } = indication;
    const withinTolerance = tolerancePpm === undefined ? undefined : Math.abs(words.ppm) <= tolerancePpm;
    const sense = `turns ${turning.rate.sense}${senseIsWrong ? `, which is the wrong way: wanted ${wantedSense}` : ''}`;
    const says = `${name}: ${achievedPeriodSays} (${fractionText(achieved)}${achieved.d === 1n ? '' : ` = ${digitsOf(achieved)}`} turns for one of the drive), wanted ${wantedPeriodSays}; ${words.says}; ${sense}.`;
    if (senseIsWrong) {
      problems.push({
        kind: 'indication',
        severity: 'warns',
        parts: [indication.arbor],
        says: `${name} ${sense}.`,
        remedy: 'Put one idler more (or one less) between the drive and it, or make one depth internal.',
      });
    }
    if (withinTolerance === false) {
      problems.push({
        kind: 'indication',
        severity: 'warns',
        parts: [indication.arbor],
        says: `${name} is off by ${roundText(words.ppm)} ppm, more than the ${roundText(tolerancePpm ?? 0)} ppm allowed: ${words.says}.`,
      });
    }
    return {
      ...base,
      wantedTurns: magnitude(wanted),
      achievedTurns: achieved,
      wantedPeriodSays,
      achievedPeriodSays,
      error,
      errorPpm: toNumber(error) * 1e6,
      gainSecondsPerDay: words.gainSecondsPerDay,
      ...(words.yearsPerDay === undefined ? {} : { yearsPerDay: words.yearsPerDay }),
      ...(withinTolerance === undefined ? {} : { withinTolerance }),
      sense: turning.rate.sense,
      ...(wantedSense === undefined ? {} : { wantedSense }),
      senseIsWrong,
      says,
    };
  });
  return { indications, problems };
}

const reasonOf = (state: string): string =>
  ({
    locked: 'it is locked',
    notDriven: 'it is not driven',
    open: 'a carrier leaves its rate open',
    still: 'it stands still',
  })[state] ?? state;
