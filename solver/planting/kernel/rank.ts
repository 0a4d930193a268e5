/**
 * Which rules repeat others, by rank of the Jacobian at the places found.
 *
 * Array kernel: indices come from the loaded system, hence the `!`.
 */
import type { System } from './system.ts';

/** Length left of a rule's unit gradient, below which it adds nothing to the rules before it. */
const ADDS_NOTHING = 1e-7;

/**
 * Rules of the loaded system whose gradients depend on those of rules listed before them, by orthogonalizing row after
 * row (twice, so that the remainder is clean). The Jacobian must be current.
 */
export function dependentRules(system: System): number[] {
  const columns = 2 * system.rootCount;
  const basis: Float64Array[] = [];
  const dependent: number[] = [];
  for (let i = 0; i < system.ruleCount; i++) {
    const row = new Float64Array(columns);
    for (let e = system.rowStart[i]!; e < system.rowStart[i + 1]!; e++) {
      row[2 * system.rowRoot[e]!]! += system.jacobian[2 * e]!;
      row[2 * system.rowRoot[e]! + 1]! += system.jacobian[2 * e + 1]!;
    }
    const before = Math.hypot(...row);
    for (const unit of [...basis, ...basis]) {
      let dot = 0;
      for (let k = 0; k < columns; k++) dot += row[k]! * unit[k]!;
      for (let k = 0; k < columns; k++) row[k]! -= dot * unit[k]!;
    }
    const after = Math.hypot(...row);
    if (after <= ADDS_NOTHING * Math.max(before, 1)) dependent.push(system.rules[i]!);
    else basis.push(row.map((v) => v / after));
  }
  return dependent;
}
