/** The maker's own tooth tables, kept in the movement. */
import type { Movement, Wheel } from '../../movement/schema.ts';

export type OwnRow = NonNullable<Movement['toothTables']>[number];

/** The own row that a wheel's `table` names and whose counts include it; `undefined` when there is none. */
export function ownRowOf(wheel: Wheel, movement: Movement): OwnRow | undefined {
  if (wheel.table === undefined) return undefined;
  return movement.toothTables?.find(
    (row) =>
      row.name === wheel.table &&
      row.form === wheel.form &&
      wheel.teeth >= (row.from ?? 0) &&
      wheel.teeth <= (row.to ?? Number.POSITIVE_INFINITY),
  );
}

/** How the row is called on the sheets. */
export const sourceOfRow = (row: OwnRow): string => `own table "${row.name}"${row.source ? ` (${row.source})` : ''}`;
