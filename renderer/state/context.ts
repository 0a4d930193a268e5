/** The one bench, handed down to the components. */
import { getContext, setContext } from 'svelte';
import type { Bench } from './bench.ts';

const KEY = Symbol('bench');

/** Hands the bench down; called once, by the root component. */
export function provideBench(bench: Bench): void {
  setContext(KEY, bench);
}

/** The bench of this window; call while a component is made. */
export function useBench(): Bench {
  return getContext<Bench>(KEY);
}
