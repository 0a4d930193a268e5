/** Impossible teeth are found by the check, and a cure that is offered takes each away. */
import { describe, expect, it } from 'vitest';
import { checkMovement, remediesFor } from '../../solver/clearance/index.ts';
import { applyEdit } from '../../solver/movement/index.ts';
import type { Movement } from '../../solver/movement/schema.ts';
import { plantMovement } from '../../solver/planting/index.ts';
import { findingSays } from '../../solver/words/clearance/index.ts';
import { speakerOf } from '../../solver/words/index.ts';
import { movementOfParts } from '../support/movements.ts';

/** Two wheels in depth, the first with what is said of it. */
const movementOf = (first: object, second: object = {}): Movement =>
  movementOfParts({
    arbors: [
      { id: 'A', name: 'First', at: [0, 0], diameter: 2 },
      { id: 'B', name: 'Second', at: [60, 0], diameter: 2 },
    ],
    wheels: [
      { id: 'a', arbor: 'A', teeth: 60, size: { module: 1 }, form: 'cycloidal', level: 0, thickness: 2, ...first },
      { id: 'b', arbor: 'B', teeth: 8, size: { module: 1 }, form: 'cycloidal', level: 0, thickness: 2, ...second },
    ],
    rules: [
      { kind: 'held', id: 'at', point: 'A', at: [0, 0] },
      { kind: 'depth', id: 'depth', wheels: ['a', 'b'] },
      { kind: 'bearing', id: 'direction', point: 'B', centre: 'A', angle: 0 },
    ],
  });

const ofTeeth = (movement: Movement) =>
  checkMovement(plantMovement(movement)).filter(({ cause }) => cause.kind === 'teeth');

describe('impossible teeth', () => {
  it.each<[string, 'stops' | 'warns' | 'notes', object, object]>([
    ['noHeight', 'stops', { tipDiameter: 50 }, {}],
    ['tipsBelowPitch', 'stops', { tipDiameter: 59 }, {}],
    ['tipsBelowPitch', 'warns', { addendum: 0 }, {}],
    ['noSpace', 'stops', { toothThickness: 3.2 }, {}],
    ['pointed', 'warns', { thicknessFactor: 0.9 }, {}],
    ['unknownTable', 'warns', { table: 'no such table' }, {}],
    ['trundlesTouch', 'stops', {}, { form: 'lantern', trundleDiameter: 3.2 }],
    ['undercut', 'notes', { form: 'involute' }, { form: 'involute', teeth: 12 }],
    ['blankTooLarge', 'warns', { form: 'involute', tipDiameter: 66 }, { form: 'involute', teeth: 20 }],
  ])('%s %s, and is cured by an offer', (kind, severity, first, second) => {
    const movement = movementOf(first, second);
    const found = ofTeeth(movement).filter(({ cause }) => cause.kind === 'teeth' && cause.told.kind === kind);
    expect(found).toHaveLength(1);
    const [finding] = found;
    if (!finding) throw new Error('one');
    expect(finding.severity).toBe(severity);
    expect(findingSays(finding, speakerOf(movement))).toMatch(/\.$/);
    const [cure] = remediesFor(plantMovement(movement), finding);
    if (!cure) throw new Error('a cure is offered');
    const cured = applyEdit(movement, cure.edit);
    if (cured.kind === 'refused') throw new Error('the cure applies');
    expect(ofTeeth(cured.movement).map(({ key }) => key)).not.toContain(finding.key);
  });

  it('are not told of usual wheels', () => {
    expect(ofTeeth(movementOf({}))).toEqual([]);
  });

  it('are told once, not again of the pair', () => {
    const placed = plantMovement(movementOf({ tipDiameter: 50 }));
    const found = checkMovement(placed, { depths: true }).filter(({ parts }) => parts.some((id) => id === 'a'));
    expect(found.map(({ cause }) => cause.kind)).toEqual(['teeth']);
  });

  it('follow the mates of a wheel, though the wheel itself is the same', () => {
    // Alone it is a pinion of sixteen leaves; whose rounder tops meet sooner; with a mate of eight it is a wheel.
    const movement = movementOf({ teeth: 16, thicknessFactor: 1.03 });
    const alone = { ...movement, rules: movement.rules.filter(({ kind }) => kind !== 'depth') };
    const told = (each: Movement) => ofTeeth(each).map(({ key }) => key);
    const together = told(movement);
    expect(told(alone)).not.toEqual(together);
    expect(told(movement)).toEqual(together);
  });
});

describe('two full wheel forms', () => {
  it('are cured by cutting the smaller as a pinion', () => {
    const movement = movementOf({}, { teeth: 24 });
    const placed = plantMovement(movement);
    const binds = checkMovement(placed, { depths: true }).find(({ cause }) => cause.kind === 'underShake');
    if (!binds) throw new Error('they bind');
    const cures = remediesFor(placed, binds);
    expect(cures.map(({ deed }) => deed.kind)).toContain('cutAsPinion');
  });
});
