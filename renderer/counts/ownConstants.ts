/** The maker's own periods, kept in the movement beside what they are used for. */
import { type AstronomyConstant, CONSTANTS, constantsWith } from '../../solver/gearing/index.ts';
import type { Edit, Movement } from '../../solver/movement/index.ts';

export type OwnConstant = Omit<AstronomyConstant, 'group'>;

const UNITS: readonly string[] = ['s', 'min', 'h', 'd'];

function isOwnConstant(value: unknown): value is OwnConstant {
  if (typeof value !== 'object' || value === null) return false;
  const fields = value as Record<string, unknown>; // an object, whose fields are looked at one by one
  return (
    ['id', 'name', 'value', 'source'].every((field) => typeof fields[field] === 'string') &&
    UNITS.includes(String(fields['unit']))
  );
}

/** Own periods of a movement. They stand in a field of their own (`constants`), which other parts leave alone. */
export function ownConstantsOf(movement: Movement): readonly OwnConstant[] {
  const kept = (movement as { readonly constants?: unknown }).constants; // a field that the schema carries along unread
  return Array.isArray(kept) ? kept.filter(isOwnConstant) : [];
}

/** The shipped periods with the movement's own after them; an own one that is unsound is passed over. */
export function allConstants(movement: Movement): readonly AstronomyConstant[] {
  const made = constantsWith(ownConstantsOf(movement));
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
  const constants = [...ownConstantsOf(movement).filter(({ id }) => id !== own.id), own];
  return { kind: 'edit', edit: { kind: 'describe', set: { constants } } };
}

export function removeOwn(movement: Movement, id: string): Edit {
  const constants = ownConstantsOf(movement).filter((own) => own.id !== id);
  return constants.length > 0 ? { kind: 'describe', set: { constants } } : { kind: 'describe', unset: ['constants'] };
}
