/**
 * The catalogue of small movements that can be built and that cannot: each as written, and COUNT times varied by the seed
 * in size, place, turn, sense, height, unit and order. Wrong is a fault that is not named, and anything that is told of a
 * sound one.
 */
import { judgeCatalogue } from '../clearance/catalogue/judge.ts';
import { seeded } from '../planting/scenes/random.ts';
import { type Proof, type Table, tableLines } from './proof.ts';

function run(count: number, seed: number): Table {
  const verdicts = judgeCatalogue(seeded(seed), count);
  const wrong = verdicts.filter(({ isRight }) => !isRight);
  const rows = [true, false].flatMap((isSound) =>
    [false, true].map((isVaried) => {
      const group = verdicts.filter((each) => each.isSound === isSound && each.isVaried === isVaried);
      const right = group.filter(({ isRight }) => isRight).length;
      const name = `${isSound ? 'can be built' : 'one fault each'}, ${isVaried ? 'varied' : 'as written'}`;
      return [name, group.length, right, group.length - right];
    }),
  );
  return {
    lines: [
      ...tableLines(['movements', 'all', 'right', 'wrong'], rows),
      ...wrong.map(
        ({ name, isVaried, found }) =>
          `wrong: ${name}${isVaried ? ' (varied)' : ''}: ${found.join('; ') || 'nothing told'}`,
      ),
    ],
    wrong: wrong.length,
  };
}

export const proof: Proof = { title: 'What can be built and what cannot', fullCount: 20, run };
