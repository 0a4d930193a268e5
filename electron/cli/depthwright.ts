#!/usr/bin/env node
/** The command line: the same functions that the bench calls, for a terminal. */
import { Argument, Command, CommanderError, Option } from 'commander';
import packageJson from '../../package.json' with { type: 'json' };
import { PAPERS } from '../../solver/files/pages/index.ts';
import { plantMovement } from '../../solver/planting/index.ts';
import type { PlacedMovement } from '../../solver/planting/placed.ts';
import { type Answer, CommandRefusal, complain, endQuietlyWithReader, give } from './answer.ts';
import { checkAnswer } from './checkAnswer.ts';
import { addCountsCommand } from './countsCommand.ts';
import { cuttingAnswer, wheelsAnswer } from './cuttingAnswer.ts';
import { depthAnswer } from './depthAnswer.ts';
import { type ErrorsChoice, errorsAnswer } from './errorsAnswer.ts';
import { handoverAnswer, type PrintChoice, type StepsChoice, sheetsAnswer, stepsAnswer } from './filesAnswers.ts';
import { type MadeChoice, madeAnswer } from './madeAnswer.ts';
import { type PlantChoice, plantAnswer } from './plantAnswer.ts';
import { readInput } from './readInput.ts';
import { turnsAnswer } from './turnsAnswer.ts';

const EXAMPLES = `
Examples:
  depthwright plant demo-data/tide-dial.json            where every arbor stands
  depthwright check demo-data/going-train.json --json   findings, for another program
  depthwright steps movement.json --plate front         the order of striking, one plate
  depthwright sheets movement.json --out sheets         DXF, SVG, drill programs, hole tables
  depthwright sheets movement.json --out sheets --pdf --paper A3   true-size sheets to print, too
  depthwright handover movement.json --out job.zip      everything for one job in one file
  depthwright depth movement.json d1                    how one depth runs where it is planted
  depthwright cutting movement.json great               blank, cutter and dividing of one wheel
  depthwright cutting movement.json --out wheels        outlines of all wheels as DXF and SVG, too
  depthwright turns movement.json                       ratios, senses, periods, what the hands show
  depthwright errors movement.json --lengths 0.03       before cutting: what errors of making do
  depthwright made movement.json --since drawn          readings, holes off their places, cures, what changed
  depthwright counts --ratio 29.530588853               tooth numbers for a ratio
  cat movement.json | depthwright plant -               from standard input

Exit code: 0 fine, 1 findings or not settled, 2 bad input or usage.`;

/** Options that every command takes. */
interface CommonOptions {
  readonly json?: boolean;
}

const program = new Command('depthwright')
  .description('Plants the arbors of a movement, checks it, and writes what the workshop needs.')
  .version(packageJson.version)
  .addHelpText('after', EXAMPLES)
  .showHelpAfterError('(depthwright --help shows how it is used)')
  .exitOverride();

/** Answers one command; `part` is the part of the movement that was named after the file. */
type Answering<Options> = (placed: PlacedMovement, options: Options, part?: string) => Answer | Promise<Answer>;

/** Adds a command that reads one movement, plants it and answers. */
function addCommand<Options extends CommonOptions>(
  name: string,
  description: string,
  answer: Answering<Options>,
  part?: Argument,
): Command {
  const command = program
    .command(name)
    .description(description)
    .addArgument(new Argument('<file>', 'a movement, or - for standard input'));
  if (part) command.addArgument(part);
  return command
    .option('--json', 'answer as JSON, lengths in millimetres')
    .action(async (file: string, ...rest: unknown[]) => {
      // The runner of commands hands over the named part, where there can be one, then the options.
      const options = command.opts<Options>();
      const named = part && typeof rest[0] === 'string' ? rest[0] : undefined;
      const placed = plantMovement(await readInput(file));
      give(await answer(placed, options, named), options.json === true);
    });
}

function paperOption(): Option {
  return new Option('--paper <size>', 'paper of the PDF sheets').choices(Object.keys(PAPERS)).default('A4');
}

addCommand<CommonOptions & PlantChoice>(
  'plant',
  'where every arbor, post and mark stands, and which rules hold',
  plantAnswer,
).option(
  '--trace',
  'how the planting came about, as JSON: network, choice of rules, steps, blocks, branches, iterations',
);
addCommand('check', 'what fouls, is too close, or does not fit', checkAnswer);
addCommand<CommonOptions & StepsChoice>('steps', 'marking-out steps, in the order of striking', stepsAnswer)
  .option('--plate <plate>', 'one plate only, by its name or id')
  .addOption(new Option('--face <face>', 'the marked face (the usual), or the other one').choices(['marked', 'other']));
addCommand<CommonOptions & PrintChoice>('sheets', 'files for the workshop', sheetsAnswer)
  .requiredOption('--out <folder>', 'where the files go')
  .option('--pdf', 'true-size sheets as PDF, too')
  .option('--pages', 'each page of these sheets as SVG, too')
  .addOption(paperOption());
addCommand<CommonOptions & PrintChoice>('handover', 'everything for one job, in a folder or a zip file', handoverAnswer)
  .requiredOption('--out <folder or file.zip>', 'where it goes')
  .addOption(paperOption());

addCommand(
  'depth',
  'how each depth runs where it is planted',
  (placed, _options, pair) => depthAnswer(placed, pair),
  new Argument('[pair]', 'one depth: its rule, or its wheels with a comma between, by name or id'),
);
addCommand<CommonOptions & { readonly out?: string }>(
  'cutting',
  'blank, depth of cut, cutter and dividing of each wheel',
  (placed, { out }, wheel) => (out === undefined ? cuttingAnswer(placed, wheel) : wheelsAnswer(placed, out, wheel)),
  new Argument('[wheel]', 'one wheel: its name or id'),
).option('--out <folder>', 'write each outline as DXF and SVG, with its numbers and check-off list');
addCommand('turns', 'turns, senses and periods of every arbor, and what the hands show', turnsAnswer);
addCommand<CommonOptions & ErrorsChoice>(
  'errors',
  'before cutting: what errors of making do to depths and gaps',
  errorsAnswer,
)
  .option('--trials <count>', 'trials with all errors at once (2000)')
  .option('--seed <number>', 'the same seed gives the same trials (1)')
  .option('--lengths <mm>', '± of lengths that state none')
  .option('--holes <mm>', '± of a hole from its mark')
  .option('--bores <mm>', '± of the play of a pivot')
  .option('--tips <mm>', '± of tip diameters');
addCommand<CommonOptions & MadeChoice>('made', 'what was read and drilled, what it tells, and the cures', madeAnswer)
  .option('--as-of <day>', 'as it stood at the end of that day, or "drawn"')
  .option('--since <day>', 'and what it changed since then, or since "drawn"');
addCountsCommand(program);

/** Runs the command that the arguments name, and turns whatever goes wrong into a sentence and exit code 2. */
async function main(): Promise<void> {
  endQuietlyWithReader();
  try {
    await program.parseAsync();
  } catch (error) {
    if (error instanceof CommanderError) {
      process.exitCode = error.exitCode === 0 ? 0 : 2;
      return;
    }
    // Anything else than a refusal is a fault of ours; the maker still gets a sentence and no stack.
    const says = error instanceof CommandRefusal ? error.message : `this is a fault in the program: ${String(error)}`;
    complain(says);
    process.exitCode = 2;
  }
}

void main();
