/** The maker's own periods, kept in the movement beside what they are used for (`constants` of the document). */

import type { Edit } from '../../solver/movement/index.ts';
import type { Movement, OwnConstant } from '../../solver/movement/schema.ts';
import { type AstronomyConstant, CONSTANTS, constantsWith } from '../../solver/train/counts/index.ts';

export type { OwnConstant };

/** The shipped periods with the movement's own after them; where the own ones are unsound the shipped ones alone. */
export function allConstants(movement: Movement): readonly AstronomyConstant[] {
  const made = constantsWith(movement.constants ?? []);
  return made.kind === 'constants' ? made.constants : CONSTANTS;
}

/** The edit that adds one (or replaces the one of that id), or why it cannot be kept. */
export function addOwn(
  movement: Movement,
  own: OwnConstant,
): { readonly kind: 'edit'; readonly edit: Edit } | { readonly kind: 'refused'; readonly says: string } {
  if (!/^[A-Za-z]\w*$/.test(own.id)) {
    return {
      kind: 'refused',
      says: `Short name: found "${own.id}", expected letters and figures without spaces, such as longMonth.`,
    };
  }
  const made = constantsWith([own]);
  if (made.kind === 'refused') return { kind: 'refused', says: made.says.join(' ') };
  const constants = [...(movement.constants ?? []).filter(({ id }) => id !== own.id), own];
  return { kind: 'edit', edit: { kind: 'describe', set: { constants } } };
}

/** The edit that drops one. */
export function removeOwn(movement: Movement, id: string): Edit {
  const constants = (movement.constants ?? []).filter((own) => own.id !== id);
  return constants.length > 0 ? { kind: 'describe', set: { constants } } : { kind: 'describe', unset: ['constants'] };
}
