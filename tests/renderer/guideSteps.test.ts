import { describe, expect, it } from 'vitest';
import { guideSteps } from '../../renderer/guide/guideSteps.ts';
import { checkMovement } from '../../solver/clearance/index.ts';
import { applyEdit, emptyMovement } from '../../solver/movement/index.ts';
import type { Movement } from '../../solver/movement/schema.ts';
import { plantMovement } from '../../solver/planting/index.ts';
import { turnMovement } from '../../solver/train/index.ts';
import { toNumber } from '../../solver/train/turning/rational.ts';

/** Does every open step for the maker, and tells the movement after each. */
function buildAll(): Movement[] {
  const states = [emptyMovement()];
  for (const step of guideSteps) {
    const before = states.at(-1) ?? emptyMovement();
    const edited = applyEdit(before, { kind: 'several', edits: step.edits(before) });
    if (edited.kind === 'refused') throw new Error(`${step.title}: ${JSON.stringify(edited.why)}`);
    states.push(edited.movement);
  }
  return states;
}

describe('the guided build', () => {
  const states = buildAll();

  it('each step is open before it is done and done after, and stays done', () => {
    guideSteps.forEach((step, index) => {
      const at = (state: number) => step.isDone(plantMovement(states[state] ?? emptyMovement()));
      expect(at(index), `${step.title} before`).toBe(false);
      expect(at(index + 1), `${step.title} after`).toBe(true);
      expect(at(states.length - 1), `${step.title} at the end`).toBe(true);
    });
  });

  it('ends with four planted arbors, nothing found, and a pointer that turns sixty times', () => {
    const last = states.at(-1) ?? emptyMovement();
    const placed = plantMovement(last);
    expect(placed.freeMotions).toBe(0);
    expect(checkMovement(placed).map(({ key }) => key)).toEqual([]);
    const pointer = last.arbors.at(-1);
    const rate = pointer && turnMovement(last).arbors.get(pointer.id)?.rate;
    expect(rate && Math.abs(toNumber(rate.turns))).toBe(60);
  });
});
