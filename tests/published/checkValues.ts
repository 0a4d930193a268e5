/** Reading the files of check values that stand beside this one. */

export interface CheckValue {
  readonly id: string;
  readonly inputs: Readonly<Record<string, number | string>>;
  // Figures, lists and records: each test knows what its own entries hold.
  readonly expected: unknown;
  readonly tolerance: unknown;
  readonly source: string;
  readonly status: string;
}

/** Entries whose id begins so, ready for `it.each`. Fails when there are none, so that no table is silently empty. */
export function valuesOf(file: { readonly entries: readonly unknown[] }, prefix: string): CheckValue[] {
  const found = (file.entries as readonly CheckValue[]).filter(({ id }) => id.startsWith(prefix));
  if (found.length === 0) throw new Error(`no check values begin with ${prefix}`);
  return found;
}

/** A numeric input, where the entry has it. */
export function maybe(value: CheckValue, name: string): number | undefined {
  const found = value.inputs[name];
  return typeof found === 'number' ? found : undefined;
}

/** A numeric input that must be there. */
export function input(value: CheckValue, name: string): number {
  const found = maybe(value, name);
  if (found === undefined) throw new Error(`${value.id} has no number "${name}"`);
  return found;
}

/** The expected figure and its tolerance (never below what the printed digits mean). */
export function figure(value: CheckValue): { readonly expected: number; readonly within: number } {
  if (typeof value.expected !== 'number' || typeof value.tolerance !== 'number') {
    throw new Error(`${value.id} is not one figure`);
  }
  return { expected: value.expected, within: Math.max(value.tolerance, 4e-16 * Math.abs(value.expected)) };
}
