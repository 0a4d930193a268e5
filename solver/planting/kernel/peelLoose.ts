/**
 * Takes off a system what is loose at its ends: a point that one rule names, or none, moves whatever else does.
 *
 * A point with a single rule takes that rule's rank with it and leaves one motion, along the rule; what remains has the
 * rank of the rest. So a long loose chain is taken to pieces point by point, in the time that its length takes, and only
 * its core is decomposed. The motions of the core, and those of each point taken off, are carried out to the points that
 * were taken off before it: each follows along its own rule. Array kernel: indices come from the loaded system, hence
 * the `!`.
 */
import { System } from './system.ts';

/** Part of its rule's gradient that a point must have for the rule to hold it: below this it is left to the core. */
const ANSWERS = 1e-3;

/** One point taken off. */
interface Peeled {
  readonly root: number;
  /** The rule's row, and the point's part of it; absent where no rule names the point. */
  readonly row?: number;
  readonly normal?: readonly [number, number];
}

/** What is left after taking off, and what was taken, in that order. */
export interface PeeledSystem {
  readonly core: System;
  /** Roots of the whole system, by the core's own numbers. */
  readonly coreRoots: readonly number[];
  readonly peeled: readonly Peeled[];
}

/** The Jacobian's rows of each root. */
function rowsOfRoots(system: System): readonly number[][] {
  const rows: number[][] = Array.from({ length: system.rootCount }, () => []);
  for (let i = 0; i < system.ruleCount; i++) {
    for (let e = system.rowStart[i]!; e < system.rowStart[i + 1]!; e++) {
      const own = rows[system.rowRoot[e]!]!;
      if (own.at(-1) !== i) own.push(i);
    }
  }
  return rows;
}

/** A root's part of a row, and the length of the whole row. */
function partOf(
  system: System,
  row: number,
  root: number,
): { readonly normal: [number, number]; readonly whole: number } {
  const normal: [number, number] = [0, 0];
  let whole = 0;
  for (let e = system.rowStart[row]!; e < system.rowStart[row + 1]!; e++) {
    const [x, y] = [system.jacobian[2 * e]!, system.jacobian[2 * e + 1]!];
    whole += x * x + y * y;
    if (system.rowRoot[e] !== root) continue;
    normal[0] += x;
    normal[1] += y;
  }
  return { normal, whole: Math.sqrt(whole) };
}

/** Takes off all that can be; the system itself stays as it is. */
export function peelLoose(system: System): PeeledSystem {
  const rows = rowsOfRoots(system);
  const open = rows.map((own) => own.length);
  const rowGone = new Uint8Array(system.ruleCount);
  const rootGone = new Uint8Array(system.rootCount);
  const peeled: Peeled[] = [];
  const ready = [...open.keys()].filter((root) => open[root]! <= 1).reverse();
  for (let root = ready.pop(); root !== undefined; root = ready.pop()) {
    if (rootGone[root]) continue;
    const row = rows[root]!.find((each) => !rowGone[each]);
    if (row === undefined) peeled.push({ root });
    else {
      const { normal, whole } = partOf(system, row, root);
      if (Math.hypot(...normal) < ANSWERS * whole) continue;
      peeled.push({ root, row, normal });
      rowGone[row] = 1;
      for (let e = system.rowStart[row]!; e < system.rowStart[row + 1]!; e++) {
        const other = system.rowRoot[e]!;
        open[other]!--;
        if (open[other]! <= 1 && other !== root && !rootGone[other]) ready.push(other);
      }
    }
    rootGone[root] = 1;
  }
  return { ...coreOf(system, rowGone, rootGone), peeled };
}

function coreOf(system: System, rowGone: Uint8Array, rootGone: Uint8Array): Pick<PeeledSystem, 'core' | 'coreRoots'> {
  const coreRoots = [...rootGone.keys()].filter((root) => !rootGone[root]);
  const numberOf = new Map(coreRoots.map((root, k) => [root, k]));
  const [starts, roots, entries]: [number[], number[], number[]] = [[0], [], []];
  for (let i = 0; i < system.ruleCount; i++) {
    if (rowGone[i]) continue;
    // A row that stays names no root that was taken off: taking one off takes its last row.
    for (let e = system.rowStart[i]!; e < system.rowStart[i + 1]!; e++) {
      roots.push(numberOf.get(system.rowRoot[e]!)!);
      entries.push(system.jacobian[2 * e]!, system.jacobian[2 * e + 1]!);
    }
    starts.push(roots.length);
  }
  const core = new System();
  core.rootCount = coreRoots.length;
  core.ruleCount = starts.length - 1;
  core.rowStart = Int32Array.from(starts);
  core.rowRoot = Int32Array.from(roots);
  core.jacobian = Float64Array.from(entries);
  core.residual = new Float64Array(core.ruleCount);
  return { core, coreRoots };
}

/** The motions of the whole: those of the core carried out to what was taken off, and those of each point taken off. */
export function motionsOfWhole(
  system: System,
  { coreRoots, peeled }: PeeledSystem,
  ofCore: readonly Float64Array[],
): Float64Array[] {
  const blank = (): Float64Array => new Float64Array(2 * system.rootCount);
  const carried = ofCore.map((motion) => {
    const whole = blank();
    for (const [k, root] of coreRoots.entries()) whole.set(motion.subarray(2 * k, 2 * k + 2), 2 * root);
    return follow(system, peeled, peeled.length, whole);
  });
  const own = peeled.flatMap(({ root, normal }, n) => {
    const along: readonly (readonly [number, number])[] = normal
      ? [[-normal[1], normal[0]]]
      : [
          [1, 0],
          [0, 1],
        ];
    return along.map(([x, y]) => {
      const whole = blank();
      const length = Math.hypot(x, y);
      whole.set([x / length, y / length], 2 * root);
      return follow(system, peeled, n, whole);
    });
  });
  return [...carried, ...own];
}

/** Lets the first `count` points that were taken off follow a motion, the last of them first. */
function follow(system: System, peeled: readonly Peeled[], count: number, motion: Float64Array): Float64Array {
  for (let n = count - 1; n >= 0; n--) {
    const { root, row, normal } = peeled[n]!;
    if (row === undefined || !normal) continue;
    let missing = 0;
    for (let e = system.rowStart[row]!; e < system.rowStart[row + 1]!; e++) {
      const column = 2 * system.rowRoot[e]!;
      missing += system.jacobian[2 * e]! * motion[column]! + system.jacobian[2 * e + 1]! * motion[column + 1]!;
    }
    if (missing === 0) continue;
    const by = -missing / (normal[0] ** 2 + normal[1] ** 2);
    motion[2 * root]! += by * normal[0];
    motion[2 * root + 1]! += by * normal[1];
  }
  return motion;
}
