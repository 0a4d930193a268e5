/** The edges of the window: files dropped onto it, and broken promises of our own code. */
import type { Bench } from '../state/bench.ts';

/** A file dropped anywhere onto the window is opened. */
export function dropped(bench: Bench, event: DragEvent): void {
  const file = event.dataTransfer?.files[0];
  if (!file) return;
  event.preventDefault();
  void bench.document.session?.drop(file);
}

/**
 * A promise of our own code was broken: what was begun is given up, the movement stays as it was, and the maker is
 * told, with the words that a report needs.
 */
export function brokenPromise(bench: Bench, event: Event | string): void {
  const says = event instanceof ErrorEvent ? event.message : String(event);
  bench.hand.abandon();
  bench.hand.begin(undefined);
  bench.looking.tell(
    'refused',
    `Something broke in the program: ${says}. The movement is as it was before; save it to be safe.`,
  );
}
