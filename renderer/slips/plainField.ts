/** A number of a part that is edited in place. */
import type { Edit } from '../../solver/movement/index.ts';

/** A number of a part that can be edited. */
export interface PartField {
  readonly says: string;
  readonly kind: 'length' | 'angle' | 'number';
  readonly value: number | undefined;
  /** It must be more than this. */
  readonly above?: number;
  /** May be left open: an emptied field then means "not stated". */
  readonly isOptional?: boolean;
  readonly edit: (value: number | undefined) => Edit;
}

type Options = Partial<Pick<PartField, 'kind' | 'above' | 'isOptional'>>;

/** A field that stands in the item itself. */
export function plainField(
  id: string,
  field: string,
  says: string,
  value: number | undefined,
  options: Options = {},
): PartField {
  return {
    kind: 'length',
    ...options,
    says,
    value,
    edit: (next) =>
      next === undefined ? { kind: 'change', id, unset: [field] } : { kind: 'change', id, set: { [field]: next } },
  };
}
