/** What each hand, ring or ball shows against what it should. */
import type { Movement } from '../../movement/schema.ts';
import type { Sense } from './linkage.ts';
import { type PeriodError, periodErrorOf, secondsOf } from './periods.ts';
import { divide, exactly, isZero, magnitude, ONE, type Rational, subtract, toNumber } from './rational.ts';
import type { IndicationTurning, Turning, TurningProblem } from './turning.ts';
import type { NothingShown } from './turningFaults.ts';

type Indication = Movement['indications'][number];
type Drive = NonNullable<Turning['drive']>;

/** Wanted turns for one turn of the drive, with the sense where the ratio's sign states it; or why there are none. */
function wantedOf(indication: Indication, drive: Drive): Rational | NothingShown {
  if (indication.period && indication.ratio !== undefined) return { kind: 'periodAndRatio' };
  if (indication.period) {
    const seconds = secondsOf(indication.period);
    return seconds ? divide(drive.periodSeconds, seconds) : { kind: 'badPeriod', value: indication.period.value };
  }
  if (indication.ratio === undefined) return { kind: 'neither' };
  const ratio = exactly(indication.ratio);
  return ratio && !isZero(ratio) ? ratio : { kind: 'badRatio', ratio: String(indication.ratio) };
}

const otherSense = { clockwise: 'anticlockwise', anticlockwise: 'clockwise', still: 'still' } as const;

/** The sense that a hand should have: as stated, or as the sign of its ratio says. */
const wantedSenseOf = ({ sense }: Indication, wanted: Rational, drive: Drive): Sense | undefined =>
  sense ?? (wanted.n < 0n ? otherSense[drive.sense] : undefined);

/** What the train gives a hand that turns, against what is wanted. */
function shownBy(
  indication: Indication,
  wanted: Rational,
  rate: { readonly turns: Rational; readonly sense: Sense },
  drive: Drive,
): IndicationTurning & { readonly error: Rational } {
  const achieved = magnitude(rate.turns);
  const error = subtract(divide(magnitude(wanted), achieved), ONE);
  const measures: PeriodError = periodErrorOf(error);
  const wantedSense = wantedSenseOf(indication, wanted, drive);
  const { tolerancePpm } = indication;
  return {
    id: indication.id,
    arbor: indication.arbor,
    wantedTurns: magnitude(wanted),
    achievedTurns: achieved,
    wantedPeriod: divide(drive.periodSeconds, magnitude(wanted)),
    achievedPeriod: divide(drive.periodSeconds, achieved),
    error,
    errorPpm: toNumber(error) * 1e6,
    gainSecondsPerDay: measures.gainSecondsPerDay,
    ...(measures.yearsPerDay === undefined ? {} : { yearsPerDay: measures.yearsPerDay }),
    ...(tolerancePpm === undefined ? {} : { withinTolerance: Math.abs(measures.ppm) <= tolerancePpm }),
    sense: rate.sense,
    ...(wantedSense === undefined ? {} : { wantedSense }),
    senseIsWrong: wantedSense !== undefined && rate.sense !== wantedSense,
  };
}

/** A hand that turns the wrong way, or is further out than allowed. */
function problemsOf(
  shown: IndicationTurning & { readonly error: Rational },
  tolerancePpm = 0,
): readonly TurningProblem[] {
  const { id: indication, sense, wantedSense: wanted, error } = shown;
  const problem = { kind: 'indication', severity: 'warns', parts: [shown.arbor] } as const;
  return [
    ...(shown.senseIsWrong && sense !== undefined && wanted !== undefined
      ? [{ ...problem, why: { kind: 'wrongSense', indication, sense, wanted } } as const]
      : []),
    ...(shown.withinTolerance === false
      ? [{ ...problem, why: { kind: 'outOfTolerance', indication, error, allowedPpm: tolerancePpm } } as const]
      : []),
  ];
}

/** The indications of a movement whose arbors' rates are known. */
export function indicationsOf(
  movement: Movement,
  drive: Drive | undefined,
  arbors: Turning['arbors'],
): { readonly indications: readonly IndicationTurning[]; readonly problems: readonly TurningProblem[] } {
  const problems: TurningProblem[] = [];
  const indications = movement.indications.map((indication): IndicationTurning => {
    const base = { id: indication.id, arbor: indication.arbor, senseIsWrong: false };
    const fail = (nothing: NothingShown): IndicationTurning => {
      const why = { kind: 'showsNothing', indication: indication.id, why: nothing } as const;
      problems.push({ kind: 'indication', severity: 'stops', parts: [indication.arbor], why });
      return { ...base, nothing };
    };
    const turning = arbors.get(indication.arbor);
    if (!turning) return fail({ kind: 'arborMissing' });
    if (!drive) return fail({ kind: 'nothingDrives' });
    const wanted = wantedOf(indication, drive);
    if ('kind' in wanted) return fail(wanted);
    if (turning.rate === undefined || isZero(turning.rate.turns)) {
      const wantedPeriod = divide(drive.periodSeconds, magnitude(wanted));
      const { arbor } = indication;
      const stands = fail({ kind: 'arborStands', arbor, state: turning.state, wantedPeriod });
      return { ...stands, wantedTurns: magnitude(wanted), wantedPeriod };
    }
    const shown = shownBy(indication, wanted, turning.rate, drive);
    problems.push(...problemsOf(shown, indication.tolerancePpm));
    return shown;
  });
  return { indications, problems };
}
