/** Which patches of the lettering have to be painted anew after labels came, went or moved. No drawing. */
import type { LabelBox } from './labelPlacement.ts';

/** Patches beyond which painting everything is the lesser work. */
const MOST_PATCHES = 24;

/** Whether two boxes share room; edges that touch do not. */
export const boxesMeet = (a: LabelBox, b: LabelBox): boolean =>
  a[0] < b[2] && b[0] < a[2] && a[1] < b[3] && b[1] < a[3];

const around = (a: LabelBox, b: LabelBox): LabelBox => [
  Math.min(a[0], b[0]),
  Math.min(a[1], b[1]),
  Math.max(a[2], b[2]),
  Math.max(a[3], b[3]),
];

/**
 * Patches that cover every place where a label is no longer the same object, CSS pixels; a label that moved a little
 * has one patch over both places.
 *
 * @returns undefined where so much changed that all should be painted
 */
export function patchesOf<Standing extends { readonly box: LabelBox }>(
  before: ReadonlyMap<string, Standing>,
  now: ReadonlyMap<string, Standing>,
): LabelBox[] | undefined {
  const patches: LabelBox[] = [];
  for (const [key, standing] of now) {
    const last = before.get(key);
    if (last === standing) continue;
    if (last && boxesMeet(last.box, standing.box)) patches.push(around(last.box, standing.box));
    else patches.push(...(last ? [last.box, standing.box] : [standing.box]));
    if (patches.length > MOST_PATCHES) return undefined;
  }
  for (const [key, { box }] of before) if (!now.has(key)) patches.push(box);
  return patches.length > MOST_PATCHES ? undefined : patches;
}

/** A patch as [x, y, width, height] in whole device pixels, so that its edges are sharp. */
export function devicePatch(
  [left, top, right, bottom]: LabelBox,
  ratio: number,
): readonly [number, number, number, number] {
  const [x, y] = [Math.floor(left * ratio), Math.floor(top * ratio)];
  return [x, y, Math.ceil(right * ratio) - x, Math.ceil(bottom * ratio) - y];
}
