/**
 * Timing for benchmarks: warm-up, at least ten repeats, minimum, median and spread, and a sink that keeps results alive.
 *
 * A benchmark is a module `*.bench.ts` in this folder that exports `run(): void | Promise<void>`; `run.ts` runs them all.
 */
import { execFileSync } from 'node:child_process';
import { cpus } from 'node:os';

export interface Timing {
  readonly minimumMs: number;
  readonly medianMs: number;
  /** Half the distance between the quartiles, ms. */
  readonly spreadMs: number;
  readonly repeats: number;
}

/** Results land here so that no work is optimized away; its content means nothing. */
export const sink: unknown[] = [undefined];

/**
 * Times `work`, which is called with the number of the repeat.
 *
 * @param repeats at least ten are made
 * @param warmUp calls before the clock counts
 */
export function time(work: (repeat: number) => unknown, repeats = 200, warmUp = 60): Timing {
  for (let n = 0; n < warmUp; n++) sink[0] = work(n);
  const count = Math.max(10, repeats);
  const times: number[] = [];
  for (let n = 0; n < count; n++) {
    const start = performance.now();
    sink[0] = work(n);
    times.push(performance.now() - start);
  }
  times.sort((a, b) => a - b);
  const at = (share: number): number => times[Math.floor(share * (count - 1))] as number; // within the list
  return { minimumMs: at(0), medianMs: at(0.5), spreadMs: (at(0.75) - at(0.25)) / 2, repeats: count };
}

/** Machine, Node version and commit, for the head of a report. */
export function whereAndWhen(): string {
  const [first] = cpus();
  const commit = execFileSync('git', ['rev-parse', '--short', 'HEAD'], { encoding: 'utf8' }).trim();
  return `${first?.model ?? 'unknown processor'} × ${cpus().length}, Node ${process.version}, commit ${commit}`;
}

/** One line of a report. */
export function line(name: string, timing: Timing, rest = ''): string {
  const { minimumMs, medianMs, spreadMs, repeats } = timing;
  const number = (ms: number): string => ms.toFixed(ms < 10 ? 3 : 1).padStart(9);
  return `${name.padEnd(46)}${number(minimumMs)}${number(medianMs)} ±${number(spreadMs).trim().padEnd(7)} ${String(repeats).padStart(5)}  ${rest}`;
}

/** Heading of the columns of `line`. */
export const HEADING = `${'ms'.padEnd(46)}${'minimum'.padStart(9)}${'median'.padStart(9)}  spread  repeats`;
