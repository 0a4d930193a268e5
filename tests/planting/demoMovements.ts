/** Movements as a maker would draw them, made up for these tests: a round drum, a case with pillars, a going train. */
import type { Movement } from '../../solver/movement/schema.ts';
import { arbor, buildMovement, clockWheel, held } from './buildMovement.ts';

const levels = { from: 0, to: 20 };

/** A round drum: pipes on the centre, intermediates by depth and radius, by two depths, and opposite; three even posts. */
export function drum(): Movement {
  return buildMovement({
    arbors: [
      arbor('centre', 0, 0),
      { ...arbor('pipe1', 0, 0), ridesOn: 'centre' },
      { ...arbor('pipe2', 0, 0), ridesOn: 'pipe1' },
      arbor('first', 20, 12),
      arbor('second', -18, 30),
      arbor('twin', -20, -12),
    ],
    wheels: [
      clockWheel('centreWheel', 'centre', 60, 0.6),
      clockWheel('firstPinion', 'first', 18, 0.6),
      clockWheel('firstWheel', 'first', 48, 0.6, 4),
      clockWheel('secondPinion', 'second', 24, 0.6, 4),
      clockWheel('secondWheel', 'second', 50, 0.6, 8),
      clockWheel('pipeWheel', 'pipe1', 55, 0.6, 8),
    ],
    posts: [
      { id: 'P1', at: [40, 2], diameter: 6, slidesAbout: 'centre' },
      { id: 'P2', at: [-21, 34], diameter: 6, slidesAbout: 'centre' },
      { id: 'P3', at: [-20, -36], diameter: 6, slidesAbout: 'centre' },
    ],
    walls: [
      {
        id: 'shell',
        outline: { kind: 'circle', centre: [0, 0], radius: 55 },
        inner: { kind: 'circle', centre: [0, 0], radius: 50 },
        levels,
      },
    ],
    rules: [
      held('datum', 'centre', 0, 0),
      { kind: 'depth', id: 'd1', wheels: ['centreWheel', 'firstPinion'], plusMinus: 0.03 },
      { kind: 'bearing', id: 'b1', point: 'first', centre: 'centre', angle: 30 },
      { kind: 'depth', id: 'd2', wheels: ['firstWheel', 'secondPinion'], allowance: 0.05, plusMinus: 0.03 },
      {
        kind: 'depth',
        id: 'd3',
        wheels: ['secondWheel', 'pipeWheel'],
        use: 'measured',
        measured: { value: 31.58, plusMinus: 0.02 },
      },
      { kind: 'opposite', id: 'o', point: 'twin', centre: 'centre', of: 'first' },
      { kind: 'evenSpacing', id: 'even', points: ['P1', 'P2', 'P3'], centre: 'centre' },
      { kind: 'clearBy', id: 'wall', parts: ['P1', 'shell'], gap: 2 },
      { kind: 'bearing', id: 'b2', point: 'P1', centre: 'centre', reference: 'first', angle: -40 },
    ],
  });
}

/** A rectangular case: four corner posts, one of them moved to clear a wheel and the two walls by the same gap. */
export function pillaredCase(): Movement {
  const corner = (id: string, x: number, y: number) => ({ id, at: [x, y] as [number, number], diameter: 8 });
  return buildMovement({
    arbors: [arbor('dial', 60, 70), arbor('lunar', 75, 40), arbor('idler', 40, 45)],
    wheels: [
      clockWheel('dialWheel', 'dial', 57, 0.8),
      clockWheel('lunarWheel', 'lunar', 59, 0.8),
      clockWheel('idlerWheel', 'idler', 30, 0.8),
    ],
    posts: [
      corner('lowerLeft', 9, 9),
      corner('lowerRight', 112, 9),
      corner('upperLeft', 9, 130),
      corner('upperRight', 108, 131),
    ],
    walls: [
      {
        id: 'case',
        outline: {
          kind: 'path',
          vertices: [
            { x: 0, y: 0 },
            { x: 120, y: 0 },
            { x: 120, y: 140 },
            { x: 0, y: 140 },
          ],
        },
        inner: {
          kind: 'path',
          vertices: [
            { x: 3, y: 3 },
            { x: 117, y: 3 },
            { x: 117, y: 137 },
            { x: 3, y: 137 },
          ],
        },
        levels,
      },
    ],
    rules: [
      held('dialPlace', 'dial', 60, 70),
      { kind: 'depth', id: 'd1', wheels: ['dialWheel', 'idlerWheel'] },
      { kind: 'depth', id: 'd2', wheels: ['idlerWheel', 'lunarWheel'] },
      { kind: 'distance', id: 'dl', points: ['dial', 'lunar'], length: 47 },
      { kind: 'bearing', id: 'line', point: 'lunar', centre: 'dial', angle: -90 },
      ...(['lowerLeft', 'lowerRight', 'upperLeft', 'upperRight'] as const).flatMap((id, k) => [
        {
          kind: 'clearBy' as const,
          id: `${id}Side`,
          parts: [id, 'case'] as [string, string],
          gap: 2,
          edge: k % 2 === 0 ? 3 : 1,
        },
        {
          kind: 'clearBy' as const,
          id: `${id}End`,
          parts: [id, 'case'] as [string, string],
          gap: 2,
          edge: k < 2 ? 0 : 2,
        },
      ]),
    ],
  });
}

/** A going train up the middle of a plate, with the third arbor drilled a little off. */
export function goingTrain(isDrilled: boolean): Movement {
  return buildMovement({
    arbors: [arbor('great', 40, 20), arbor('centre', 42, 62), arbor('third', 60, 80), arbor('escape', 40, 98)],
    wheels: [
      clockWheel('greatWheel', 'great', 96, 0.8),
      clockWheel('centrePinion', 'centre', 8, 0.8),
      clockWheel('centreWheel', 'centre', 64, 0.8, 4),
      clockWheel('thirdPinion', 'third', 8, 0.8, 4),
      clockWheel('thirdWheel', 'third', 60, 0.8, 8),
      clockWheel('escapePinion', 'escape', 8, 0.8, 8),
    ],
    marks: [{ id: 'foot', at: [40, 0] }],
    rules: [
      held('f', 'foot', 40, 0),
      held('g', 'great', 40, 20),
      { kind: 'depth', id: 'd1', wheels: ['greatWheel', 'centrePinion'], plusMinus: 0.04 },
      { kind: 'inLine', id: 'middle', point: 'centre', through: ['foot', 'great'] },
      { kind: 'depth', id: 'd2', wheels: ['centreWheel', 'thirdPinion'], plusMinus: 0.04 },
      { kind: 'depth', id: 'd3', wheels: ['thirdWheel', 'escapePinion'], plusMinus: 0.04 },
      { kind: 'inLine', id: 'above', point: 'escape', through: ['foot', 'great'] },
      { kind: 'radius', id: 'up', point: 'escape', centre: 'centre', length: 45 },
    ],
    ...(isDrilled
      ? {
          made: [
            { point: 'centre', state: 'drilled' as const, at: [40.02, 61.63] as [number, number], plusMinus: 0.02 },
          ],
        }
      : {}),
  });
}
