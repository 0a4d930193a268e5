/** The maker's choices for drill programs, as edits of the movement, and the hole sizes that they are made for. */

import { holesOf, platesOf } from '../../solver/marking/index.ts';
import type { Edit } from '../../solver/movement/index.ts';
import type { Drilling, Movement } from '../../solver/movement/schema.ts';
import type { PlacedMovement } from '../../solver/planting/placed.ts';

export type DrillTool = Drilling['tools'][number];

/** An edit that sets some choices and forgets others: those are then as usual. */
export function drillingEdit(
  { drilling }: Movement,
  set: Partial<Drilling>,
  forget: readonly (keyof Drilling)[] = [],
): Edit {
  const next: Record<string, unknown> = { ...drilling, ...set };
  for (const field of forget) delete next[field];
  return { kind: 'describe', set: { drilling: next } };
}

/** One finished diameter of the holes of all plates. */
export interface HoleSize {
  /** mm. */
  readonly diameter: number;
  /** How many holes have it, and whether they ask for a reamer. */
  readonly count: number;
  readonly isReamed: boolean;
  /** What the maker chose for it. */
  readonly tool: DrillTool | undefined;
}

/** Two diameters that print alike at four decimals are one: that is what the program's words carry. */
const same = (a: number, b: number): boolean => a.toFixed(4) === b.toFixed(4);

/** The diameters in use, the smallest first. */
export function holeSizes(placed: PlacedMovement): readonly HoleSize[] {
  const sizes: HoleSize[] = [];
  for (const hole of platesOf(placed.movement).flatMap((plate) => holesOf(placed, plate))) {
    const index = sizes.findIndex(({ diameter }) => same(diameter, hole.diameter));
    const before = sizes[index];
    const isReamed = hole.finish === 'ream';
    if (before) {
      sizes[index] = { ...before, count: before.count + 1, isReamed: before.isReamed || isReamed };
      continue;
    }
    const tool = placed.movement.drilling.tools.find((each) => same(each.diameter, hole.diameter));
    sizes.push({ diameter: hole.diameter, count: 1, isReamed, tool });
  }
  return sizes.sort((a, b) => a.diameter - b.diameter);
}

/** The tool list with one line changed; a line that says nothing any more is left out. */
export function toolsWith(
  { drilling }: Movement,
  diameter: number,
  set: Partial<DrillTool>,
  forget: readonly (keyof DrillTool)[] = [],
): readonly DrillTool[] {
  const before = drilling.tools.find((each) => same(each.diameter, diameter));
  const next: Record<string, unknown> & DrillTool = { ...(before ?? { diameter }), ...set };
  for (const field of forget) delete next[field];
  const others = drilling.tools.filter((each) => each !== before);
  const all = Object.keys(next).length > 1 ? [...others, next] : others;
  return all.sort((a, b) => a.diameter - b.diameter);
}
