/** The faces besides the bench, by name; the header offers those that are here. */
import type { Component } from 'svelte';
import type { Face } from '../state/bench.svelte.ts';
import LevelsFace from './LevelsFace.svelte';
import SheetsFace from './SheetsFace.svelte';
import StepsFace from './StepsFace.svelte';

export const otherFaces: Readonly<Partial<Record<Exclude<Face, 'bench'>, Component>>> = {
  levels: LevelsFace,
  steps: StepsFace,
  sheets: SheetsFace,
};
