import {
  Body,
  JupiterMoons,
  MakeTime,
  NextMoonNode,
  PlanetOrbitalPeriod,
  SearchMoonNode,
  SearchMoonPhase,
} from 'astronomy-engine';
import { describe, expect, it } from 'vitest';
import {
  type AstronomyConstant,
  CONSTANTS,
  constantsWith,
  digitsOfConstant,
  secondsOfConstant,
} from '../../solver/train/counts/constants.ts';
import { exactly, toNumber } from '../../solver/train/turning/rational.ts';

function days(id: string): number {
  const constant = CONSTANTS.find((candidate) => candidate.id === id);
  if (!constant) throw new Error(`no constant ${id}`);
  return toNumber(secondsOfConstant(constant)) / 86_400;
}

describe('constants against published figures', () => {
  // Astronomical Almanac for 2000, pages B6, C1, D2.
  it.each([
    ['synodicMonth', 29.530589, 5e-7],
    ['siderealMonth', 27.321662, 0],
    ['tropicalMonth', 27.321582, 0],
    ['draconicMonth', 27.212221, 0],
    ['anomalisticMonth', 27.55455, 0],
    ['tropicalYear', 365.24219, 0],
    ['siderealYear', 365.256363, 0],
    ['anomalisticYear', 365.259635, 0],
    ['eclipseYear', 346.620075, 0],
    ['siderealDay', 0.99726956633, 0],
  ])('%s is the printed %f days', (id, printed, half) => {
    expect(Math.abs(days(id) - printed)).toBeLessThanOrEqual(half + 1e-12);
  });

  // NOAA CO-OPS harmonic constituents: speeds in degrees an hour, half a unit of the last printed digit.
  it.each([
    ['tideM2', 28.984104, 5e-7],
    ['tideN2', 28.43973, 5e-6],
    ['tideK1', 15.041069, 5e-7],
    ['tideO1', 13.943035, 5e-7],
    ['tideS2', 30, 0],
  ])('%s has the printed speed', (id, speed, half) => {
    expect(Math.abs(360 / (days(id) * 24) - speed)).toBeLessThanOrEqual(half + 1e-8);
  });

  it('agree among themselves: lunar day, sidereal month, node year', () => {
    // Lunar day from the synodic month, derived 1.03505010027 days; sidereal month from synodic month and sidereal year.
    expect(days('lunarDay')).toBeCloseTo(1 / (1 - 1 / days('synodicMonth')), 8);
    expect(1 / (1 / days('synodicMonth') + 1 / days('siderealYear'))).toBeCloseTo(days('siderealMonth'), 6);
    expect(1 / (1 / days('tropicalYear') + 1 / days('moonNodes'))).toBeCloseTo(days('eclipseYear'), 3);
    expect(1 / (1 / days('siderealMonth') - 1 / days('moonApsides'))).toBeCloseTo(days('anomalisticMonth'), 3);
  });
});

describe('periods against the astronomy library', () => {
  it('synodic month: the mean of 2000 lunations about the year 2000', () => {
    const lunations = 2000;
    const start = SearchMoonPhase(0, MakeTime(new Date(Date.UTC(1919, 0, 1))), 40);
    const guess = new Date((start?.date.getTime() ?? 0) + (lunations * 29.530588853 - 5) * 86_400_000);
    const end = SearchMoonPhase(0, MakeTime(guess), 40);
    const mean = ((end?.ut ?? 0) - (start?.ut ?? 0)) / lunations;
    // The true Moon strays up to 14 hours from the mean at either end.
    expect(Math.abs(mean - days('synodicMonth'))).toBeLessThan(1.2 / lunations);
  });

  it('draconic month: the mean of 1000 passages of the node', () => {
    // The true Moon and its node stray from the mean by up to a day at either end.
    const first = SearchMoonNode(MakeTime(new Date(Date.UTC(1960, 0, 1))));
    let node = first;
    for (let passage = 0; passage < 2000; passage++) node = NextMoonNode(node);
    expect(Math.abs((node.time.ut - first.time.ut) / 1000 - days('draconicMonth'))).toBeLessThan(1.2 / 1000);
  });

  it.each([
    ['mercury', Body.Mercury],
    ['venus', Body.Venus],
    ['mars', Body.Mars],
    ['jupiter', Body.Jupiter],
    ['saturn', Body.Saturn],
    ['uranus', Body.Uranus],
    ['neptune', Body.Neptune],
  ])('%s goes round in the library’s period, to its digits', (id, body) => {
    expect(Math.abs(days(id) / PlanetOrbitalPeriod(body) - 1)).toBeLessThan(2e-5);
  });

  it.each([
    ['io', 'io'],
    ['europa', 'europa'],
    ['ganymede', 'ganymede'],
    ['callisto', 'callisto'],
  ] as const)('%s: the mean motion over 20 years', (id, moon) => {
    const start = MakeTime(new Date(Date.UTC(2000, 0, 1)));
    const step = days(id) / 8;
    const steps = Math.round((20 * 365.25) / step);
    let turned = 0;
    let last: number | undefined;
    for (let index = 0; index <= steps; index++) {
      const { x, y } = JupiterMoons(start.AddDays(index * step))[moon];
      const angle = Math.atan2(y, x);
      if (last !== undefined) turned += Math.atan2(Math.sin(angle - last), Math.cos(angle - last));
      last = angle;
    }
    const period = (steps * step * 2 * Math.PI) / turned;
    // The tilt of the orbits against the plane of the angles strays by up to 3 degrees at either end.
    const orbits = (20 * 365.25) / days(id);
    expect(Math.abs(period / days(id) - 1)).toBeLessThan(6 / 360 / orbits);
  });
});

describe('the list itself', () => {
  it('has unique ids, sources, and readable values', () => {
    expect(new Set(CONSTANTS.map((constant) => constant.id)).size).toBe(CONSTANTS.length);
    for (const constant of CONSTANTS) {
      expect(exactly(constant.value)?.n).toBeGreaterThan(0n);
      expect(constant.source.length).toBeGreaterThan(5);
      expect(digitsOfConstant(constant)).toBe(constant.value.replace(/^0\./, '').replace('.', '').length);
    }
  });

  it("takes the maker's own and puts them last, or says what is wrong with them", () => {
    const own = (change: Partial<AstronomyConstant>) =>
      constantsWith([{ id: 'comet', name: 'Halley', value: '27500', unit: 'd', source: 'own reckoning', ...change }]);
    const good = own({});
    expect(good.kind === 'constants' && good.constants.at(-1)?.group).toBe('own');
    const replaced = own({ id: 'mars' });
    expect(
      replaced.kind === 'constants' && replaced.constants.filter((constant) => constant.id === 'mars'),
    ).toHaveLength(1);
    for (const bad of [own({ value: '-3' }), own({ value: 'long' }), own({ source: ' ' }), own({ id: '' })]) {
      expect(bad.kind).toBe('refused');
    }
  });
});
