/** `depthwright counts`: tooth numbers for a wanted ratio. */
import { emptyMovement } from '../../solver/movement/index.ts';
import {
  type CountsOptions,
  type CountsRow,
  findCounts,
  ratioOfPeriods,
  trainText,
} from '../../solver/train/counts/index.ts';
import { fractionText } from '../../solver/train/turning/rational.ts';
import { countsProblemSays, countsSay, noPeriodSays, rowErrorSays } from '../../solver/words/train/index.ts';
import { type Answer, CommandRefusal } from './answer.ts';
import { plainSpeaker } from './plainSpeaker.ts';

/** The wanted ratio either as itself, or as two periods ("12h", "synodic month"). */
export type CountsRequest = Omit<CountsOptions, 'ratio'> &
  ({ readonly ratio: number | string } | { readonly from: string; readonly to: string });

/** Counts belong to no document: what is said of them has no lengths and no parts. */
const speaker = plainSpeaker(emptyMovement());

function ratioAsked(request: CountsRequest): number | string {
  if ('ratio' in request) return request.ratio;
  const found = ratioOfPeriods(request.from, request.to);
  if (found.kind === 'refused') throw new CommandRefusal(noPeriodSays(found));
  return fractionText(found.ratio);
}

/** Plain: fractions as text, trains as "46/9 x 104/9", a worm as "60/worm 2". */
function rowJson({ ratio, digits, error, errorPpm, trainCount, trains }: CountsRow) {
  return {
    ratio: fractionText(ratio),
    digits,
    error: fractionText(error),
    errorPpm,
    says: rowErrorSays({ error }, speaker),
    trainCount,
    trains: trains.map((train) => ({
      train: trainText(train),
      total: train.total,
      largest: train.largest,
      largestPrime: train.largestPrime,
      idlers: train.idlers,
      reversed: train.reversed,
    })),
  };
}

type RowJson = ReturnType<typeof rowJson>;

/** Columns without heads: ratio, ten digits, train, teeth in all, error. */
function tableOf(rows: readonly RowJson[]): string {
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
  const padded = (line: readonly string[]): string =>
    line
      .map((cell, column) => cell.padEnd(widths[column] ?? 0))
      .join('  ')
      .trimEnd();
  return lines.map((line) => `${padded(line)}\n`).join('');
}

/** Tooth numbers for a wanted ratio. */
export function countsAnswer(request: CountsRequest): Answer {
  const ratio = ratioAsked(request);
  const result = findCounts({ ...request, ratio });
  if (result.kind === 'refused') {
    throw new CommandRefusal(result.problems.map((problem) => countsProblemSays(problem, speaker)).join('\n'));
  }
  const { kind } = result;
  const says = countsSay(result, speaker);
  const found = kind === 'found' ? result.rows : result.nearest ? [result.nearest] : [];
  const rows = found.map(rowJson);
  const data = kind === 'found' ? { rows } : { nearest: rows[0] };
  return {
    text: `${says}\n${tableOf(rows)}`,
    json: { kind, wanted: String(ratio), says, ...data },
    code: kind === 'found' ? 0 : 1,
  };
}
