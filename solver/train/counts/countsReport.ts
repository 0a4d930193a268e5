/** A search for counts as text in columns and as data that JSON can hold: what the command line prints. */
import { runSteps, watchSteps } from '../../steps.ts';
import { fractionText } from '../turning/rational.ts';
import type { CountsOptions, CountsProgress, CountsRow, Train } from './counts.ts';
import { ratioOfPeriods } from './ratioOfPeriods.ts';
import { findCountsSteps } from './searchCounts.ts';

/** The wanted ratio either as itself, or as two periods ("12h", "synodicMonth"). */
export type CountsRequest = Omit<CountsOptions, 'ratio'> &
  ({ readonly ratio: number | string } | { readonly from: string; readonly to: string });

/** The outcome of a search, for a reader and for a program. */
export interface CountsReport {
  /** `found`, `none` (proved), `refused` (bad input) or `stopped`. */
  readonly kind: 'found' | 'none' | 'refused' | 'stopped';
  readonly text: string;
  /** Plain: fractions as text ("4784/81"), no undefined values. */
  readonly data: {
    readonly wanted?: string;
    readonly says: string;
    readonly problems?: readonly { readonly field: string; readonly says: string }[];
    readonly rows?: readonly CountsReportRow[];
    readonly nearest?: CountsReportRow;
  };
}

/** One ratio of the report as plain data. */
export interface CountsReportRow {
  readonly ratio: string;
  readonly digits: string;
  readonly error: string;
  readonly errorPpm: number;
  readonly says: string;
  readonly trainCount?: number;
  readonly trains: readonly {
    /** "46/9 x 104/9": driven over driver, stage by stage; a worm as "60/worm 2". */
    readonly train: string;
    readonly total: number;
    readonly largest: number;
    readonly largestPrime: number;
    readonly idlers: number;
    readonly reversed?: boolean;
  }[];
}

/** "46/9 x 104/9" */
export const trainText = (train: Pick<Train, 'stages'>): string =>
  train.stages.map((stage) => `${stage.driven}/${stage.worm ? 'worm ' : ''}${stage.driver}`).join(' x ');

const reportRow = (row: CountsRow): CountsReportRow => ({
  ratio: fractionText(row.ratio),
  digits: row.digits,
  error: fractionText(row.error),
  errorPpm: row.errorPpm,
  says: row.says,
  ...(row.trainCount === undefined ? {} : { trainCount: row.trainCount }),
  trains: row.trains.map((train) => ({
    train: trainText(train),
    total: train.total,
    largest: train.largest,
    largestPrime: train.largestPrime,
    idlers: train.idlers,
    ...(train.reversed === undefined ? {} : { reversed: train.reversed }),
  })),
});

/** Searches and reports. `progress` may return false to stop. */
export function countsReport(
  request: CountsRequest,
  progress?: (progress: CountsProgress) => boolean | undefined,
): CountsReport {
  let ratio: number | string;
  if ('ratio' in request) ratio = request.ratio;
  else {
    const found = ratioOfPeriods(request.from, request.to);
    if (found.kind === 'refused') {
      return {
        kind: 'refused',
        text: `${found.says}\n`,
        data: { says: found.says, problems: [{ field: found.field, says: found.says }] },
      };
    }
    ratio = fractionText(found.ratio);
  }
  const wanted = String(ratio);
  const steps = findCountsSteps({ ...request, ratio });
  const result = progress ? watchSteps(steps, progress) : runSteps(steps);
  switch (result.kind) {
    case 'stopped':
      return { kind: 'stopped', text: 'Stopped.\n', data: { wanted, says: 'Stopped.' } };
    case 'refused': {
      const says = result.problems.map((problem) => problem.says).join('\n');
      return { kind: 'refused', text: `${says}\n`, data: { wanted, says, problems: result.problems } };
    }
    case 'none': {
      const nearest = result.nearest && reportRow(result.nearest);
      const text = `${result.says}\n${nearest ? tableOf([nearest]) : ''}`;
      return { kind: 'none', text, data: { wanted, says: result.says, ...(nearest ? { nearest } : {}) } };
    }
    case 'found': {
      const rows = result.rows.map(reportRow);
      return { kind: 'found', text: `${result.says}\n${tableOf(rows)}`, data: { wanted, says: result.says, rows } };
    }
  }
}

/** Columns: ratio, ten digits, error, trains. */
function tableOf(rows: readonly CountsReportRow[]): string {
  const lines = rows.flatMap((row) =>
    row.trains.map((train, index) => [
      index === 0 ? row.ratio : '',
      index === 0 ? row.digits : '',
      `${train.train}${train.idlers > 0 ? ' and an idler' : ''}`,
      `${train.total} teeth`,
      index === 0 ? row.says : '',
    ]),
  );
  const widths = [0, 1, 2, 3].map((column) => Math.max(0, ...lines.map((line) => line[column]?.length ?? 0)));
  return lines
    .map(
      (line) =>
        `${line
          .map((cell, column) => cell.padEnd(widths[column] ?? 0))
          .join('  ')
          .trimEnd()}\n`,
    )
    .join('');
}
