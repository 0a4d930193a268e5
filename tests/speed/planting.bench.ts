/**
 * Speed of planting after a drag step of 0.3 mm, planning and proof included, cold: every sketch place is 0.3 mm from
 * the place to find, and nothing is kept from an earlier planting (except in the lines that say "kept plan").
 *
 * Beside it, on the same networks in the same run: ml-levenberg-marquardt at the largest size that it ends within a few
 * seconds, and the closed forms alone. Every answer that is timed is checked against the known placement.
 */

import { createPlanner } from '../../solver/planting/kernel/planner.ts';
import { plantNetwork } from '../../solver/planting/kernel/plant.ts';
import { bracedNetwork } from '../planting/scenes/braced.ts';
import { chainedNetwork } from '../planting/scenes/chained.ts';
import { constructedNetwork } from '../planting/scenes/constructed.ts';
import { coupledNetwork, type KnownNetwork } from '../planting/scenes/coupled.ts';
import { recovered } from '../planting/scenes/recovered.ts';
import { withChecks } from '../planting/scenes/withChecks.ts';
import { HEADING, line, type Timing, time } from './measure.ts';
import { BareForms, solveByLibrary } from './rivals.ts';

/** Drag step, mm. */
const STEP = 0.3;
/** Bound on places, mm. */
const RIGHT = 1e-7;

function off(coords: ArrayLike<number>, known: Float64Array): number {
  let most = 0;
  for (let k = 0; k < known.length; k++) most = Math.max(most, Math.abs((coords[k] as number) - (known[k] as number))); // same length
  return most;
}

function demand(holds: boolean, what: string): void {
  if (!holds) throw new Error(`the answer that was timed is wrong: ${what}`);
}

/** Times one network and checks its answer. */
function plantTimed(name: string, scene: KnownNetwork, goalMs: number | undefined): Timing {
  const { network, known } = scene;
  const result = plantNetwork(network);
  demand(off(result.coords, known) < RIGHT, `${name}: ${off(result.coords, known)} mm off`);
  demand(Math.max(...result.missBy) <= 1e-9 && result.freeMotions === 0, `${name}: not planted`);
  const timing = time(() => plantNetwork(network), 300, 100);
  const { iterations, evaluations, blocks } = result.work;
  const goal = goalMs === undefined ? '' : `goal ${goalMs} ${timing.medianMs <= goalMs ? 'met' : 'MISSED'}; `;
  console.log(line(name, timing, `${goal}${blocks} blocks, ${iterations} iterations, ${evaluations} evaluations`));
  return timing;
}

function libraryTimed(name: string, scene: KnownNetwork): Timing {
  let answer = solveByLibrary(scene.network);
  const timing = time(
    () => {
      answer = solveByLibrary(scene.network);
    },
    10,
    1,
  );
  const error = off(answer.coords, scene.known);
  demand(error < 1e-3, `the library on ${name}: ${error} mm off`);
  console.log(
    line(
      `  library: ${name}`,
      timing,
      `worst miss ${answer.worst.toExponential(1)} mm, ${answer.iterations} iterations`,
    ),
  );
  return timing;
}

function keptPlan(): void {
  const { network, known } = constructedNetwork(1, 1000, 0);
  const planner = createPlanner(network);
  const [x, y] = [known[2] as number, known[3] as number]; // point 1 is held
  const timing = time((n) => planner.drag(1, x + (n % 2 ? STEP : 0), y), 400, 200);
  const back = planner.drag(1, x, y);
  demand(off(back.coords, known) < RIGHT && Math.max(...back.missBy) <= 1e-9, 'kept plan');
  console.log(
    line('1000 arbors, kept plan, in a drag', timing, `goal 0.1 ${timing.medianMs <= 0.1 ? 'met' : 'MISSED'}`),
  );
}

function built(): void {
  const timings = [30, 100, 300, 1000, 3000].map((count) => {
    const goal = count === 1000 ? 0.5 : count === 3000 ? 2 : undefined;
    return plantTimed(`${count} arbors, two depths each`, constructedNetwork(1, count, STEP), goal);
  });
  const [first, last] = [timings[0] as Timing, timings[timings.length - 1] as Timing]; // five of them
  console.log(
    `growth of the minimum from 30 to 3000 arbors: ${(last.minimumMs / first.minimumMs).toFixed(0)} times (linear: 100)`,
  );
  const scene = constructedNetwork(1, 1000, STEP);
  const forms = new BareForms(scene.network, scene.known);
  const coords = Float64Array.from(scene.network.coords);
  const bare = time(() => forms.place(coords), 400, 200);
  demand(off(coords, scene.known) < RIGHT, 'closed forms alone');
  const planted = timings[3] as Timing; // as above
  console.log(
    line(
      '  closed forms alone, 1000 arbors',
      bare,
      `planting takes ${(planted.medianMs / bare.medianMs).toFixed(1)} times that`,
    ),
  );
}

function coupled(): void {
  plantTimed('chained blocks of 3-6, 300 points', chainedNetwork(1, 300, STEP), 0.8);
  plantTimed('chained blocks of 3-6, 1000 points', chainedNetwork(1, 1000, STEP), 2.5);
  plantTimed('one braced block, 300 points', bracedNetwork(1, 15, 20, STEP), 1.5);
}

/** The library's matrices are dense: a hundred points take it seconds, so the ratio is told at the sizes it ends. */
function against(): void {
  for (const [name, scene] of [
    ['30 arbors, two depths each', constructedNetwork(1, 30, STEP)],
    ['chained blocks, 30 points', chainedNetwork(1, 30, STEP)],
    ['one braced block, 30 points', bracedNetwork(1, 5, 6, STEP)],
    ['100 arbors, two depths each', constructedNetwork(1, 100, STEP)],
    ['one braced block, 100 points', bracedNetwork(1, 10, 10, STEP)],
  ] as const) {
    const ours = plantTimed(name, scene, undefined);
    const theirs = libraryTimed(name, scene);
    console.log(`  planting is ${(theirs.medianMs / ours.medianMs).toFixed(0)} times as fast`);
  }
}

function robustness(): void {
  for (const [name, off, scene] of [
    ['chained blocks, 100 points', 5, (seed: number) => chainedNetwork(seed, 100, 5)],
    ['one loosely braced whole, 100 points', 5, (seed: number) => coupledNetwork(seed, 100, 5)],
    ['one loosely braced whole, 100 points', 1, (seed: number) => coupledNetwork(seed, 100, 1)],
    ['chained blocks, 30 points, 10 checks', 5, (seed: number) => withChecks(chainedNetwork(seed, 30, 5), seed, 10)],
    [
      '20 arbors, two depths each, 20 checks',
      3,
      (seed: number) => withChecks(constructedNetwork(seed, 20, 3), seed, 20),
    ],
  ] as const) {
    const { wanted, hold } = recovered(60, scene);
    console.log(`${name}, each ${off} mm off: wanted placement in ${wanted} of 60, every rule holds in ${hold}`);
  }
}

/** Prints the whole report; throws when an answer is wrong. */
export function run(): void {
  console.log(HEADING);
  built();
  keptPlan();
  coupled();
  against();
  robustness();
}
