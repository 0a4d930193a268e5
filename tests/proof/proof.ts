/** What a long proof is: a count of seeded cases in, a table out. */

export interface Table {
  /** Lines to print. */
  readonly lines: readonly string[];
  /** How many cases are wrong: none, or the proof has failed. */
  readonly wrong: number;
}

export interface Proof<Result extends Table | Promise<Table> = Table> {
  readonly title: string;
  /** Cases of the full run. */
  readonly fullCount: number;
  readonly run: (count: number, seed: number) => Result;
}

/** Lines of a table with a heading, columns as wide as their longest entry; the first is set left, all others right. */
export function tableLines(heading: readonly string[], rows: readonly (readonly (string | number)[])[]): string[] {
  const all = [heading, ...rows].map((row) => row.map(String));
  const widths = heading.map((_, k) => Math.max(...all.map((row) => (row[k] ?? '').length)));
  return all.map((row) =>
    row.map((cell, k) => (k === 0 ? cell.padEnd(widths[k] ?? 0) : cell.padStart(widths[k] ?? 0))).join('  '),
  );
}
