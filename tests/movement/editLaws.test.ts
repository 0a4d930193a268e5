import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  applyEdit,
  commit,
  type History,
  redo,
  startHistory,
  undo,
  writeMovement,
} from '../../solver/movement/index.ts';
import type { Movement } from '../../solver/movement/schema.ts';
import { refusalSays, speakerOf } from '../../solver/words/index.ts';
import { movementOfParts, movementOfText } from '../support/movements.ts';
import { documentWithUnknownFields, draws, editOf } from './randomEdits.ts';

const start = movementOfParts(documentWithUnknownFields());

describe('laws of edits', () => {
  test('whatever is done, the document stays sound, and saving and loading changes nothing', () => {
    let applied = 0;
    let refusals = 0;
    fc.assert(
      fc.property(fc.array(draws, { maxLength: 25 }), (deeds) => {
        let movement = start;
        for (const draw of deeds) {
          const before = movement;
          const text = writeMovement(before);
          const result = applyEdit(movement, editOf(movement, draw));
          expect(writeMovement(before)).toBe(text);
          if (result.kind === 'edited') movement = result.movement;
          else expect(refusalSays(result, speakerOf(before))).toMatch(/^\S.*\.$/s);
          if (result.kind === 'edited') applied++;
          else refusals++;
        }
        const text = writeMovement(movement);
        const again = movementOfText(text);
        expect(again).toEqual(movement);
        expect(writeMovement(again)).toBe(text);
      }),
      { numRuns: 150 },
    );
    // The walk must really walk: both outcomes are common.
    expect(applied).toBeGreaterThan(150);
    expect(refusals).toBeGreaterThan(150);
  });

  test('undo leads back to the start by the same steps, and redo forth again to the same bytes', () => {
    fc.assert(
      fc.property(fc.array(draws, { maxLength: 25 }), fc.nat(), (deeds, halfway) => {
        let history: History = startHistory(start);
        const states: Movement[] = [start];
        deeds.forEach((draw, index) => {
          const deed = { label: draw.kind, edit: editOf(history.movement, draw), timeMs: index };
          const result = commit(history, deed);
          if (result.kind === 'refused' || result.history === history) return;
          history = result.history;
          states.push(history.movement);
        });
        const texts = states.map(writeMovement);
        const back = states.length === 1 ? 0 : halfway % states.length;
        for (let i = states.length - 2; i >= back; i--) {
          history = undo(history)?.history ?? history;
          expect(history.movement).toEqual(states[i]);
          expect(writeMovement(history.movement)).toBe(texts[i]);
        }
        for (let i = back + 1; i < states.length; i++) {
          history = redo(history)?.history ?? history;
          expect(history.movement).toEqual(states[i]);
          expect(writeMovement(history.movement)).toBe(texts[i]);
        }
        expect(redo(history)).toBeUndefined();
      }),
      { numRuns: 100 },
    );
  });

  test('unknown fields survive reading, any edit of known fields, and writing, at every depth', () => {
    const count = (value: unknown): number => {
      if (typeof value !== 'object' || value === null) return 0;
      const own = Object.hasOwn(value, 'x-own') ? 1 : 0;
      return Object.values(value).reduce((sum: number, part) => sum + count(part), own);
    };
    const before = count(documentWithUnknownFields());
    expect(before).toBeGreaterThan(50);
    let movement = start;
    for (const edit of [
      { kind: 'rename', from: 'centre', to: 'middle' },
      { kind: 'move', places: [{ id: 'third', at: [21, 9] }] },
      { kind: 'setValue', rule: 'r-distance', value: 51 },
      { kind: 'setMeasured', rule: 'r-depth', value: 28.8 },
      { kind: 'leaveOut', rules: ['r-line'], leaveOut: true },
      { kind: 'describe', set: { title: 'Another' } },
      { kind: 'reorder', id: 'fifth', to: 0 },
      { kind: 'change', id: 'great', set: { name: 'Great wheel' } },
    ] as const) {
      const result = applyEdit(movement, edit);
      if (result.kind === 'refused') throw new Error(JSON.stringify(result.why));
      movement = result.movement;
    }
    expect(count(JSON.parse(writeMovement(movement)))).toBe(before);
  });
});
