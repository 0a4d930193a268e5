/** Every kind of outcome of train and drive, printed in millimetres and in inches with odd names and any figures. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type {
  DialReading,
  Expected,
  InputProblem,
  LostMotion,
  PalletPlace,
  Pendulum,
  Recurrence,
  SpringDrive,
  TorqueReport,
  WeightDrive,
} from '../../solver/train/drive/index.ts';
import type { ToothMark } from '../../solver/train/index.ts';
import {
  type IndicationTurning,
  type TurningFault,
  type TurningProblem,
  turnMovement,
} from '../../solver/train/index.ts';
import { rational } from '../../solver/train/turning/rational.ts';
import type { Speaker } from '../../solver/words/index.ts';
import * as words from '../../solver/words/train/index.ts';
import {
  anyOf,
  arbor,
  count,
  eachKind,
  indication,
  type Kinds,
  of,
  rule,
  several,
  share,
  size,
  spoken,
  two,
  wheel,
} from './kinds.ts';
import { bothUnits, expectSpoken } from './spoken.ts';
import { error, exact, FAULTS, NOTHING, ring, shared } from './trainKinds.ts';

const speakers = bothUnits({
  indications: [
    { id: 'zz32', arbor: 'zz2', ratio: '1/12' },
    { id: 'zz33', name: 'Moon’s age', arbor: 'zz1', ratio: '1/5' },
  ],
});

describe('what keeps a train from turning', () => {
  eachKind<TurningFault>(
    FAULTS,
    (why, speaker) => words.turningProblemSays({ kind: 'open', severity: 'warns', parts: [], why }, speaker),
    speakers,
  );

  it('locked rings and shared axes', () => {
    spoken(ring, words.lockedRingSays, speakers);
    spoken(shared, words.sharedAxesSay, speakers);
  });
});

describe('what hands show', () => {
  const sense = fc.constantFrom('clockwise', 'anticlockwise');
  const shows: fc.Arbitrary<IndicationTurning> = fc.record({
    id: indication,
    arbor,
    achievedTurns: exact,
    achievedPeriod: exact,
    wantedPeriod: exact,
    error,
    sense,
    wantedSense: sense,
    senseIsWrong: fc.boolean(),
    withinTolerance: fc.boolean(),
  }) as fc.Arbitrary<IndicationTurning>; // the fields that are spoken of
  const nothing = fc.record({
    id: indication,
    arbor,
    senseIsWrong: fc.constant(false),
    nothing: anyOf(NOTHING),
  }) as fc.Arbitrary<IndicationTurning>;

  it('in a sentence, and in a line of its slip', () => {
    for (const told of [shows, nothing]) {
      spoken(told, words.indicationSays, speakers);
      spoken(told, words.shownErrorSays, speakers);
    }
  });

  it('a hand without a name is called after its arbor', () => {
    const [speaker] = speakers;
    expect([speaker?.indication('zz32'), speaker?.indication('zz33')]).toEqual(['hand on Ärger & Co', 'Moon’s age']);
  });
});

describe('a train that runs', () => {
  it('what comes round, dials, lost motion, marks', () => {
    const recurrence: fc.Arbitrary<Recurrence> = fc.record({
      kind: fc.constantFrom<Recurrence['kind']>('turn', 'tooth', 'meet'),
      parts: fc.oneof(several(arbor), several(wheel)),
      seconds: exact,
    });
    spoken(recurrence, words.recurrenceSays, speakers);
    const dial: fc.Arbitrary<DialReading> = fc.record({
      id: indication,
      wholeTurns: fc.bigInt({ min: -1000n, max: 1000n }),
      angleDeg: size,
      rest: fc.integer({ min: 0, max: 99 }).map((n) => rational(n, 100)),
      sense: fc.constantFrom<DialReading['sense']>('clockwise', 'anticlockwise', 'still'),
    });
    spoken(dial, words.dialSays, speakers);
    const lost: fc.Arbitrary<LostMotion> = fc.record({
      id: indication,
      arbor,
      angleDeg: size,
      seconds: size,
      shares: fc.constant([]),
    });
    spoken(lost, words.lostMotionSays, speakers);
    const mark: fc.Arbitrary<ToothMark> = fc.record({
      rule,
      wheels: two(wheel),
      tooth: count,
      between: two(count),
      missTeeth: fc.double({ min: -0.5, max: 0.5, noNaN: true }),
      meshes: fc.boolean(),
    });
    spoken(mark, words.toothMarkSays, speakers);
  });
});

describe('what drives it', () => {
  const above = fc.double({ min: 0.001, max: 5000, noNaN: true });
  it('weight, spring, torques, pendulum, pallets', () => {
    const layers = several(fc.record({ radius: size, turns: size, torque: above }));
    const weight = { cordLength: above, turns: above, runSeconds: above, energy: above, power: above, layers };
    spoken(of<WeightDrive>('weight', weight), words.weightSays, speakers);
    const spring = { turns: above, runSeconds: above, fill: share, bestLength: above, torquePerTurn: above };
    spoken(of<SpringDrive>('spring', spring), words.springSays, speakers);
    const torques = of<Extract<TorqueReport, { kind: 'torques' }>>('torques', {
      lossPerDepth: share,
      lossPerPivot: share,
    });
    spoken(torques, words.torquesSay, speakers);
    const pendulum = { length: above, beatsPerHour: above, amplitudeDeg: above, millimetresPerSecondADay: above };
    spoken(of<Pendulum>('pendulum', pendulum), words.pendulumSays, speakers);
    spoken(of<PalletPlace>('pallets', { teeth: count, span: above, distance: above }), words.palletsSay, speakers);
  });

  it('a torque goes with the unit of lengths', () => {
    // One ounce of force at an inch is 7.0615518 N·mm. Source: the pound-force, 4.4482216152605 N by definition.
    expect(speakers.map((speaker) => words.torqueSays(70.615518, speaker))).toEqual(['70.6 N·mm', '10.00 ozf·in']);
  });

  const EXPECTED: Kinds<Expected> = {
    range: of('range', { above: fc.option(size, { nil: undefined }), upTo: fc.option(size, { nil: undefined }) }),
    insideBarrel: of('insideBarrel', { below: size }),
    fillsBarrel: of('fillsBarrel', { below: size }),
    underHalfTheTeeth: of('underHalfTheTeeth', { teeth: count }),
    arborThatTurns: of('arborThatTurns'),
  };
  const refusalSays = (problem: InputProblem, speaker: Speaker): string =>
    `Drum: ${words.inputProblemSays(problem, speaker.length, speaker)}`;
  it.each(Object.entries(EXPECTED))('a number that cannot be: %s', (_, expected) => {
    const found = fc.option(fc.oneof(size, fc.constant(Number.NaN)), { nil: undefined });
    const problem = fc.record({ field: fc.constant('drum'), found, expected: expected as fc.Arbitrary<Expected> });
    spoken(problem as fc.Arbitrary<InputProblem>, refusalSays, speakers);
  });
});

it('all that stands in the way of the movement itself is spoken', () => {
  for (const speaker of speakers) {
    const { problems } = turnMovement(speaker.movement);
    expect(problems.length).toBeGreaterThan(0);
    for (const problem of problems as readonly TurningProblem[]) {
      expectSpoken(words.turningProblemSays(problem, speaker), speaker);
    }
  }
});
