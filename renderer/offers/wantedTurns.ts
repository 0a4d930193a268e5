/** What a hand, ring or ball should show, as a maker types it: a period with its unit, a named period, or turns. */

import { type Edit, freshId, idsOf } from '../../solver/movement/index.ts';
import type { Movement } from '../../solver/movement/schema.ts';
import { type AstronomyConstant, constantNamed } from '../../solver/train/counts/index.ts';

export type Shown = Movement['indications'][number];

type Wanted = Pick<Shown, 'period' | 'ratio' | 'source'>;
/** What was typed, as the movement keeps it, or why it cannot be read. */
export type WantedRead =
  | { readonly kind: 'wanted'; readonly wanted: Wanted }
  | { readonly kind: 'refused'; readonly says: string };

const PERIOD = /^(\d+(?:[.,]\d*)?|[.,]\d+)\s*(s|min|h|d)$/i;
const TURNS = /^([-−]?\d+(?:\s*\/\s*\d+|[.,]\d+)?)\s*turns?$/i;

/**
 * "12 h", "29.530588853 d", the name or short name of a period, or turns for one turn of the drive: "27/2 turns".
 * A named period brings its source along.
 */
export function readWanted(text: string, constants: readonly AstronomyConstant[]): WantedRead {
  const plain = text.trim();
  const named = constantNamed(plain, constants);
  if (named) {
    const period = { value: Number(named.value), unit: named.unit };
    return { kind: 'wanted', wanted: { period, source: `${named.name}: ${named.source}`.slice(0, 500) } };
  }
  const [, value, unit] = PERIOD.exec(plain) ?? [];
  if (value !== undefined && unit !== undefined && numberOf(value) > 0) {
    // One of the four by the pattern.
    const period = { value: numberOf(value), unit: unit.toLowerCase() as AstronomyConstant['unit'] };
    return { kind: 'wanted', wanted: { period } };
  }
  const turns = TURNS.exec(plain)?.[1]?.replace('−', '-').replaceAll(' ', '');
  if (turns?.split('/').every((part) => numberOf(part) !== 0)) {
    return { kind: 'wanted', wanted: { ratio: turns.includes('/') ? turns : numberOf(turns) } };
  }
  const says = `Should turn once in: found “${plain}”, expected a period more than 0 with s, min, h or d, such as 12 h; a named period, such as synodic month; or turns for one turn of the drive, such as 27/2 turns.`;
  return { kind: 'refused', says };
}

const numberOf = (text: string): number => Number(text.replace(',', '.'));

/** The same as it is shown in the field. */
export function wantedSays({ period, ratio }: Shown): string {
  if (period) return `${period.value} ${period.unit}`;
  return ratio === undefined ? '' : `${ratio} turns`;
}

/** Another wish for what is shown; the source of the old one goes with it. */
export function editOfWanted(id: string, wanted: Wanted): Edit {
  const unset = (['period', 'ratio', 'source'] as const).filter((field) => wanted[field] === undefined);
  return { kind: 'change', id, set: { ...wanted }, unset };
}

/** Something more for an arbor to show, called after it. */
export function addShown(movement: Movement, arbor: Shown['arbor'], name: string, wanted: Wanted): Edit {
  const taken = new Set<string>(idsOf(movement).keys());
  const item = { id: freshId(taken, `show-${arbor}`), name: name.slice(0, 200), arbor, ...wanted };
  return { kind: 'add', to: 'indications', item };
}
