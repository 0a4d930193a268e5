/**
 * The periods that the demo movements ask for, against positions from an astronomy library of the registry
 * (astronomy-engine 2.1.19, which gives Montenbruck and Pfleger as its source for the Moon), and the periods that their trains reach.
 *
 * A mean period is the slope of a straight line through many events: the Moon's true motion swings about its mean, so
 * bounds are those of the fit, measured once and doubled: 0.07 ppm for new moons of 100 years, 0.4 ppm for transits of
 * 18.6 years (one turn of the nodes), 0.13 ppm for the four moons over a century.
 */
import * as astronomy from 'astronomy-engine';
import { describe, expect, test } from 'vitest';
import type { Movement } from '../../solver/movement/schema.ts';
import { turnMovement } from '../../solver/train/index.ts';
import { toNumber } from '../../solver/train/turning/rational.ts';
import { movementOfFile } from '../support/movements.ts';

function demo(name: string): Movement {
  return movementOfFile(`demo-data/${name}.json`);
}

/** The wanted period of an indication, days. */
function wantedDays(movement: Movement, id: string): number {
  const period = movement.indications.find((shown) => shown.id === id)?.period;
  if (period === undefined) throw new Error(`no period at ${id}`);
  return period.value / { d: 1, h: 24, min: 1440, s: 86_400 }[period.unit];
}

/** Slope of the least-squares line through y(0), y(1), y(2), … */
function slopeOf(values: readonly number[]): number {
  const middle = (values.length - 1) / 2;
  let above = 0;
  let below = 0;
  values.forEach((value, index) => {
    above += (index - middle) * value;
    below += (index - middle) ** 2;
  });
  return above / below;
}

const ppm = (found: number, wanted: number): number => (found / wanted - 1) * 1e6;
const midnight = (year: number): astronomy.AstroTime => astronomy.MakeTime(new Date(Date.UTC(year, 0, 1)));

describe('the tide dial', () => {
  const movement = demo('tide-dial');

  test('asks for twice the mean time between new moons', () => {
    const moons: number[] = [];
    let next = astronomy.SearchMoonPhase(0, midnight(1950), 40);
    for (let count = 0; count < 1237 && next; count++) {
      moons.push(next.tt);
      next = astronomy.SearchMoonPhase(0, next.AddDays(25), 15);
    }
    expect(moons).toHaveLength(1237);
    expect(Math.abs(ppm(2 * slopeOf(moons), wantedDays(movement, 'show-moon')))).toBeLessThan(0.15);
  });

  test('asks for the mean time between transits of the Moon', () => {
    const observer = new astronomy.Observer(50, 0, 0);
    const transits: number[] = [];
    let next = astronomy.SearchHourAngle(astronomy.Body.Moon, observer, 0, midnight(1990)).time;
    while (transits.length < 6564) {
      transits.push(next.ut);
      next = astronomy.SearchHourAngle(astronomy.Body.Moon, observer, 0, next.AddDays(0.5)).time;
    }
    expect(Math.abs(ppm(slopeOf(transits), wantedDays(movement, 'show-lunar')))).toBeLessThan(0.8);
  });
});

describe('the moons of Jupiter', () => {
  const movement = demo('moons-of-jupiter');
  type Moon = 'io' | 'europa' | 'ganymede' | 'callisto';

  test.each<Moon>(['io', 'europa', 'ganymede', 'callisto'])('%s is asked for at its mean sidereal period', (moon) => {
    const start = midnight(2000);
    const stateAt = (days: number): astronomy.StateVector => astronomy.JupiterMoons(start.AddDays(days))[moon];
    // Angles are counted in the plane of the orbit at the start, from the place at the start.
    const first = stateAt(0);
    const place = [first.x, first.y, first.z] as const;
    const pole = cross(place, [first.vx, first.vy, first.vz]);
    const across = cross(pole, place);
    const turnsAt = (days: number): number => {
      const { x, y, z } = stateAt(days);
      return Math.atan2(dot([x, y, z], across) / length(across), dot([x, y, z], place) / length(place)) / (2 * Math.PI);
    };
    // Samples over a century, a fixed step apart; whole turns are counted from the wanted period, which must be near enough.
    const wanted = wantedDays(movement, `show-${moon}`);
    const step = 36_525 / 3000;
    const drift = Array.from({ length: 3000 }, (_, index) => {
      const turns = (index * step) / wanted;
      return turnsAt(index * step) - turns - Math.round(turnsAt(index * step) - turns);
    });
    const found = step / (step / wanted + slopeOf(drift));
    expect(Math.max(...drift.map(Math.abs))).toBeLessThan(0.25);
    expect(Math.abs(ppm(found, wanted))).toBeLessThan(0.26);
  });

  test('turn the right way: against the clock seen from the north', () => {
    for (const state of Object.values(astronomy.JupiterMoons(midnight(2000)))) {
      if (!(state instanceof astronomy.StateVector)) continue;
      expect(cross([state.x, state.y, state.z], [state.vx, state.vy, state.vz])[2]).toBeGreaterThan(0);
    }
    const senses = movement.indications.filter(({ id }) => id !== 'show-day').map(({ sense }) => sense);
    expect(senses).toEqual(['anticlockwise', 'anticlockwise', 'anticlockwise', 'anticlockwise']);
  });
});

describe('the trains of the demos', () => {
  // The counts multiplied out by hand from the files, as a second way to the same ratio: turns of the drive for one of the hand, in days.
  test.each([
    ['tide-dial', 'show-lunar', 0.5 * (60 / 30) * (84 / 44) * (45 / 83)],
    ['tide-dial', 'show-moon', 0.5 * (60 / 30) * (56 / 22) * (71 / 18) * (100 / 17)],
    ['moons-of-jupiter', 'show-io', 0.5 * (86 / 43) * (67 / 46) * (87 / 68) * (75 / 79)],
    ['moons-of-jupiter', 'show-europa', 0.5 * (86 / 43) * (67 / 46) * (87 / 68) * (101 / 53)],
    ['moons-of-jupiter', 'show-ganymede', 0.5 * (86 / 43) * (67 / 46) * (87 / 68) * (67 / 36) * (94 / 62) * (83 / 61)],
    ['moons-of-jupiter', 'show-callisto', 0.5 * (86 / 43) * (67 / 46) * (87 / 68) * (67 / 36) * (94 / 62) * (73 / 23)],
    ['going-train', 'show-seconds', 0.5 / 720],
    ['going-train', 'show-minutes', 0.5 / 12],
    ['going-train', 'show-hours', 0.5],
  ])('%s: %s turns in its period, the right way, within its tolerance', (name, id, days) => {
    const movement = demo(name);
    const shown = turnMovement(movement).indications.find((indication) => indication.id === id);
    expect(shown?.achievedTurns && 0.5 / Math.abs(toNumber(shown.achievedTurns))).toBeCloseTo(days, 12);
    expect(shown?.withinTolerance).toBe(true);
    expect(shown?.senseIsWrong).toBe(false);
    expect(Math.abs(ppm(days, wantedDays(movement, id)))).toBeLessThan(5);
  });
});

type Vector = readonly [number, number, number];

function cross([ax, ay, az]: Vector, [bx, by, bz]: Vector): Vector {
  return [ay * bz - az * by, az * bx - ax * bz, ax * by - ay * bx];
}

function dot(a: Vector, b: Vector): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

function length(a: Vector): number {
  return Math.sqrt(dot(a, a));
}
