/** One fault placed on purpose in a copy of each demo: found, named, and cured by the remedy that is offered. */
import { describe, expect, it } from 'vitest';
import { checkMovement, createChecker, remediesFor } from '../../solver/clearance/index.ts';
import { applyEdit, type Edit } from '../../solver/movement/index.ts';
import type { Movement } from '../../solver/movement/schema.ts';
import { plantMovement, startDrag } from '../../solver/planting/index.ts';
import { movementOfFile } from '../support/movements.ts';
import { wordsOf } from './wordsOf.ts';

function movementOf(path: string): Movement {
  return movementOfFile(`${path}.json`);
}

function edited(movement: Movement, edit: Edit): Movement {
  const result = applyEdit(movement, edit);
  if (result.kind === 'refused') throw new Error(JSON.stringify(result.why));
  return result.movement;
}

interface Fault {
  readonly name: string;
  readonly spoilt: () => Movement;
  /** What the finding says, or its kind where the words are another room's. */
  readonly says: string | undefined;
  readonly kind?: string;
  readonly remedy: RegExp;
}

const FAULTS: readonly Fault[] = [
  {
    name: 'tide dial: a pillar left in the corner',
    spoilt: () => movementOf('tests/fixtures/pillarFoulsWheel'),
    says: 'Upper moon wheel and Pillar upper right foul by 0.905 mm.',
    remedy: /^Turn Pillar upper right by \+1\d\.\d° about Centre of the pillar circle: gap 0\.\d{3} mm$/,
  },
  {
    name: 'moons of Jupiter: two wheels at one level',
    spoilt: () => movementOf('tests/fixtures/sharedLevel'),
    says: "Day wheel and Eight o'clock wheel stand in each other: their levels overlap by 2.000 mm.",
    remedy: /^Move Day wheel and Crank wheel up by 2\.980 mm: gap 0\.980 mm$/,
  },
  {
    name: 'going train: the hour wheel out of its pinion',
    spoilt: () =>
      edited(movementOf('demo-data/going-train'), { kind: 'change', id: 'minute-pinion', set: { thickness: 1.2 } }),
    says: 'Minute pinion and Hour wheel do not meet in height: 0.300 mm apart.',
    remedy: /^Move Minute pinion up by \d\.\d{3} mm to meet Hour wheel$/,
  },
  {
    name: 'moons of Jupiter: the collar on the last pipe forgotten',
    spoilt: () =>
      edited(movementOf('demo-data/moons-of-jupiter'), { kind: 'change', id: 'callisto', set: { collars: [] } }),
    says: "Callisto's pipe can move 3.050 mm up and down between collar on Ganymede's pipe and Bridge plate, more than its end shake of 0.100 mm.",
    remedy: /^Put a collar Ø 13\.050 mm on Callisto's pipe from 39\.000 mm to 41\.950 mm$/,
  },
  {
    name: 'tide dial: a wheel told in the wrong size',
    spoilt: () =>
      edited(movementOf('demo-data/tide-dial'), { kind: 'change', id: 'upper-pinion', set: { size: { module: 1 } } }),
    says: undefined,
    kind: 'size',
    remedy: /^Cut Upper moon pinion in the size of Moon wheel$/,
  },
];

describe.each(FAULTS)('$name', ({ spoilt, says, kind, remedy }) => {
  const movement = spoilt();
  const placed = plantMovement(movement);
  const words = wordsOf(movement);
  const finding = checkMovement(placed).find((each) =>
    says === undefined ? each.kind === kind : words.finding(each) === says,
  );

  it('is found and named', () => {
    expect(finding).toBeDefined();
  });

  it('is cured by a remedy that is offered, as one edit', () => {
    if (!finding) throw new Error('not found');
    const offered = remediesFor(placed, finding).find((each) => remedy.test(words.cure(each)));
    expect(remediesFor(placed, finding).map(words.cure)).toContainEqual(expect.stringMatching(remedy));
    if (!offered) throw new Error('not offered');
    const after = checkMovement(plantMovement(edited(movement, offered.edit)));
    expect(after).toEqual([]);
  });
});

describe('a check that follows a drag', () => {
  it('says at every step what a fresh check says', () => {
    const movement = edited(movementOf('demo-data/moons-of-jupiter'), {
      kind: 'leaveOut',
      rules: ['twelve-radius'],
      leaveOut: true,
    });
    const placed = plantMovement(movement);
    const twelve = placed.places.get('twelve' as never); // an id of the demo
    if (!twelve) throw new Error('placed');
    const drag = startDrag(placed, twelve.id);
    let checker = createChecker(placed);
    let fouled = 0;
    for (let n = 0; n < 30; n++) {
      const moved = drag.to(twelve.x - n, twelve.y - n * 1.5);
      checker = checker.moved(moved);
      expect(checker.findings).toEqual(checkMovement(moved));
      fouled = Math.max(fouled, checker.findings.length);
    }
    expect(fouled).toBeGreaterThan(0);
  });
});
