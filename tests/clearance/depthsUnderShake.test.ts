import { describe, expect, it } from 'vitest';
import { depthsUnderShake } from '../../solver/clearance/depths/depthsUnderShake.ts';
import { checkMovement } from '../../solver/clearance/index.ts';
import { plantMovement } from '../../solver/planting/index.ts';
import { windowOfDepth } from '../../solver/teeth/index.ts';
import { sceneOf } from './scenes.ts';
import { wordsOf } from './wordsOf.ts';

/** A wheel of 64 and a pinion of 8, cycloidal, module 1, at a held distance, with play in their holes. */
function pair(distance: number, play: number, runOut = 0) {
  const bearings = [-5, 8].map((at) => ({ at, bore: 1 + 2 * play, pivot: 1, length: 2 }));
  return sceneOf({
    arbors: [0, 1].map((i) => ({ id: `A${i}`, at: [i * distance, 0], diameter: 2, bearings })),
    wheels: [64, 8].map((teeth, i) => ({
      id: `w${i}`,
      name: `W${i}`,
      arbor: `A${i}`,
      teeth,
      size: { module: 1 },
      form: 'cycloidal',
      level: 0,
      thickness: 2,
      runOut,
    })),
    rules: [
      { id: 'h', kind: 'held', point: 'A0', at: [0, 0] },
      { id: 'b', kind: 'bearing', point: 'A1', centre: 'A0', angle: 0 },
      { id: 'd', kind: 'depth', wheels: ['w0', 'w1'], use: 'held', held: distance },
    ],
  });
}

function found(distance: number, play: number, runOut = 0) {
  const movement = pair(distance, play, runOut);
  return checkMovement(plantMovement(movement), { depths: true })
    .filter(({ cause }) => cause.kind === 'underShake')
    .map((finding) => ({ severity: finding.severity, says: wordsOf(movement).finding(finding) }));
}

describe('depths under shake', () => {
  const movement = pair(36, 0.01);
  const [wheel, pinion] = movement.wheels;
  if (!wheel || !pinion) throw new Error('two wheels');
  const window = windowOfDepth(wheel, pinion, movement);
  if (window.kind === 'none') throw new Error('no window');

  it('inside the window nothing is said', () => {
    expect(found((window.deepest + window.shallowest) / 2, 0.01)).toEqual([]);
  });

  it('too near binds, unless the bearings give way', () => {
    const near = window.deepest - 0.05;
    expect(found(near, 0.01)).toMatchObject([
      { severity: 'stops', says: expect.stringMatching(/^W0 and W1 bind: 0\.050 mm too near/) },
    ]);
    expect(found(near, 0.04)).toEqual([]);
  });

  it('run-out is not given way to: it takes from what the bearings give', () => {
    const near = window.deepest - 0.05;
    expect(found(near, 0.04, 0.02)).toEqual([]);
    expect(found(near, 0.04, 0.04)).toMatchObject([
      { severity: 'stops', says: expect.stringContaining('0.090 mm too near where their run-out is at its worst') },
    ]);
    const free = window.deepest + 0.02;
    expect(found(free, 0, 0.01)).toEqual([]);
    expect(found(free, 0, 0.03)).toMatchObject([{ severity: 'stops' }]);
  });

  it('beyond the reach of the teeth contact is lost; near it, with shake only', () => {
    expect(found(window.lostAt + 0.1, 0)).toMatchObject([{ severity: 'stops' }]);
    expect(found(window.lostAt - 0.05, 0.04)).toMatchObject([
      { severity: 'warns', says: expect.stringContaining('with shake') },
    ]);
  });

  it('the shake is that at the height of the teeth', () => {
    const [depth] = depthsUnderShake(plantMovement(pair(36, 0.03)));
    if (depth?.window.kind !== 'window') throw new Error('a window');
    expect(depth.window.turn.spread).toBeCloseTo(0.06, 9);
  });
});
