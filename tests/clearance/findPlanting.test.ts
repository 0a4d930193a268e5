import { describe, expect, it } from 'vitest';
import { findPlanting } from '../../solver/clearance/findPlanting/findPlanting.ts';
import { findPlantingSteps } from '../../solver/clearance/findPlanting/index.ts';
import { checkMovement } from '../../solver/clearance/index.ts';
import { applyEdit } from '../../solver/movement/index.ts';
import { plantMovement } from '../../solver/planting/index.ts';
import { movementOfFile } from '../support/movements.ts';

/** The moons demo with its bearing and radius rules left out. */
function looseMoons() {
  const movement = movementOfFile('demo-data/moons-of-jupiter.json');
  const rules = movement.rules.filter(({ kind }) => kind === 'bearing' || kind === 'radius').map(({ id }) => id);
  const edited = applyEdit(movement, { kind: 'leaveOut', rules, leaveOut: true });
  if (edited.kind === 'refused') throw new Error(JSON.stringify(edited.why));
  return edited.movement;
}

describe('finding a planting', () => {
  const movement = looseMoons();
  const placed = plantMovement(movement);

  it('finds several for the moons, every rule to 1e-9 mm and every gap kept, each taken as one edit', () => {
    const found = findPlanting(placed, { seed: 3, effort: 0.5 });
    if (found.kind === 'none') throw new Error(found.why.kind);
    expect(found.answers.length).toBeGreaterThan(1);
    for (const { edit, surplus, gapsLeft } of found.answers) {
      expect(gapsLeft).toBe(0);
      expect(surplus).toBeGreaterThan(0);
      const edited = applyEdit(movement, edit);
      if (edited.kind === 'refused') throw new Error(JSON.stringify(edited.why));
      const planted = plantMovement(edited.movement);
      const used = [...planted.rules.values()].filter(({ role }) => role !== 'leftOut');
      expect(Math.max(...used.map(({ missBy }) => missBy))).toBeLessThan(1e-9);
      expect(checkMovement(planted).filter(({ gap }) => gap !== undefined)).toEqual([]);
    }
    const [first] = found.answers;
    // Better than the maker's own planting of the demo, whose tightest pair the limits allow.
    expect(first?.surplus).toBeGreaterThan(3);
  });

  it('is the same for the same seed, tells its progress, and stops when it is not asked on', () => {
    const run = () => findPlanting(placed, { seed: 7, effort: 0.05 });
    const [a, b] = [run(), run()];
    if (a.kind === 'none' || b.kind === 'none') throw new Error('found before');
    expect(a.answers.map(({ edit }) => edit)).toEqual(b.answers.map(({ edit }) => edit));
    const search = findPlantingSteps(placed, { effort: 0.05 });
    const told = [search.next(), search.next(), search.next()].map(({ value }) => value);
    expect(told.every((each) => 'done' in each && each.done > 0 && each.done < 0.5)).toBe(true);
  });

  it('leaves what is held still where it is', () => {
    const ten = placed.places.get('ten' as never); // an id of the demo
    const found = findPlanting(placed, { seed: 2, effort: 0.05, hold: ['ten' as never] });
    if (found.kind === 'none' || !ten) throw new Error('found before');
    for (const answer of found.answers) {
      const now = answer.placed.places.get('ten' as never);
      expect(Math.hypot((now?.x ?? 0) - ten.x, (now?.y ?? 0) - ten.y)).toBeLessThan(1e-9);
    }
  });

  it('says when nothing is loose', () => {
    const movement = movementOfFile('demo-data/going-train.json');
    expect(findPlanting(plantMovement(movement))).toMatchObject({ kind: 'none' });
  });
});
