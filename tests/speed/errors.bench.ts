/** Speed of trials of errors: all errors of a demo movement, 2,000 times over. Goal (issue 7): a few seconds. */
import { findErrors } from '../../solver/made/errors/index.ts';
import { plantMovement } from '../../solver/planting/index.ts';
import { movementOfFile } from '../support/movements.ts';
import { HEADING, line, time } from './measure.ts';

const TRIALS = 2000;

export function run(): void {
  console.log(HEADING);
  for (const name of ['moons-of-jupiter', 'tide-dial', 'going-train']) {
    const movement = movementOfFile(`demo-data/${name}.json`);
    const placed = plantMovement(movement);
    const found = findErrors(placed, { trials: TRIALS });
    if (found.planted !== TRIALS) throw new Error(`every trial of ${name} is planted`);
    const parts = `${found.sources.length} errors, ${found.depths.length} depths, ${found.gaps.length} gaps`;
    console.log(
      line(
        `${TRIALS} trials, ${name}`,
        time(() => findErrors(placed, { trials: TRIALS }), 10, 1),
        parts,
      ),
    );
  }
}
