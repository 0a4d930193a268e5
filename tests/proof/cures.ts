/**
 * Cures that are offered, taken and checked again: COUNT of them on disturbed demos, on the catalogue varied, and on
 * random scenes. Each is applied to the file's text, read, planted and checked anew; every fiftieth goes through the
 * command line in a process of its own. Wrong is a cure after which something stops that did not stop before, or after
 * which what it cures is still told.
 */
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { buildable, checkMovement, type Finding, remediesFor } from '../../solver/clearance/index.ts';
import { applyEdit, writeMovement } from '../../solver/movement/index.ts';
import type { Movement } from '../../solver/movement/schema.ts';
import { plantMovement } from '../../solver/planting/index.ts';
import { seeded } from '../planting/scenes/random.ts';
import { movementOfText } from '../support/movements.ts';
import { SOURCES, type Source, sceneFrom } from './cures/scenes.ts';
import { type Proof, type Table, tableLines } from './proof.ts';

/** Most findings of one scene that cures are asked for. */
const MOST_ASKED = 3;
/** Every so many cures one is checked by the command line itself. */
const BY_COMMAND = 50;
const PROGRAM = fileURLToPath(new URL('../../build/depthwright.mjs', import.meta.url));

/** Parts and kind of what is told: of a gap the pair alone, since it may foul before and be too close after. */
const nameOf = ({ key, kind, parts }: Pick<Finding, 'key' | 'kind' | 'parts'>): string =>
  kind === 'fouls' || kind === 'tooClose' ? `gap ${[...parts].sort().join(' ')}` : key;

function toldOf(movement: Movement): readonly Finding[] {
  const placed = plantMovement(movement);
  const findings = checkMovement(placed, { depths: true });
  return [...findings, ...buildable(placed, findings).missing];
}

const stopsOf = (findings: readonly Pick<Finding, 'key' | 'kind' | 'parts' | 'severity'>[]): readonly string[] =>
  findings.filter(({ severity }) => severity === 'stops').map(nameOf);

/** The stops that the command line tells of a file. */
function stopsByCommand(text: string): readonly string[] {
  const run = spawnSync(process.execPath, [PROGRAM, 'check', '-', '--json'], { input: text, encoding: 'utf8' });
  const answer = JSON.parse(run.stdout) as { readonly findings: readonly Finding[] };
  return stopsOf(answer.findings);
}

interface Tally {
  scenes: number;
  asked: number;
  cured: number;
  offered: number;
  byCommand: number;
  wrong: string[];
}

function tryScene(movement: Movement, tally: Tally, random: () => number): void {
  const before = toldOf(movement);
  const stopped = new Set(stopsOf(before));
  const asked = [...before].sort(() => random() - 0.5).slice(0, MOST_ASKED);
  tally.scenes++;
  for (const finding of asked) {
    const offered = remediesFor(plantMovement(movement), finding);
    tally.asked++;
    if (offered.length > 0) tally.cured++;
    for (const { edit, deed } of offered) {
      const edited = applyEdit(movement, edit);
      if (edited.kind === 'refused') {
        tally.wrong.push(`${finding.key}: ${deed.kind} is refused`);
        continue;
      }
      const text = writeMovement(edited.movement);
      const after = toldOf(movementOfText(text));
      const left = tally.offered % BY_COMMAND === 0 ? stopsByCommand(text) : stopsOf(after);
      if (tally.offered % BY_COMMAND === 0) tally.byCommand++;
      tally.offered++;
      const fresh = left.filter((stop) => !stopped.has(stop));
      if (fresh.length > 0) tally.wrong.push(`${finding.key}: ${deed.kind} makes ${fresh.join(', ')}`);
      if (after.some((found) => nameOf(found) === nameOf(finding))) {
        tally.wrong.push(`${finding.key}: ${deed.kind} does not cure it`);
      }
    }
  }
}

function run(count: number, seed: number): Table {
  const random = seeded(seed);
  const tallies = new Map<Source, Tally>(
    SOURCES.map((source) => [source, { scenes: 0, asked: 0, cured: 0, offered: 0, byCommand: 0, wrong: [] }]),
  );
  const offered = (): number => [...tallies.values()].reduce((sum, tally) => sum + tally.offered, 0);
  for (let nth = 0; offered() < count; nth++) {
    const source = SOURCES[nth % SOURCES.length] ?? 'random';
    const tally = tallies.get(source);
    if (tally) tryScene(sceneFrom(source, random), tally, random);
  }
  const rows = [...tallies].map(([source, { scenes, asked, cured, offered: some, byCommand, wrong }]) => [
    source,
    scenes,
    asked,
    cured,
    some,
    byCommand,
    wrong.length,
  ]);
  const wrong = [...tallies.values()].flatMap((tally) => tally.wrong);
  return {
    lines: [
      ...tableLines(['scenes', 'all', 'findings asked', 'with a cure', 'cures', 'by command line', 'wrong'], rows),
      ...wrong.slice(0, 40).map((each) => `wrong: ${each}`),
    ],
    wrong: wrong.length,
  };
}

export const proof: Proof = { title: 'Cures leave no new stop', fullCount: 2000, run };
