/** `depthwright counts`: its options, read into a request. */
import { type Command, InvalidArgumentError, Option } from 'commander';
import { CommandRefusal, give } from './answer.ts';
import { type CountsRequest, countsAnswer } from './countsAnswer.ts';

/** Least and greatest of a whole number. */
interface Range {
  readonly from: number;
  readonly to: number;
}

const EXAMPLES = `
Examples:
  depthwright counts --ratio 29.530588853 --stages 2-3 --driven 30-120
  depthwright counts --from 12h --to "synodic month" --stages 3 --best 5
  depthwright counts --ratio 365.2422/29.530588853 --largest-prime 23 --json

Exit code: 0 found, 1 none within the limits (that is proved), 2 bad input or usage.`;

/** "8-20" or "8" as a range of whole numbers. */
function readRange(text: string): Range {
  const match = /^(\d{1,4})(?:-(\d{1,4}))?$/.exec(text.trim());
  if (!match) throw new InvalidArgumentError('Expected a whole number or a range, such as 8 or 8-20.');
  const from = Number(match[1]);
  return { from, to: match[2] === undefined ? from : Number(match[2]) };
}

function readWhole(text: string): number {
  if (!/^\d{1,9}$/.test(text.trim())) throw new InvalidArgumentError('Expected a whole number.');
  return Number(text);
}

function readNumber(text: string): number {
  const value = Number(text);
  if (text.trim() === '' || !Number.isFinite(value)) throw new InvalidArgumentError('Expected a number, such as 12.5.');
  return value;
}

function readCounts(text: string): readonly number[] {
  return text.split(',').map(readWhole);
}

/** The options of the command after they were read. */
interface CountsOptions {
  readonly ratio?: string;
  readonly from?: string;
  readonly to?: string;
  readonly stages: Range;
  readonly drivers: Range;
  readonly driven: Range;
  readonly best: number;
  readonly largestPrime?: number;
  readonly onHand?: readonly number[];
  readonly coprime?: true;
  readonly equalSums?: true;
  readonly sense?: 'same' | 'reversed';
  readonly tolerance?: number;
  readonly json?: true;
}

function requestOf(options: CountsOptions): CountsRequest {
  const { ratio, from, to, stages, drivers, driven, best, largestPrime, onHand, coprime, sense, tolerance } = options;
  const limits = {
    stages,
    drivers,
    driven,
    best,
    ...(largestPrime !== undefined && { largestPrime }),
    ...(onHand && { onHand }),
    ...(coprime && { coprime }),
    ...(options.equalSums && { equalSums: 'all' as const }),
    ...(sense && { sense }),
    ...(tolerance !== undefined && { tolerancePpm: tolerance }),
  };
  if (ratio !== undefined && from === undefined && to === undefined) return { ...limits, ratio };
  if (ratio === undefined && from !== undefined && to !== undefined) return { ...limits, from, to };
  throw new CommandRefusal(
    'Give either --ratio, or both --from and --to (two periods). See depthwright counts --help.',
  );
}

/** Adds the command to the program. */
export function addCountsCommand(program: Command): void {
  program
    .command('counts')
    .description('tooth numbers for a wanted ratio, searched exhaustively')
    .option('--ratio <number>', 'driven teeth over driving teeth: a number, a fraction, or a quotient')
    .option('--from <period>', 'period of the first arbor, such as 12h')
    .option('--to <period>', 'period of the last arbor, such as synodic month')
    .option('--stages <range>', 'pairs of wheels', readRange, { from: 1, to: 3 })
    .option('--drivers <range>', 'teeth of the driving wheels', readRange, { from: 8, to: 24 })
    .option('--driven <range>', 'teeth of the driven wheels', readRange, { from: 24, to: 120 })
    .option('--best <number>', 'how many ratios to show', readWhole, 10)
    .option('--largest-prime <number>', 'largest prime factor that the plates can divide', readWhole)
    .option('--on-hand <counts>', 'wheels on hand, such as 8,10,60,64: only these, each once', readCounts)
    .option('--coprime', 'only pairs in which every tooth meets every space')
    .option('--equal-sums', 'all stages with one sum of teeth')
    .addOption(new Option('--sense <sense>', 'of the last arbor against the first').choices(['same', 'reversed']))
    .option('--tolerance <ppm>', 'largest error, parts per million', readNumber)
    .option('--json', 'answer as JSON')
    .addHelpText('after', EXAMPLES)
    .action((options: CountsOptions) => give(countsAnswer(requestOf(options)), options.json === true));
}
