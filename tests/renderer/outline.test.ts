/** Outlines reshaped: what each change of a corner, side or circle gives. Areas and distances are plain plane geometry. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { handleAt, handlesOf, lineAt } from '../../renderer/gestures/outline/handles.ts';
import {
  addCorner,
  bowSide,
  moveCorner,
  moveOutline,
  moveSide,
  outlineSideOf,
  type PathOutline,
  rectangleOf,
  removeCorner,
  sizeRectangle,
} from '../../renderer/gestures/outline/reshape.ts';
import { shapedBy } from '../../renderer/gestures/outline/shapeFields.ts';
import type { View } from '../../renderer/state/view.ts';
import { areaOfOutline, boundsOfOutline } from '../../solver/geometry/index.ts';
import { applyEdit, emptyMovement } from '../../solver/movement/index.ts';
import type { Movement, Plate } from '../../solver/movement/schema.ts';
import { refusalSays, speakerOf } from '../../solver/words/index.ts';

const path = (...corners: readonly (readonly [number, number, number?])[]): PathOutline => ({
  kind: 'path',
  vertices: corners.map(([x, y, bulge = 0]) => ({ x, y, bulge })),
});
const oblong = path([0, 0], [40, 0], [40, 20], [0, 20]);

describe('corners and sides', () => {
  test('a moved corner moves alone, a moved side takes both its corners', () => {
    expect(moveCorner(oblong, 2, { x: 50, y: 30 }).vertices.map(({ x, y }) => [x, y])).toEqual([
      [0, 0],
      [40, 0],
      [50, 30],
      [0, 20],
    ]);
    // The last side joins the last corner to the first.
    expect(boundsOfOutline(moveSide(oblong, 3, -10, 0))).toEqual([-10, 0, 40, 20]);
  });

  test('a corner more on a straight side changes no area, and taking it away brings the outline back', () => {
    const more = addCorner(oblong, 1, { x: 40, y: 5 });
    expect(more.vertices).toHaveLength(5);
    expect(more.vertices[2]).toEqual({ x: 40, y: 5, bulge: 0 });
    expect(areaOfOutline(more)).toBeCloseTo(800, 12);
    expect(removeCorner(more, 2)).toEqual(oblong);
  });

  test('a corner more on an arc leaves the arc where it was', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -3, max: 3, noNaN: true }).filter((bulge) => Math.abs(bulge) > 0.02),
        fc.double({ min: 0.1, max: 0.9, noNaN: true }),
        (bulge, share) => {
          const outline = path([0, 0], [40, 0, bulge], [40, 20], [0, 20]);
          const { middle, from } = outlineSideOf(outline, 1);
          const near = { x: from.x + share * (middle.x - from.x), y: from.y + share * (middle.y - from.y) };
          const more = addCorner(outline, 1, near);
          expect(Math.abs(areaOfOutline(more) - areaOfOutline(outline))).toBeLessThan(1e-3);
          for (const [i, bound] of boundsOfOutline(more).entries()) {
            expect(bound).toBeCloseTo(boundsOfOutline(outline)[i] ?? Number.NaN, 4);
          }
        },
      ),
    );
  });

  test('the rise of an arc is its height over the chord, and 0 is straight', () => {
    const bowed = bowSide(oblong, 1, 10);
    // A half circle on a chord of 20: its rise is its radius, and it turns left, so it stands out to the right.
    expect(bowed.vertices[1]?.bulge).toBeCloseTo(1, 12);
    expect(outlineSideOf(bowed, 1).middle.x).toBeCloseTo(50, 12);
    expect(areaOfOutline(bowed)).toBeCloseTo(800 + (Math.PI * 100) / 2, 9);
    expect(bowSide(bowed, 1, 0)).toEqual(oblong);
  });

  test('a rectangle is known as one and keeps its middle when its width changes', () => {
    expect(rectangleOf(oblong)).toEqual({ x: 20, y: 10, width: 40, height: 20 });
    expect(rectangleOf(sizeRectangle(oblong, 60, 20))).toEqual({ x: 20, y: 10, width: 60, height: 20 });
    expect(rectangleOf(moveCorner(oblong, 0, { x: 1, y: 0 }))).toBeUndefined();
    expect(rectangleOf(bowSide(oblong, 0, 1))).toBeUndefined();
    expect(rectangleOf({ kind: 'circle', centre: [0, 0], radius: 3 })).toBeUndefined();
  });

  test('fields that are not known stay', () => {
    const marked = { ...oblong, engraved: 'yes', vertices: oblong.vertices.map((v) => ({ ...v, own: 1 })) };
    const all = [moveCorner(marked, 0, { x: 1, y: 1 }), moveSide(marked, 0, 1, 1), moveOutline(marked, 1, 1)];
    for (const outline of all) {
      expect(outline).toHaveProperty('engraved', 'yes');
      if (outline.kind === 'path') expect(outline.vertices.every((v) => Reflect.get(v, 'own') === 1)).toBe(true);
    }
  });
});

const view: View = { centre: { x: 0, y: 0 }, scale: 4, width: 800, height: 600 };

function withPlate(outline: unknown): { movement: Movement; plate: Plate } {
  const item = { id: 'base', name: 'Base plate', outline: outline as never, levels: { from: -2, to: 0 } };
  const outcome = applyEdit(emptyMovement(), { kind: 'add', to: 'plates', item });
  const plate = outcome.kind === 'edited' ? outcome.movement.plates[0] : undefined;
  if (outcome.kind !== 'edited' || !plate) throw new Error('the plate of the test is sound');
  return { movement: outcome.movement, plate };
}

describe('handles', () => {
  const { plate, movement } = withPlate(oblong);
  const exact = { step: 0, reach: 0, places: [], lengthSays: String };

  test('each corner has one, each long side has one, and the whole', () => {
    const kinds = handlesOf(plate, view).map(({ kind }) => kind);
    expect(kinds.filter((kind) => kind === 'corner')).toHaveLength(4);
    expect(kinds.filter((kind) => kind === 'side')).toHaveLength(4);
    expect(kinds.at(-1)).toBe('whole');
    // Far away a side is shorter than its corners' handles.
    expect(handlesOf(plate, { ...view, scale: 0.5 }).some(({ kind }) => kind === 'side')).toBe(false);
  });

  test('reach is in pixels at every zoom', () => {
    for (const scale of [1, 40, 400]) {
      const near = { ...view, scale };
      const handles = handlesOf(plate, near);
      const corner = handles.find(({ kind, index }) => kind === 'corner' && index === 2)?.pixel ?? { x: 0, y: 0 };
      expect(handleAt(handles, { x: corner.x + 6, y: corner.y - 5 })).toMatchObject({ kind: 'corner', index: 2 });
      expect(handleAt(handles, { x: corner.x + 8, y: corner.y - 8 })?.kind).not.toBe('corner');
      expect(lineAt(plate, near, { x: corner.x - 2, y: corner.y + 4 * scale })).toMatchObject({
        kind: 'side',
        index: 1,
      });
    }
  });

  test('a straight side follows square to itself, a corner is drawn level with another', () => {
    const by = shapedBy(plate, { ring: 'outline', kind: 'side', index: 1 }, { x: 40, y: 10 }, { x: 7, y: 3 }, exact);
    expect(boundsOfOutline(by?.set['outline'] ?? oblong)).toEqual([0, 0, 47, 20]);
    const near = shapedBy(
      plate,
      { ring: 'outline', kind: 'corner', index: 2 },
      { x: 40, y: 20 },
      { x: -39.8, y: 11.03 },
      { ...exact, reach: 0.5, step: 0.1, places: [{ x: 0, y: 0 }] },
    );
    const next = near?.set['outline'];
    expect(next?.kind === 'path' ? next.vertices[2] : undefined).toEqual({ x: 0, y: 31, bulge: 0 });
  });

  test('an outline that would cross itself is refused by the names of its sides, and stays', () => {
    const crossed = shapedBy(
      plate,
      { ring: 'outline', kind: 'corner', index: 2 },
      { x: 40, y: 20 },
      { x: -50, y: -10 },
      exact,
    );
    const outcome = applyEdit(movement, { kind: 'change', id: plate.id, set: crossed?.set ?? {} });
    expect(outcome.kind).toBe('refused');
    const says = outcome.kind === 'refused' ? refusalSays(outcome, speakerOf(movement)) : '';
    expect(says).toBe(
      'Base plate: found the side between (40, 0) and (-10, 10) that meets the side between (0, 20) and (0, 0); ' +
        'expected an outline that neither crosses nor touches itself; put the corners in order round the outline, or correct a bulge.',
    );
  });
});
