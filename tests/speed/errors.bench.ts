/** Speed of trials of errors: all errors of a demo movement, 2,000 times over. Goal (issue 7): a few seconds. */
import { readFileSync } from 'node:fs';
import { errorsFound } from '../../solver/made/errors/index.ts';
import { readMovement } from '../../solver/movement/index.ts';
import { plantMovement } from '../../solver/planting/index.ts';
import { HEADING, line, time } from './measure.ts';

const TRIALS = 2000;

export function run(): void {
  console.log(HEADING);
  for (const name of ['moons-of-jupiter', 'tide-dial', 'going-train']) {
    const read = readMovement(readFileSync(new URL(`../../demo-data/${name}.json`, import.meta.url), 'utf8'));
    if (read.kind === 'problems') throw new Error(read.problems.map(({ says }) => says).join('\n'));
    const placed = plantMovement(read.movement);
    const found = errorsFound(placed, { trials: TRIALS });
    if (found.planted !== TRIALS) throw new Error(`every trial of ${name} is planted`);
    const parts = `${found.sources.length} errors, ${found.depths.length} depths, ${found.gaps.length} gaps`;
    console.log(
      line(
        `${TRIALS} trials, ${name}`,
        time(() => errorsFound(placed, { trials: TRIALS }), 10, 1),
        parts,
      ),
    );
  }
}
