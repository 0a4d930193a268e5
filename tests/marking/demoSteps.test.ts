/** The simulated maker on the demo movements: every plate, both faces, only from the printed text. */
import { readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { markingPlan, platesOf, plateViewOf } from '../../solver/marking/index.ts';
import { edgesOf } from '../../solver/marking/steps/metal.ts';
import { plantMovement } from '../../solver/planting/index.ts';
import { allSheets } from '../files/allSheets.ts';
import { movementOfFile } from '../support/movements.ts';
import { followSteps } from './simulatedMaker.ts';
import { stepsText } from './stepsTold.ts';

const folder = new URL('../../demo-data/', import.meta.url);
const demos = readdirSync(folder).filter((name) => name.endsWith('.json'));

function placedDemo(name: string) {
  return plantMovement(movementOfFile(`demo-data/${name}`));
}

describe.each(demos)('%s', (name) => {
  const placed = placedDemo(name);

  it('every settled point is landed within 1e-6 mm on every face', () => {
    for (const plate of platesOf(placed.movement)) {
      for (const face of ['up', 'down'] as const) {
        const view = plateViewOf(placed.movement, plate, face);
        const plan = markingPlan(placed, { plate, face });
        const edges = Object.fromEntries(edgesOf(view).map((edge) => [edge.name.replace(' edge', ''), edge.at]));
        const origin = plan.datum.kind === 'edges' ? undefined : plan.datum.origin;
        const second = plan.datum.kind === 'pair' ? plan.steps[1]?.place : undefined;
        const at = origin && ([origin.x, origin.y] as const);
        const base = at && second ? Math.atan2(second[1] - at[1], second[0] - at[0]) : 0;
        const bare = { edges, base, ...(at ? { centre: at, first: at } : {}) };
        const struck = followSteps(stepsText(placed, { plate, face, display: { unit: 'mm', decimals: 10 } }), bare);
        const steps = plan.steps.filter((step) => step.kind !== 'unsettled' && step.point !== 'plate centre');
        expect(steps.length).toBeGreaterThan(2);
        for (const step of steps) {
          const there = struck.get(step.label) ?? [Number.NaN, Number.NaN];
          expect(Math.hypot(there[0] - step.place[0], there[1] - step.place[1]), JSON.stringify(step)).toBeLessThan(
            1e-6,
          );
        }
      }
    }
  });

  it('its sheets pass the pre-flight', () => {
    const report = allSheets(placed).find((sheet) => sheet.name === 'preflight.txt')?.text ?? '';
    expect(report).toMatch(/: fine\./);
    expect(report).not.toMatch(/Problem/);
  });
});
