/** How a movement turns, as text in columns and as data that JSON can hold: what the command line prints. */
import type { Movement } from '../../movement/schema.ts';
import { digitsOf, fractionText } from './rational.ts';
import type { ArborTurning, IndicationTurning, Rate, Turning } from './turning.ts';
import { turnMovement } from './turnMovement.ts';

/** How a movement turns, for a reader and for a program. */
export interface TurnsReport {
  /** `fine`, or `problems` where something stands in the way or a hand is wrong (notes do not count). */
  readonly kind: 'fine' | 'problems';
  readonly text: string;
  /** Plain: fractions as text, no undefined values. */
  readonly data: {
    readonly drive?: { readonly arbor: string; readonly periodSeconds: string; readonly sense: string };
    readonly arbors: readonly ReportedArbor[];
    readonly indications: readonly ReportedIndication[];
    readonly lockedRings: readonly {
      readonly arbors: readonly string[];
      readonly kind: string;
      readonly says: string;
    }[];
    readonly problems: readonly {
      readonly kind: string;
      readonly severity: string;
      readonly parts: readonly string[];
      readonly says: string;
      readonly remedy?: string;
    }[];
  };
}

/** A rate as plain text and numbers. */
interface ReportedRate {
  readonly turns: string;
  readonly digits: string;
  readonly sense: string;
  readonly period: string;
  readonly periodSeconds?: number;
}

/** An arbor as plain data. */
export interface ReportedArbor {
  readonly id: string;
  readonly state: string;
  readonly rate?: ReportedRate;
  readonly senseFromBehind?: string;
  readonly carrier?: { readonly arm: string; readonly rate?: ReportedRate };
}

/** A hand with what it shows and what it should, as plain data. */
export interface ReportedIndication {
  readonly id: string;
  readonly arbor: string;
  readonly name: string;
  readonly says: string;
  readonly senseIsWrong: boolean;
  readonly wantedPeriod?: string;
  readonly achievedPeriod?: string;
  readonly errorPpm?: number;
  readonly gainSecondsPerDay?: number;
  readonly yearsPerDay?: number;
  readonly withinTolerance?: boolean;
}

const reportRate = (rate: Rate): ReportedRate => ({
  turns: fractionText(rate.turns),
  digits: digitsOf(rate.turns),
  sense: rate.sense,
  period: rate.periodSays,
  ...(rate.periodSeconds === undefined ? {} : { periodSeconds: rate.periodSeconds }),
});

const reportArbor = (arbor: ArborTurning): ReportedArbor => ({
  id: arbor.id,
  state: arbor.state,
  ...(arbor.rate ? { rate: reportRate(arbor.rate) } : {}),
  ...(arbor.senseFromBehind ? { senseFromBehind: arbor.senseFromBehind } : {}),
  ...(arbor.carrier
    ? { carrier: { arm: arbor.carrier.arm, ...(arbor.carrier.rate ? { rate: reportRate(arbor.carrier.rate) } : {}) } }
    : {}),
});

const reportIndication = (shown: IndicationTurning): ReportedIndication => ({
  id: shown.id,
  arbor: shown.arbor,
  name: shown.name,
  says: shown.says,
  senseIsWrong: shown.senseIsWrong,
  ...(shown.wantedPeriodSays === undefined ? {} : { wantedPeriod: shown.wantedPeriodSays }),
  ...(shown.achievedPeriodSays === undefined ? {} : { achievedPeriod: shown.achievedPeriodSays }),
  ...(shown.errorPpm === undefined ? {} : { errorPpm: shown.errorPpm }),
  ...(shown.gainSecondsPerDay === undefined ? {} : { gainSecondsPerDay: shown.gainSecondsPerDay }),
  ...(shown.yearsPerDay === undefined ? {} : { yearsPerDay: shown.yearsPerDay }),
  ...(shown.withinTolerance === undefined ? {} : { withinTolerance: shown.withinTolerance }),
});

/** The report of a movement; pass its turning where it is known already. */
export function turnsReport(movement: Movement, turning: Turning = turnMovement(movement)): TurnsReport {
  const arbors = [...turning.arbors.values()].map(reportArbor);
  const { drive } = turning;
  return {
    kind: turning.problems.some((problem) => problem.severity !== 'notes') ? 'problems' : 'fine',
    text: [
      drive ? `Drive ${drive.arbor}, ${drive.sense} as seen from the marked face.` : 'Nothing drives the movement.',
      ...tableOf(arbors),
      ...section(
        'Indications',
        turning.indications.map((shown) => shown.says),
      ),
      ...section(
        'Shared axes',
        turning.sharedAxes.map((shared) => shared.says),
      ),
      ...section(
        'To see to',
        turning.problems.map((problem) => `${problem.says}${problem.remedy ? ` ${problem.remedy}` : ''}`),
      ),
      '',
    ].join('\n'),
    data: {
      ...(drive
        ? { drive: { arbor: drive.arbor, periodSeconds: fractionText(drive.periodSeconds), sense: drive.sense } }
        : {}),
      arbors,
      indications: turning.indications.map(reportIndication),
      lockedRings: turning.lockedRings.map(({ arbors: ring, kind, says }) => ({ arbors: ring, kind, says })),
      problems: turning.problems.map(({ kind, severity, parts, says, remedy }) => ({
        kind,
        severity,
        parts,
        says,
        ...(remedy === undefined ? {} : { remedy }),
      })),
    },
  };
}

const section = (title: string, lines: readonly string[]): readonly string[] =>
  lines.length > 0 ? ['', `${title}:`, ...lines] : [];

const STATES: Readonly<Record<string, string>> = {
  still: 'stands still',
  locked: 'locked',
  notDriven: 'not driven',
  open: 'not settled',
};

/** Columns: arbor, turns, digits, sense from the marked face and from behind, period, against the arm. */
function tableOf(arbors: readonly ReportedArbor[]): readonly string[] {
  const lines = arbors.map(({ id, state, rate, senseFromBehind, carrier }) => [
    id,
    rate && state === 'turns' ? rate.turns : (STATES[state] ?? state),
    rate && state === 'turns' ? rate.digits : '',
    state === 'turns' ? (rate?.sense ?? '') : '',
    state === 'turns' ? (senseFromBehind ?? '') : '',
    state === 'turns' ? (rate?.period ?? '') : '',
    carrier?.rate ? `${carrier.rate.turns} on ${carrier.arm}, ${carrier.rate.sense}` : '',
  ]);
  const rows = [['arbor', 'turns', 'digits', 'from the face', 'from behind', 'one turn in', 'on its arm'], ...lines];
  const widths = rows[0]?.map((_, column) => Math.max(...rows.map((line) => line[column]?.length ?? 0))) ?? [];
  return rows.map((line) =>
    line
      .map((cell, column) => cell.padEnd(widths[column] ?? 0))
      .join('  ')
      .trimEnd(),
  );
}
