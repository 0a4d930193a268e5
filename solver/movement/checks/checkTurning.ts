/** Couplings and indications that contradict themselves. */
import { checkCoupling } from '../couplings/couplings.ts';
import type { Movement } from '../schema.ts';
import { axesOf } from './axesOf.ts';
import type { Report } from './fault.ts';

/** Reports what is wrong within couplings and indications. */
export function checkTurning(movement: Movement, report: Report): void {
  checkCouplings(movement, report);
  movement.indications.forEach((shown, index) => {
    const path = ['indications', index] as const;
    if ((shown.period === undefined) === (shown.ratio === undefined)) {
      report({
        path,
        id: shown.id,
        found: shown.period === undefined ? 'neither a period nor a ratio' : 'both a period and a ratio',
        expected: 'exactly one of “period” and “ratio”',
        remedy: shown.period === undefined ? 'say what it is to show' : 'remove one of the two',
      });
    }
    if (shown.ratio !== undefined && isUseless(shown.ratio)) {
      report({
        path: [...path, 'ratio'],
        id: shown.id,
        found: `${shown.ratio}`,
        expected: 'a ratio other than nothing, with a divisor other than nothing',
        remedy: 'correct “ratio”',
      });
    }
  });
}

function isUseless(ratio: number | string): boolean {
  if (typeof ratio === 'number') return ratio === 0;
  return ratio.split('/').some((part) => Number(part) === 0);
}

function checkCouplings(movement: Movement, report: Report): void {
  const axisOf = axesOf(movement);
  const arborOf = new Map<string, string>(movement.wheels.map((wheel) => [wheel.id, wheel.arbor]));
  const axes = { ofArbor: axisOf, ofWheel: (wheel: string): string => axisOf(arborOf.get(wheel) ?? wheel) };
  movement.couplings.forEach((coupling, index) => {
    const tell = (keys: readonly (string | number)[], found: string, expected: string): void =>
      report({
        path: ['couplings', index, ...keys],
        id: coupling.id,
        found,
        expected,
        remedy: 'name another part, or remove the coupling',
      });
    checkCoupling(coupling, axes, tell);
  });
}
