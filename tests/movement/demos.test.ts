/** The demo movements are sound, planted, without findings and written in the program's own way; their spoilt variants are not. */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { checkMovement } from '../../solver/clearance/index.ts';
import { writeMovement } from '../../solver/movement/index.ts';
import type { Movement } from '../../solver/movement/schema.ts';
import { plantMovement } from '../../solver/planting/index.ts';
import { turnMovement } from '../../solver/train/index.ts';
import { movementOfFile } from '../support/movements.ts';

const textOf = (path: string): string => readFileSync(new URL(`../../${path}.json`, import.meta.url), 'utf8');

function movementOf(path: string): Movement {
  return movementOfFile(`${path}.json`);
}

describe.each(['tide-dial', 'moons-of-jupiter', 'going-train'])('the demo %s', (name) => {
  const movement = movementOf(`demo-data/${name}`);
  const placed = plantMovement(movement);

  test('is written as the program writes it', () => {
    expect(writeMovement(movement)).toBe(textOf(`demo-data/${name}`));
  });

  test('is planted: nothing loose, nothing contested, every rule to a millionth of a micrometre', () => {
    expect(placed.disagreements).toEqual([]);
    expect(placed.freeMotions).toBe(0);
    expect([...placed.places.values()].filter(({ state }) => state !== 'planted')).toEqual([]);
    expect(Math.max(...[...placed.rules.values()].map(({ missBy }) => missBy))).toBeLessThan(1e-9);
  });

  test('is sketched near its places, so that every crossing is the one that is meant', () => {
    for (const { id, at } of [...movement.arbors, ...movement.posts, ...movement.marks]) {
      const place = placed.places.get(id);
      expect(Math.hypot((place?.x ?? Number.NaN) - at[0], (place?.y ?? Number.NaN) - at[1])).toBeLessThan(3);
    }
  });

  test('has no finding, and no crossing flatter than 15 degrees', () => {
    expect(checkMovement(placed)).toEqual([]);
    for (const { crossingAngle } of placed.places.values()) {
      if (crossingAngle !== undefined) expect((crossingAngle * 180) / Math.PI).toBeGreaterThan(15);
    }
  });

  test('shows what it is for: every indication in tolerance, with its source', () => {
    for (const shown of turnMovement(movement).indications) expect(shown).toMatchObject({ senseIsWrong: false });
    for (const { period, source } of movement.indications) {
      expect(period).toBeDefined();
      expect(source).toBeDefined();
    }
  });

  test('names its rules in words, and gives every arbor room, bearings and heights', () => {
    for (const rule of movement.rules) expect(rule.name).toMatch(/^\S.{8,}$/);
    for (const arbor of movement.arbors) {
      expect(arbor.name).toBeDefined();
      expect(arbor.bearings.length).toBeGreaterThan(0);
    }
  });
});

describe('spoilt variants of the demos', () => {
  const findingsOf = (name: string) => checkMovement(plantMovement(movementOf(`tests/fixtures/${name}`)));

  test('a pillar left in the corner fouls a wheel by what the circles say', () => {
    const [finding] = findingsOf('pillarFoulsWheel');
    expect(finding).toMatchObject({ kind: 'fouls', severity: 'stops' });
    expect([...(finding?.parts ?? [])].sort()).toEqual(['p1', 'upper-wheel']);
    // Tip radius 0.8·(71 + 2)/2, pillar radius 4, places of the planted demo and the corner of a 3-4-5 triangle.
    const apart = Math.hypot(56 - 30.2956, 62 - 42.4486);
    expect(finding?.gap).toBeCloseTo(apart - 29.2 - 4, 3);
  });

  test('arcs that do not reach are told with the gap', () => {
    const placed = plantMovement(movementOf('tests/fixtures/arcsDoNotReach'));
    expect(placed.disagreements).toHaveLength(1);
    // The two depths are 30.64 and 14.53, the arbors 46 apart.
    expect(placed.disagreements[0]?.gap).toBeCloseTo(46 - 30.64 - 14.53, 9);
    expect(placed.places.get('third' as never)?.state).toBe('contested'); // an id of the fixture
  });

  test('a rule left out leaves one motion', () => {
    const placed = plantMovement(movementOf('tests/fixtures/looseStud'));
    expect(placed.freeMotions).toBe(1);
    expect(placed.places.get('minute' as never)?.state).toBe('loose'); // an id of the fixture
  });

  test('a wrong cutter is told as a difference of size', () => {
    expect(findingsOf('mixedModules').map(({ kind }) => kind)).toContain('size');
  });

  test('two wheels at one level foul each other', () => {
    const pairs = findingsOf('sharedLevel').map(({ kind, parts }) => [kind, ...[...parts].sort()].join(' '));
    expect(pairs).toContain('fouls day-wheel eight-wheel');
  });

  test('a hole drilled aside is told by each depth that was read, and by nothing else', () => {
    const placed = plantMovement(movementOf('tests/fixtures/drilledOff'));
    expect(placed.places.get('third' as never)).toMatchObject({ x: -16.32, y: 26.12 }); // an id of the fixture
    const released = [...placed.rules.values()].filter(({ duty }) => duty === 'released');
    expect(released).toHaveLength(2);
    for (const { missBy } of released) expect(missBy).toBeGreaterThan(0.02);
    expect(placed.freeMotions).toBe(0);
  });
});
