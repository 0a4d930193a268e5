import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { ArborId, RuleId } from '../../solver/movement/ids.ts';
import type { Movement } from '../../solver/movement/schema.ts';
import { palletPlace } from '../../solver/train/drive/escapement.ts';
import { lostMotionOf } from '../../solver/train/drive/lostMotion.ts';
import { beatsOfEscape, beatsOfLength, pendulumFor } from '../../solver/train/drive/pendulum.ts';
import { readingsAfterSeconds, readingsAfterTurns } from '../../solver/train/drive/readings.ts';
import { recurrencesOf, suspectsAt } from '../../solver/train/drive/recurrence.ts';
import { springDrive } from '../../solver/train/drive/springDrive.ts';
import { torquesOf } from '../../solver/train/drive/torque.ts';
import { weightDrive } from '../../solver/train/drive/weightDrive.ts';
import { fractionText, toNumber } from '../../solver/train/turning/rational.ts';
import { turnMovement } from '../../solver/train/turning/turnMovement.ts';
import { SPRING_CAUTIONS, WEIGHT_CAUTIONS } from '../../solver/words/train/index.ts';
import { sketchMovement } from './turningMovement.ts';

const goingTrain = sketchMovement({
  wheels: {
    great: ['drum', 96],
    centreP: ['centre', 8],
    centreW: ['centre', 64],
    thirdP: ['third', 8],
    thirdW: ['third', 60],
    scapeP: ['scape', 8],
  },
  depths: ['great centreP', 'centreW thirdP', 'thirdW scapeP'],
  drive: { arbor: 'centre', period: { value: 1, unit: 'h' } },
  indications: [
    { id: 'minute', arbor: 'centre', period: { value: 1, unit: 'h' } },
    { id: 'seconds', arbor: 'scape', period: { value: 1, unit: 'min' } },
  ],
});
const turning = turnMovement(goingTrain);

describe('weight and drum', () => {
  const base = { mass: 4, drum: 40, cord: 1.5, fall: 1200, secondsPerTurn: 3600 };
  const run = (change: Partial<Parameters<typeof weightDrive>[0]>) => {
    const drive = weightDrive({ ...base, ...change });
    if (drive.kind === 'refused') throw new Error(drive.problems[0]?.field);
    return drive;
  };

  it('gives torque, turns and run time of one layer by the plain formulas', () => {
    const drive = run({});
    expect(drive.turns).toBeCloseTo(1200 / (Math.PI * 41.5), 12);
    expect(drive.layers[0]?.torque).toBeCloseTo(4 * 9.80665 * 20.75, 9);
    expect(drive.runSeconds).toBeCloseTo(drive.turns * 3600, 6);
    expect(WEIGHT_CAUTIONS.join(' ')).toContain('Local rules');
  });

  it('a pulley halves the torque and doubles the run (statics)', () => {
    const [one, two] = [run({}), run({ parts: 2 })];
    expect(two.runSeconds).toBeCloseTo(2 * one.runSeconds, 6);
    expect(two.layers[0]?.torque).toBeCloseTo((one.layers[0]?.torque ?? 0) / 2, 9);
    expect(two.energy).toBe(one.energy);
  });

  it('8 lb on a barrel of 30 mm at 44 minutes a turn is 1.27 mW (mass times fall over time)', () => {
    expect(run({ mass: 8 * 0.45359237, drum: 30, cord: 0, secondsPerTurn: 44 * 60 }).power).toBeCloseTo(1.27, 2);
  });

  it('keeps the energy of the fall in any number of layers (property)', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 2, max: 40 }),
        fc.integer({ min: 1, max: 4 }),
        fc.integer({ min: 200, max: 5000 }),
        (perLayer, parts, fall) => {
          const drive = run({ turnsPerLayer: perLayer, parts, fall });
          const work = drive.layers.reduce((sum, layer) => sum + layer.torque * layer.turns * 2 * Math.PI, 0);
          expect(work / 1000).toBeCloseTo(drive.energy, 9);
          const length = drive.layers.reduce((sum, layer) => sum + layer.turns * 2 * Math.PI * layer.radius, 0);
          expect(length).toBeCloseTo(fall * parts, 6);
          for (const layer of drive.layers) expect(layer.turns).toBeLessThanOrEqual(perLayer + 1e-9);
        },
      ),
    );
  });

  it('refuses nonsense by field', () => {
    const bad = weightDrive({ ...base, mass: 0, parts: 1.5, secondsPerTurn: -3, fall: Number.NaN });
    expect(bad.kind === 'refused' && bad.problems.map((problem) => problem.field)).toEqual([
      'mass',
      'fall',
      'parts',
      'secondsPerTurn',
    ]);
  });
});

describe('mainspring', () => {
  const base = {
    barrelRadius: 20,
    arborRadius: 6.5,
    thickness: 0.4,
    height: 22,
    length: 1400,
    secondsPerTurn: 6 * 3600,
  };

  it('has the turns that laying coil on coil gives', () => {
    const drive = springDrive(base);
    if (drive.kind === 'refused') throw new Error(drive.problems[0]?.field);
    // Independent: lay short pieces of strip coil on coil, on the arbor and against the wall, and count the angle.
    const piece = 0.01;
    let [wound, unwound] = [0, 0];
    for (let laid = 0; laid < base.length; laid += piece) {
      wound += piece / (2 * Math.PI * (base.arborRadius + (Math.floor(wound) + 0.5) * base.thickness));
      unwound += piece / (2 * Math.PI * (base.barrelRadius - (Math.floor(unwound) + 0.5) * base.thickness));
    }
    expect(Math.abs(drive.turns - (wound - unwound))).toBeLessThan(0.02);
    expect(SPRING_CAUTIONS.join(' ')).toContain('let it down');
  });

  it('turns most when it fills half the room (handbook rule)', () => {
    const turns = (length: number): number => {
      const drive = springDrive({ ...base, length });
      return drive.kind === 'spring' ? drive.turns : Number.NaN;
    };
    const drive = springDrive(base);
    const best = drive.kind === 'spring' ? drive.bestLength : 0;
    for (const other of [0.5, 0.8, 0.95, 1.05, 1.2, 1.5]) expect(turns(best * other)).toBeLessThan(turns(best));
  });

  it('adds the bending torque of a thin strip: E h t³ / 12 L for each radian', () => {
    const drive = springDrive({ ...base, modulus: 200_000 });
    expect(drive.kind === 'spring' && drive.torquePerTurn).toBeCloseTo(
      ((200_000 * 22 * 0.064) / (12 * 1400)) * 2 * Math.PI,
      6,
    );
  });

  it('refuses an arbor larger than the barrel and a spring that fills it', () => {
    expect(springDrive({ ...base, arborRadius: 21 }).kind).toBe('refused');
    const full = springDrive({ ...base, length: 5000 });
    expect(full.kind === 'refused' && full.problems[0]).toMatchObject({
      field: 'length',
      expected: { kind: 'fillsBarrel' },
    });
  });
});

describe('torque and speed at each arbor', () => {
  it('follows the ratios without loss, and the stated losses with it', () => {
    const report = (lossPerDepth: number, lossPerPivot: number) => {
      const found = torquesOf(turning, { torque: 800, power: 'drum' as ArborId, lossPerDepth, lossPerPivot });
      if (found.kind === 'refused') throw new Error(found.problems[0]?.field);
      return new Map(found.arbors.map((arbor) => [String(arbor.arbor), arbor]));
    };
    const ideal = report(0, 0);
    expect(ideal.get('drum')?.torque).toBeCloseTo(800, 9);
    expect(ideal.get('centre')?.torque).toBeCloseTo(800 / 12, 9);
    expect(ideal.get('scape')?.torque).toBeCloseTo(800 / 12 / 60, 9);
    expect(ideal.get('scape')?.turnsPerMinute).toBeCloseTo(1, 12);
    const real = report(0.05, 0.02);
    expect(real.get('scape')?.torque).toBeCloseTo((800 / 720) * 0.95 ** 3 * 0.98 ** 4, 9);
    expect(real.get('scape')?.depths).toBe(3);
  });

  it('refuses a power arbor that does not turn, and losses of everything', () => {
    const bad = torquesOf(turning, { torque: 1, power: 'Z' as ArborId, lossPerDepth: 1, lossPerPivot: 0 });
    expect(bad.kind === 'refused' && bad.problems.map((problem) => problem.field)).toEqual(['lossPerDepth', 'power']);
  });
});

describe('pendulum', () => {
  const pendulum = (options: Parameters<typeof pendulumFor>[0]) => {
    const found = pendulumFor(options);
    if (found.kind === 'refused') throw new Error(found.problems[0]?.field);
    return found;
  };

  it('seconds pendulum: 993.6 mm at standard gravity; 39.14 in at London (Kater 1818, from memory)', () => {
    expect(pendulum({ beatsPerHour: 3600, amplitudeDeg: 0 }).length).toBeCloseTo(993.62, 2);
    expect(pendulum({ beatsPerHour: 3600, amplitudeDeg: 0, gravity: 9.8119 }).length / 25.4).toBeCloseTo(39.14, 2);
  });

  it('circular error agrees with the complete elliptic integral, and with 1.645 s a day for one degree (handbook, from memory)', () => {
    const agm = (a: number, b: number): number => (Math.abs(a - b) < 1e-15 ? a : agm((a + b) / 2, Math.sqrt(a * b)));
    for (const amplitudeDeg of [0.5, 1, 2, 3, 5]) {
      const exact = 86_400 * (1 / agm(1, Math.cos((amplitudeDeg * Math.PI) / 360)) - 1);
      expect(pendulum({ beatsPerHour: 3600, amplitudeDeg }).circularErrorPerDay).toBeCloseTo(exact, 3);
    }
    expect(pendulum({ beatsPerHour: 3600, amplitudeDeg: 1 }).circularErrorPerDay).toBeCloseTo(1.645, 3);
  });

  it('a plain steel rod loses about half a second a day for each degree of warmth (common practice)', () => {
    expect(pendulum({ beatsPerHour: 3600 }).lossPerDegreePerDay).toBeCloseTo(0.5, 1);
  });

  it('goes back from length to beats (property)', () => {
    fc.assert(
      fc.property(fc.double({ min: 100, max: 36_000, noNaN: true }), (beats) => {
        expect(beatsOfLength(pendulum({ beatsPerHour: beats, amplitudeDeg: 0 }).length) / beats).toBeCloseTo(1, 12);
      }),
    );
  });

  it('counts beats of classic trains: 3600 and 18000 an hour (reference F5)', () => {
    expect(fractionText(beatsOfEscape(turning, 'scape' as ArborId, 30) ?? { n: 0n, d: 1n })).toBe('3600');
    const watch = sketchMovement({
      wheels: { c: ['C', 80], tp: ['T', 10], t: ['T', 75], fp: ['F', 10], f: ['F', 80], ep: ['E', 8] },
      depths: ['c tp', 't fp', 'f ep'],
      drive: { arbor: 'C', period: { value: 60, unit: 'min' } },
    });
    expect(fractionText(beatsOfEscape(turnMovement(watch), 'E' as ArborId, 15) ?? { n: 0n, d: 1n })).toBe('18000');
  });

  it('refuses no beats at all', () => {
    expect(pendulumFor({ beatsPerHour: 0 }).kind).toBe('refused');
    expect(pendulumFor({ beatsPerHour: 3600, gravity: -1 }).kind).toBe('refused');
  });
});

describe('pallets', () => {
  it('15 teeth over 5½ at R/cos 66°, 30 over 7½ at √2 R (common practice)', () => {
    const distance = (radius: number, teeth: number, span: number): number => {
      const found = palletPlace(radius, teeth, span);
      return found.kind === 'pallets' ? found.distance : Number.NaN;
    };
    expect(distance(10, 15, 5.5)).toBeCloseTo(10 / Math.cos((66 * Math.PI) / 180), 12);
    expect(distance(20, 30, 7.5)).toBeCloseTo(20 * Math.SQRT2, 12);
    expect(palletPlace(20, 30, 15).kind).toBe('refused');
  });
});

describe('lost motion at the hands', () => {
  it('play j at radius r is j/r there, carried on by the ratio', () => {
    const plays: Readonly<Record<string, number>> = { 'centreW-thirdP': 0.1, 'thirdW-scapeP': 0.05 };
    const [minute, seconds] = lostMotionOf(goingTrain, turning, (depth: RuleId) => plays[depth] ?? 0);
    expect(minute?.angleDeg).toBe(0);
    // Third pinion radius 4: 0.1/4 there, times 7.5 at the escape wheel; escape pinion radius 4: 0.05/4.
    expect(seconds?.angleDeg).toBeCloseTo((((0.1 / 4) * 7.5 + 0.05 / 4) * 180) / Math.PI, 9);
    expect(seconds?.seconds).toBeCloseTo(((seconds?.angleDeg ?? 0) / 360) * 60, 9);
    expect(seconds?.shares).toHaveLength(2);
    // Side shake of the third arbor counts at both of its depths.
    const [, shaken] = lostMotionOf(
      goingTrain,
      turning,
      () => 0,
      (arbor) => (arbor === 'third' ? 0.02 : 0),
    );
    expect(shaken?.angleDeg).toBeCloseTo((((0.02 / 4) * 7.5 + 0.02 / 4) * 180) / Math.PI, 9);
  });
});

describe('lost motion of what is carried round', () => {
  // A sun of 30 (radius 15) drives planets of 20 (10) on an arm of 25 in a ring of 70 (35) that never turns.
  const epicyclic = sketchMovement({
    wheels: { sun: ['A', 30], planet: ['P', 20], ring: ['R', 70, 'internal'] },
    depths: ['sun planet', 'planet ring'],
    couplings: [{ kind: 'carrier', id: 'c', arm: 'M', carries: ['P'] }],
    arbors: { M: { ridesOn: 'A' }, R: { ridesOn: 'A', turns: 'never' } },
    drive: { arbor: 'A', period: { value: 1, unit: 'h' } },
    indications: [
      { id: 'arm', arbor: 'M', ratio: '3/10' },
      { id: 'planet', arbor: 'P', ratio: '-3/4' },
    ],
  });
  const lost = (movement: Movement, where: string) =>
    lostMotionOf(movement, turnMovement(movement), (depth) => (depth === where ? 0.1 : 0)).map(
      ({ angleDeg }) => (angleDeg * Math.PI) / 180,
    );

  it('with the sun held, play at it lets arm and planet roll along the ring', () => {
    // Statics of the plane: the planet rolls on the ring, so 25 δ = −10 ψ; at the sun both add up: 25 δ − 10 ψ = 50 δ = j.
    const [arm, planet] = lost(epicyclic, 'sun-planet');
    expect(arm).toBeCloseTo(0.1 / 50, 12);
    expect(planet).toBeCloseTo((2.5 * 0.1) / 50, 12);
  });

  it('play at the ring lets them roll along the sun', () => {
    // 25 δ = 10 ψ at the sun; at the ring 25 δ + 10 ψ = 50 δ = j.
    const [arm, planet] = lost(epicyclic, 'planet-ring');
    expect(arm).toBeCloseTo(0.1 / 50, 12);
    expect(planet).toBeCloseTo((2.5 * 0.1) / 50, 12);
  });

  it('with the arm driven and the sun standing still, the planet has j/r of its own', () => {
    const walking = sketchMovement({
      wheels: { sun: ['A', 30], planet: ['P', 20] },
      depths: ['sun planet'],
      couplings: [{ kind: 'carrier', id: 'c', arm: 'M', carries: ['P'] }],
      arbors: { M: { ridesOn: 'A' }, A: { turns: 'never' } },
      drive: { arbor: 'M', period: { value: 1, unit: 'h' } },
      indications: [{ id: 'planet', arbor: 'P', ratio: '5/2' }],
    });
    expect(lost(walking, 'sun-planet')).toEqual([expect.closeTo(0.1 / 10, 12)]);
  });

  it('a train without carriers loses the same beside an arm that nothing turns', () => {
    const bare = sketchMovement({
      wheels: { a: ['A', 60], b: ['B', 20], c: ['B', 50], d: ['C', 10] },
      depths: ['a b', 'c d'],
      drive: { arbor: 'A', period: { value: 1, unit: 'h' } },
      indications: [{ id: 'hand', arbor: 'C', ratio: '15' }],
    });
    const beside = sketchMovement({
      wheels: { a: ['A', 60], b: ['B', 20], c: ['B', 50], d: ['C', 10], e: ['D', 30], f: ['E', 30] },
      depths: ['a b', 'c d', 'e f'],
      couplings: [{ kind: 'carrier', id: 'k', arm: 'M', carries: ['E'] }],
      arbors: { M: { ridesOn: 'D' } },
      drive: { arbor: 'A', period: { value: 1, unit: 'h' } },
      indications: [{ id: 'hand', arbor: 'C', ratio: '15' }],
    });
    for (const depth of ['a-b', 'c-d']) {
      expect(lost(beside, depth)[0]).toBeCloseTo(lost(bare, depth)[0] ?? Number.NaN, 12);
      // 0.1 at b of radius 10, times 5; 0.1 at d of radius 5.
      expect(lost(bare, depth)[0]).toBeCloseTo(depth === 'a-b' ? (0.1 / 10) * 5 : 0.1 / 5, 12);
    }
  });
});

describe('what comes round every T', () => {
  it('the same two teeth meet again when a walk over the teeth says so (property)', () => {
    fc.assert(
      fc.property(fc.integer({ min: 4, max: 60 }), fc.integer({ min: 4, max: 60 }), (a, b) => {
        const pair = turnMovement(
          sketchMovement({
            wheels: { a: ['A', a], b: ['B', b] },
            depths: ['a b'],
            drive: { arbor: 'A', period: { value: a, unit: 's' } },
          }),
        );
        const meet = recurrencesOf(pair).find((entry) => entry.kind === 'meet');
        // One tooth passes each second: walk until tooth 0 of both is back.
        let passed = 1;
        while (passed % a !== 0 || passed % b !== 0) passed++;
        expect(meet && fractionText(meet.seconds)).toBe(String(passed));
      }),
    );
  });

  it('names what may be behind a fault by its interval', () => {
    // Every 8 minutes: the third arbor turns once in 7.5 min; 60 s: the escape arbor.
    expect(suspectsAt(turning, 450)[0]?.parts).toEqual(['third']);
    expect(suspectsAt(turning, 60.1)[0]?.parts).toEqual(['scape']);
    expect(suspectsAt(turning, -5)).toEqual([]);
    const all = recurrencesOf(turning);
    expect(all.map((entry) => toNumber(entry.seconds))).toEqual(
      [...all].map((entry) => toNumber(entry.seconds)).sort((x, y) => x - y),
    );
  });
});

describe('readings of the dials', () => {
  it('after turns and after seconds, exactly', () => {
    const [minute, seconds] = readingsAfterTurns(turning, '5/2') ?? [];
    expect([minute?.wholeTurns, minute?.angleDeg]).toEqual([2n, 180]);
    expect([seconds?.wholeTurns, seconds?.angleDeg]).toEqual([150n, 0]);
    const [, later] = readingsAfterSeconds(turning, 86_415) ?? [];
    expect([later?.wholeTurns, later?.angleDeg]).toEqual([1440n, 90]);
    expect(readingsAfterTurns(turning, 'noon')).toBeUndefined();
  });
});
