/** The faces besides the bench, by name; the header offers those that are here. */

import type { Component } from 'svelte';
import LevelsFace from '../levels/LevelsFace.svelte';
import SheetsFace from '../sheets/SheetsFace.svelte';
import type { WindowFace } from '../state/looking.svelte.ts';
import StepsFace from '../steps/StepsFace.svelte';

export const otherFaces: Readonly<Partial<Record<Exclude<WindowFace, 'bench'>, Component>>> = {
  levels: LevelsFace,
  steps: StepsFace,
  sheets: SheetsFace,
};
