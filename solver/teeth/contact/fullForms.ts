/** Two full wheel forms in mesh: whether they leave each other room at their calculated depth, and what would. */
import type { Movement, Wheel } from '../../movement/schema.ts';
import { kindOf } from '../forms/kinds/formKinds.ts';
import type { FullForms } from '../pairFaults.ts';
import { calculatedDepth } from '../sizes/calculatedDepth.ts';
import { sizeOfWheel } from '../sizes/sizeOfWheel.ts';
import { clearancesOf } from './contactOfForms.ts';
import { formsOfPair } from './contactOfPair.ts';
import { playAt } from './quickReadings.ts';
import { windowOfDepth } from './windowOfDepth.ts';

/** Rounding of a play (radians) and of a clearance (× module) that still counts as none. */
const ROUNDING = 1e-6;

/** Do the teeth leave each other room where the pitch circles touch? */
function isFree(driver: Wheel, driven: Wheel, movement: Movement): boolean {
  const forms = formsOfPair(driver, driven, movement);
  const depth = calculatedDepth(driver, driven, movement);
  if (forms.kind === 'none' || depth.kind === 'mismatch') return false;
  const { driver: a, driven: b } = forms;
  const play = playAt(a, b, depth.distance);
  const clearance = clearancesOf(a, b, depth.distance);
  const least = -ROUNDING * a.module;
  return play !== undefined && play.least >= -ROUNDING && clearance.driver >= least && clearance.driven >= least;
}

/** Is the pair free when some of its wheels are cut otherwise? */
function isFreeWith(pair: readonly [Wheel, Wheel], movement: Movement, change: (wheel: Wheel) => Wheel): boolean {
  const [driver, driven] = [change(pair[0]), change(pair[1])];
  const wheels = movement.wheels.map((wheel) => (wheel === pair[0] ? driver : wheel === pair[1] ? driven : wheel));
  return isFree(driver, driven, { ...movement, wheels });
}

/** Least addendum that is tried, and the step between two trials, × module: shorter teeth hardly hand over. */
const LEAST_ADDENDUM = 0.4;
const STEP = 0.05;

/** The highest addendum, × module, with which both wheels are free; none where shorter teeth do not help. */
function freeingAddendum(pair: readonly [Wheel, Wheel], movement: Movement): number | undefined {
  const most = Math.max(
    ...pair.map((wheel) => sizeOfWheel(wheel, movement).addendum / sizeOfWheel(wheel, movement).module),
  );
  for (let step = Math.ceil(most / STEP) - 1; step * STEP >= LEAST_ADDENDUM - ROUNDING; step--) {
    const addendum = Number((step * STEP).toFixed(2));
    const shorter = ({ tipDiameter: _, ...wheel }: Wheel): Wheel => ({ ...wheel, addendum });
    if (isFreeWith(pair, movement, shorter)) return addendum;
  }
  return undefined;
}

/**
 * Whether two wheels of a clock table, both cut as wheels, bind at their own calculated depth. Nothing where one of them
 * is a pinion, a ring or of a form that has no such difference, or where they are free.
 */
export function fullFormsOf(driver: Wheel, driven: Wheel, movement: Movement): FullForms | undefined {
  const areFull = [driver, driven].every(
    (wheel) => !wheel.internal && kindOf(wheel).role?.(wheel, movement) === 'wheel',
  );
  const depth = calculatedDepth(driver, driven, movement);
  if (!areFull || depth.kind === 'mismatch' || isFree(driver, driven, movement)) return undefined;
  const pair = [driver, driven] as const;
  const smaller = driver.teeth < driven.teeth ? driver : driven;
  const asPinion = (wheel: Wheel): Wheel => (wheel.id === smaller.id ? { ...wheel, cutAs: 'pinion' } : wheel);
  const window = windowOfDepth(driver, driven, movement);
  const addendum = freeingAddendum(pair, movement);
  return {
    kind: 'fullForms',
    wheels: [driver.id, driven.id],
    calculated: depth.distance,
    ...(window.kind === 'window' ? { free: window.deepest } : {}),
    ...(isFreeWith(pair, movement, asPinion) ? { pinion: smaller.id } : {}),
    ...(addendum === undefined ? {} : { addendum }),
  };
}
