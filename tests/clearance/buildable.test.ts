/** The one list: told alike by the check, at the head of each drill program and of the pre-flight report. */
import { describe, expect, it } from 'vitest';
import { checkAnswer } from '../../electron/cli/checkAnswer.ts';
import { buildable, checkMovement, isBuildable, remediesFor } from '../../solver/clearance/index.ts';
import type { Movement } from '../../solver/movement/schema.ts';
import { plantMovement } from '../../solver/planting/index.ts';
import { allSheets } from '../files/allSheets.ts';
import { movementOfFile, movementOfParts } from '../support/movements.ts';
import { PLAIN, Writer } from './catalogue/bench.ts';
import { FAULTY } from './catalogue/faulty.ts';

const DEMOS = ['going-train', 'moons-of-jupiter', 'tide-dial'];

function headsOf(movement: Movement): readonly string[] {
  const sheets = allSheets(plantMovement(movement));
  const drills = sheets.filter(({ kind }) => kind === 'drill').map(({ text }) => text);
  return [...drills, sheets.find(({ kind }) => kind === 'preflight')?.text ?? ''];
}

describe('the buildable list', () => {
  it.each(DEMOS)('has nothing against %s, and heads what is exported with that', (name) => {
    const movement = movementOfFile(`demo-data/${name}.json`);
    const placed = plantMovement(movement);
    expect(isBuildable(buildable(placed, checkMovement(placed, { depths: true })))).toBe(true);
    const [preflight = '', ...drills] = [...headsOf(movement)].reverse();
    expect(preflight).toMatch(/^Buildable as drawn\.\n/);
    for (const text of drills) expect(text).toContain('(BUILDABLE AS DRAWN.)');
  });

  it('names a fault in words, in data, by the exit code, and at the head of each drill program', () => {
    const thick = FAULTY.find(({ cause }) => cause === 'bodyInHole');
    const movement = movementOfParts(thick?.parts(new Writer(PLAIN)) ?? {});
    const answer = checkAnswer(plantMovement(movement));
    expect(answer.code).toBe(1);
    expect(answer.text).toContain('Not buildable as drawn: 1 fault.');
    expect(answer.json).toMatchObject({ buildable: { stops: ['body bodyInHole A front'], missing: [], unsettled: 0 } });
    for (const text of headsOf(movement)) {
      expect(text.toLowerCase().replace(/\)\n\(/g, ' ')).toContain('it cannot be put in');
    }
  });

  it('tells what is missing with its cure, though nothing fouls', () => {
    const none = FAULTY.find(({ cause }) => cause === 'noBearing');
    const answer = checkAnswer(plantMovement(movementOfParts(none?.parts(new Writer(PLAIN)) ?? {})));
    expect(answer.code).toBe(1);
    expect(answer.text).toContain('Nothing fouls, nothing is too close.');
    expect(answer.text).toContain('Not buildable as drawn: 1 missing.');
    expect(answer.text).toMatch(/cure: Let A run in/);
  });

  /** Causes that one change of one part cures in the movement of the catalogue. */
  const CURED = new Set([
    'arborInRoots',
    'arborInBore',
    'arborInPipe',
    'bodyInHole',
    'bearingNotReached',
    'pivotThin',
    'pivotThick',
    'rimThin',
    'postShort',
    'postLong',
    'noBearing',
    'noEndShake',
    'stackShort',
  ]);
  it.each(FAULTY.filter(({ cause }) => CURED.has(cause)))(
    '$name is cured by a change that is offered',
    ({ parts, cause }) => {
      const placed = plantMovement(movementOfParts(parts(new Writer(PLAIN))));
      const findings = checkMovement(placed, { depths: true });
      const [finding] = [...findings, ...buildable(placed, findings).missing].filter(
        (each) => each.cause.kind === cause,
      );
      const [remedy] = finding ? remediesFor(placed, finding) : [];
      if (!finding || !remedy) throw new Error('no cure was offered');
      const after = plantMovement(remedy.movement);
      const left = checkMovement(after, { depths: true });
      const keys = [...left, ...buildable(after, left).missing].map(({ key }) => key);
      expect(keys).not.toContain(finding.key);
    },
  );
});
