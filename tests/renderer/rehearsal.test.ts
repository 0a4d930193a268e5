/** Rehearsal without a window: dates, exact spans, carried places, teeth that stay in mesh. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dayNumber, readDate } from '../../renderer/rehearsal/calendar.ts';
import { readSpan, spanOfDates } from '../../renderer/rehearsal/readSpan.ts';
import { carriedPlaces } from '../../renderer/state/derive/carriedPlaces.ts';
import { restPhases } from '../../renderer/state/derive/restPhases.ts';
import { turnedAngle, turnedPhases } from '../../renderer/state/derive/turnedPhases.ts';
import { plantMovement } from '../../solver/planting/index.ts';
import type { PlacedMovement } from '../../solver/planting/placed.ts';
import { turnMovement } from '../../solver/train/index.ts';
import { fractionText, rational } from '../../solver/train/turning/rational.ts';
import { movementOfFile } from '../support/movements.ts';

function scene() {
  const movement = movementOfFile('tests/bench/scenes/planetShelf.json');
  const placed = plantMovement(movement);
  return { placed, movement, turning: turnMovement(movement) };
}
function arborOf(id: string) {
  const arbor = scene().movement.arbors.find((each) => each.id === id);
  if (!arbor) throw new Error(`the scene has no arbor ${id}`);
  return arbor.id;
}

function placeOf({ places }: PlacedMovement) {
  const place = places.get(arborOf('planet'));
  if (!place) throw new Error('the planet has no place');
  return place;
}

describe('dates', () => {
  // Julian day numbers at noon: 2451545 on 2000-01-01, 2440588 on 1970-01-01, 2299161 on 1582-10-15. Source: J. Meeus,
  // Astronomical Algorithms, chapter 7 (from memory); the last is the first day of the Gregorian calendar.
  it.each([
    [2000, 1, 1, 2_451_545],
    [1970, 1, 1, 2_440_588],
    [1582, 10, 15, 2_299_161],
    [2000, 2, 29, 2_451_604],
  ])('%d-%d-%d is Julian day %d', (year, month, day, julian) => {
    expect(dayNumber(year, month, day)).toBe(julian - 2_440_588);
  });

  it('agrees with the calendar of the language from year 1 on', () => {
    fc.assert(
      fc.property(fc.integer({ min: -700_000, max: 2_000_000 }), (days) => {
        const date = new Date(days * 86_400_000);
        expect(dayNumber(date.getUTCFullYear(), date.getUTCMonth() + 1, date.getUTCDate())).toBe(days);
      }),
    );
  });

  it.each(['2026-02-29', '2026-13-01', '14.3.2026', '2026-03-14 25:00', ''])('says what is wrong with "%s"', (text) => {
    const read = readDate(text);
    expect(read.kind === 'none' && read.says).toContain(`"${text}"`);
  });
});

describe('spans', () => {
  const day = rational(86_400);

  it('are exact', () => {
    const read = (text: string) => {
      const span = readSpan(text, day);
      return span.kind === 'span' ? fractionText(span.turns) : span.says;
    };
    expect(read('12.5')).toBe('25/2');
    expect(read('1/3 turns')).toBe('1/3');
    expect(read('−6 h')).toBe('-1/4');
    expect(read('0,1 s')).toBe('1/864000');
    expect(read('three')).toContain('"three"');
    expect(read('1/0')).toContain('"1/0"');
  });

  it('tell the days between two dates', () => {
    const span = spanOfDates('2000-01-01', '2026-03-14 06:00', day);
    // 26 years of which 7 are leap (2000 … 2024), then January, February and 13 days: 26·365 + 7 + 31 + 28 + 13.
    expect(span.says).toBe('From 2000-01-01 to 2026-03-14 06:00: 9569 days and 6 h.');
    expect(span.kind === 'span' && fractionText(span.turns)).toBe(`${4 * 9569 + 1}/4`);
  });
});

describe('carriers', () => {
  it('bring the planet round its arm and leave the planting alone', () => {
    const { placed, turning } = scene();
    const moved = carriedPlaces(placed, turning, rational(1, 4));
    const planet = moved.places.get(arborOf('planet'));
    expect(planet?.x).toBeCloseTo(0, 9);
    expect(planet?.y).toBeCloseTo(40, 9);
    expect(placed.places.get(arborOf('planet'))).toMatchObject({ x: 40, y: 0 });
    expect(moved.places.get(arborOf('crank'))).toBe(placed.places.get(arborOf('crank')));
    expect(carriedPlaces(placed, turning, rational(0))).toBe(placed);
    // Everything else about the planting is told as before.
    const all = (whole: typeof placed, { id, state, placedBy, hangsOn, free, movedBy } = placeOf(whole)) => [
      [whole.freeMotions, whole.disagreements, whole.motions, whole.order, whole.rules],
      [id, state, placedBy, hangsOn, free, movedBy],
    ];
    expect(all(moved)).toEqual(all(placed));
    expect(all(moved).flat()).not.toContain(undefined);
  });

  it('bring round a planet that stands anywhere', () => {
    const { placed, turning } = scene();
    const quarter = carriedPlaces(placed, turning, rational(1, 4));
    // From a quarter turn on, an eighth more: half of a right angle past +y.
    const there = carriedPlaces(quarter, turning, rational(1, 8)).places.get(arborOf('planet'));
    expect(there?.x).toBeCloseTo(-40 * Math.SQRT1_2, 9);
    expect(there?.y).toBeCloseTo(40 * Math.SQRT1_2, 9);
  });

  it('turn a planet on a fixed sun by 1 + sun/planet', () => {
    // Planet outside a fixed sun: 1 + 20/60 turns in space for one of the arm. Common practice of epicyclic trains.
    const { turning } = scene();
    expect(turnedAngle(turning, arborOf('planet'), rational(1))).toBeCloseTo((2 * Math.PI) / 3, 12);
    // A thousand million turns later the angle is still exact.
    expect(turnedAngle(turning, arborOf('planet'), rational(1_000_000_000))).toBeCloseTo((2 * Math.PI) / 3, 12);
  });

  it('keep the teeth of sun and planet in each other’s spaces', () => {
    const { placed, turning, movement } = scene();
    const rest = restPhases(placed);
    fc.assert(
      fc.property(fc.integer({ min: -5000, max: 5000 }), (thousandths) => {
        const turned = rational(thousandths, 1000);
        const phases = turnedPhases(rest, movement, turning, turned);
        const planet = carriedPlaces(placed, turning, turned).places.get(arborOf('planet'));
        const line = Math.atan2(planet?.y ?? 0, planet?.x ?? 0);
        // Where the line of centres leaves the sun's tooth, the planet has as much of a space.
        const sun = ((line - (phases.get('sun-wheel') ?? 0)) * 20) / (2 * Math.PI);
        const other = ((line + Math.PI - (phases.get('planet-wheel') ?? 0)) * 60) / (2 * Math.PI);
        const off = sun + other - 0.5;
        expect(Math.abs(off - Math.round(off))).toBeLessThan(1e-9);
      }),
    );
  });
});
