/** One verdict of a depth: equal pitches first, then the window of its teeth; the same for every place that tells it. */
import { describe, expect, test } from 'vitest';
import { madeAnswer } from '../../electron/cli/madeAnswer.ts';
import { plantAnswer } from '../../electron/cli/plantAnswer.ts';
import { checkMovement, depthVerdicts } from '../../solver/clearance/index.ts';
import type { RuleId } from '../../solver/movement/ids.ts';
import { applyEdit } from '../../solver/movement/index.ts';
import type { Movement } from '../../solver/movement/schema.ts';
import { plantMovement } from '../../solver/planting/index.ts';
import { arbor, buildMovement, clockWheel, held } from '../planting/buildMovement.ts';

const DEPTH = 'd' as RuleId; // the one depth of these movements

/** Two arbors with a depth that is held at a distance, or places by its sizes. */
function pair(sizes: readonly [number, number], distance?: number): Movement {
  return buildMovement({
    arbors: [arbor('A', 0, 0), arbor('B', 27, 2)],
    wheels: [clockWheel('wheel', 'A', 60, sizes[0]), clockWheel('leaves', 'B', 8, sizes[1])],
    rules: [
      held('a', 'A', 0, 0),
      { kind: 'bearing', id: 'b', point: 'B', centre: 'A', angle: 5 },
      {
        kind: 'depth',
        id: 'd',
        wheels: ['wheel', 'leaves'],
        ...(distance === undefined ? {} : { use: 'held' as const, held: distance }),
      },
    ],
  });
}

function verdictOf(movement: Movement) {
  const verdict = depthVerdicts(plantMovement(movement)).get(DEPTH);
  if (!verdict) throw new Error('no verdict');
  return verdict;
}

describe('teeth of different size', () => {
  test('are never fine, and no distance is offered', () => {
    const movement = pair([1, 0.9]);
    const verdict = verdictOf(movement);
    expect(verdict).toMatchObject({ severity: 'stops', fault: { kind: 'sizes' }, goodDistance: undefined });
    const answer = plantAnswer(plantMovement(movement));
    expect(answer.code).toBe(1);
    expect(answer.text).toContain('Depths that stop');
    expect(madeAnswer(plantMovement(movement), {}).code).toBe(1);
  });

  test('are told once', () => {
    const kinds = checkMovement(plantMovement(pair([1, 0.9])), { depths: true }).map(({ kind }) => kind);
    expect(kinds.filter((kind) => kind === 'size' || kind === 'depth')).toEqual(['size']);
  });
});

describe('the window', () => {
  test('lets run what is within it, by whatever it misses the calculated distance', () => {
    const runs = verdictOf(pair([0.8, 0.8]));
    expect([runs.fault, runs.severity, runs.goodDistance]).toEqual([undefined, undefined, undefined]);
    const [least = -1, mean = -1, greatest = -1] = runs.shake ?? [];
    expect(least).toBeLessThanOrEqual(mean);
    expect(mean).toBeLessThanOrEqual(greatest);
    const { window } = runs;
    if (window.kind !== 'window') throw new Error('no window');
    const shallow = (window.deepest + 3 * window.shallowest) / 4;
    expect(verdictOf(pair([0.8, 0.8], shallow)).severity).not.toBe('stops');
  });

  test.each([-0.6, -0.2, 0.9, 2])('%d mm off: the offered distance is the nearest one that runs', (off) => {
    const movement = pair([0.8, 0.8], 27.2 + off);
    const verdict = verdictOf(movement);
    if (!verdict.fault) return;
    const good = verdict.goodDistance;
    if (good === undefined) throw new Error('no distance is offered');
    const cured = applyEdit(movement, { kind: 'setValue', rule: 'd', value: good });
    if (cured.kind === 'refused') throw new Error(JSON.stringify(cured));
    expect(verdictOf(cured.movement).fault).toBeUndefined();
    // A little nearer to where it stands it would not run well.
    const nearer = good + Math.sign(verdict.distance - good) * 0.011;
    expect(verdictOf(pair([0.8, 0.8], nearer)).fault).toBeDefined();
  });

  test('gives the check, the planting and the record of readings the same verdict', () => {
    for (let off = -1; off <= 1.6; off += 0.2) {
      const placed = plantMovement(pair([0.8, 0.8], 27.2 + off));
      const verdict = depthVerdicts(placed).get(DEPTH);
      const finding = checkMovement(placed, { depths: true }).find(({ kind }) => kind === 'depth');
      expect(finding?.severity).toBe(verdict?.severity);
      if (finding?.cause.kind === 'underShake') expect(finding.cause.fault).toEqual(verdict?.fault);
      const stops = verdict?.severity === 'stops';
      expect(plantAnswer(placed).code).toBe(stops ? 1 : 0);
      expect(JSON.stringify(madeAnswer(placed, {}).json)).toContain(`"stops":${stops}`);
    }
  });
});
