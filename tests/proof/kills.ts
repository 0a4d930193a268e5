/** Kills in the middle of saving: the file and the version before it stay whole, and "saved" was never said too early. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'vite';
import { PIECE, sweepPieces } from '../../electron/files/atomicWrite.ts';
import { PREVIOUS } from '../../electron/files/previousVersion.ts';
import { seeded } from '../planting/scenes/random.ts';
import { textOfVersion, versionOf } from './kills/versions.ts';
import type { Proof, Table } from './proof.ts';

/** Longest life of a run after it began to save, ms; its start takes about as long. */
const LONGEST_MS = 90;

interface Counts {
  kills: number;
  inside: number;
  saves: number;
  unreadable: number;
  falseSaved: number;
  previousBroken: number;
  piecesLeft: number;
}

/** The killed program as one file. */
async function built(folder: string): Promise<string> {
  await build({
    configFile: false,
    logLevel: 'error',
    ssr: { noExternal: true },
    build: {
      ssr: fileURLToPath(new URL('kills/saver.ts', import.meta.url)),
      outDir: join(folder, 'program'),
      target: 'node20',
      rollupOptions: { output: { entryFileNames: 'saver.mjs' } },
    },
  });
  return join(folder, 'program', 'saver.mjs');
}

/** How long the program takes until its first save is told, ms: a kill before its start would kill nothing. */
function startOf(program: string, file: string, seed: number): number {
  const started = performance.now();
  spawnSync(process.execPath, [program, file, `${seed}`, 'once']);
  return performance.now() - started;
}

async function killOnce(program: string, file: string, seed: number, counts: Counts, afterMs: number): Promise<void> {
  const before = versionOf(readFileSync(file, 'utf8'), seed);
  const { stdout } = spawnSync(process.execPath, [program, file, `${seed}`], {
    timeout: Math.max(1, Math.round(afterMs)),
    killSignal: 'SIGKILL',
  });
  const told = stdout
    .toString()
    .trim()
    .split('\n')
    .filter((line) => line.startsWith('saved '));
  const last = told.length === 0 ? before : Number(told.at(-1)?.slice(6));
  const names = readdirSync(join(file, '..'));
  const stands = versionOf(readFileSync(file, 'utf8'), seed);
  counts.kills++;
  counts.saves += told.length;
  if (names.some((name) => name.endsWith(PIECE))) counts.inside++;
  if (stands < 0) counts.unreadable++;
  // What was told as saved stands, or the one after it, whose rename came before the word.
  if (stands !== last && stands !== last + 1) counts.falseSaved++;
  if (names.includes(`movement.depthwright${PREVIOUS}`)) {
    const previous = versionOf(readFileSync(file + PREVIOUS, 'utf8'), seed);
    if (previous !== stands - 1 && previous !== stands) counts.previousBroken++;
  }
  await sweepPieces(join(file, '..'));
  if (readdirSync(join(file, '..')).some((name) => name.endsWith(PIECE))) counts.piecesLeft++;
}

async function run(kills: number, seed: number): Promise<Table> {
  const folder = mkdtempSync(join(tmpdir(), 'depthwright-kills-'));
  const counts: Counts = {
    kills: 0,
    inside: 0,
    saves: 0,
    unreadable: 0,
    falseSaved: 0,
    previousBroken: 0,
    piecesLeft: 0,
  };
  try {
    const program = await built(folder);
    const own = mkdtempSync(join(folder, 'files-'));
    const file = join(own, 'movement.depthwright');
    writeFileSync(file, textOfVersion(0, seed));
    const start = startOf(program, file, seed);
    const random = seeded(seed);
    for (let n = 0; n < kills; n++) await killOnce(program, file, seed, counts, start + LONGEST_MS * random());
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
  const { unreadable, falseSaved, previousBroken, piecesLeft } = counts;
  return {
    lines: [
      `kills                        ${counts.kills}`,
      `  while a piece was written  ${counts.inside}`,
      `saves that were told         ${counts.saves}`,
      `files unreadable             ${unreadable}`,
      `"saved" that was not so      ${falseSaved}`,
      `version before broken        ${previousBroken}`,
      `pieces left after a sweep    ${piecesLeft}`,
    ],
    // A run in which no kill met a save proves nothing.
    wrong: unreadable + falseSaved + previousBroken + piecesLeft + (counts.inside === 0 && kills >= 20 ? 1 : 0),
  };
}

export const proof: Proof<Promise<Table>> = { title: 'Kills in the middle of saving', fullCount: 1000, run };
