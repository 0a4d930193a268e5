/** Rules told from the centre line as steps: a maker who only reads the sheet lands every point, on both faces. */
import { describe, expect, it } from 'vitest';
import { type Face, type MarkingOptions, markingSteps } from '../../solver/marking/index.ts';
import { plantMovement } from '../../solver/planting/index.ts';
import { movementOfParts } from '../support/movements.ts';
import { type BarePlate, followSteps } from './simulatedMaker.ts';
import { stepsSay, stepsText } from './stepsTold.ts';

const FINE = { unit: 'mm', decimals: 10 } as const;

/** A plate of 100 by 90 whose centre line leans by `lean` degrees through (50, 0). Our own scenario. */
function scene(lean: number) {
  const [ux, uy] = [Math.sin((lean * Math.PI) / 180), Math.cos((lean * Math.PI) / 180)];
  const from = (up: number, right: number): [number, number] => [50 + up * ux + right * uy, up * uy - right * ux];
  const point = (id: string, at: [number, number]) => ({ id, name: id, at, diameter: 1 });
  return plantMovement({
    ...movementOfParts({
      plates: [
        {
          id: 'base',
          levels: { from: 0, to: 2 },
          outline: {
            kind: 'path',
            vertices: [
              { x: 0, y: 0 },
              { x: 100, y: 0 },
              { x: 100, y: 90 },
              { x: 0, y: 90 },
            ],
          },
        },
      ],
      arbors: [
        point('Foot', from(10, 0)),
        point('Right', from(40, 22)),
        point('Left', from(40, -22)),
        point('Top', from(70, 0)),
        point('Over', from(65, 22)),
      ],
      rules: [
        { id: 'h1', kind: 'held', point: 'Foot', at: from(10, 0) },
        { id: 'h2', kind: 'held', point: 'Right', at: from(40, 22) },
        { id: 'm', kind: 'mirrored', point: 'Left', of: 'Right' },
        { id: 'c', kind: 'onCentreLine', point: 'Top' },
        { id: 'd', kind: 'distance', points: ['Top', 'Foot'], length: 60 },
        { id: 'a', kind: 'straightAbove', point: 'Over', of: 'Right' },
        { id: 'e', kind: 'distance', points: ['Over', 'Right'], length: 25 },
      ],
    }),
    centreLine: { through: [50, 0], angle: 90 - lean },
  });
}

describe('the centre line on the metal', () => {
  const faces: readonly (readonly [Face, BarePlate])[] = [
    ['up', { edges: { left: 0, lower: 0, right: 100, upper: 90 } }],
    ['down', { edges: { left: -100, lower: 0, right: 0, upper: 90 } }],
  ];
  for (const lean of [0, 12.5]) {
    for (const [face, plate] of faces) {
      it(`leaning by ${lean}°, face ${face}`, () => {
        const placed = scene(lean);
        expect(placed.disagreements).toEqual([]);
        const options: MarkingOptions = { plate: 'base', face };
        const steps = markingSteps(placed, options);
        const struck = followSteps(stepsText(placed, { display: FINE, ...options }), plate);
        expect(struck.size).toBe(5);
        for (const { label, place } of steps) {
          const at = struck.get(label);
          expect(Math.hypot((at?.[0] ?? 1e9) - place[0], (at?.[1] ?? 1e9) - place[1]), label).toBeLessThan(1e-6);
        }
      });
    }
  }

  it('is struck from the rules, not from derived settings', () => {
    const placed = scene(0);
    const steps = markingSteps(placed, { plate: 'base', face: 'up' });
    const kinds = Object.fromEntries(steps.map(({ point, kind }) => [point, kind]));
    expect(kinds).toMatchObject({ Left: 'arcAndLine', Top: 'arcAndLine', Over: 'arcAndLine' });
    const left = stepsSay(placed, { plate: 'base', face: 'up' })[steps.findIndex(({ point }) => point === 'Left')];
    expect(left).toContain('44.000 from Right');
  });
});
